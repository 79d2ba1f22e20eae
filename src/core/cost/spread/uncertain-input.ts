/** A figure of the batch that is not exactly known. */
export interface UncertainInput {
  /** Its path in the batch: `["handling", "dragOut"]`. */
  readonly path: readonly (string | number)[];
  readonly value: number;
  /** Half-width of its 95 % interval, in the unit of the value. */
  readonly halfWidth: number;
  /** True where nobody gave it. */
  readonly assumed: boolean;
  /** Least possible value, 0 where absent. */
  readonly least?: number;
  /** Greatest possible value, such as 1 for a share; none where absent. */
  readonly most?: number;
}
