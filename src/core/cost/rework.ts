/** How parts come out of the bath: good at once, or off shade and dyed again once. Shares of 0..1. */
export interface ReworkYield {
  /** Good parts of those dipped the first time. */
  readonly firstPass: number;
  /** Parts dipped again, of those that came out bad. */
  readonly rework: number;
  /** Good parts of those dipped again; the first pass's share where absent. */
  readonly secondPass?: number;
}

/**
 * Good parts of those started, with one rework: y + (1 - y) w y2.
 *
 * Common practice, no source.
 * @example
 * yieldWithRework({ firstPass: 0.9, rework: 0.5, secondPass: 0.8 }) // => 0.940
 * yieldWithRework({ firstPass: 0.97, rework: 0 }) // => 0.97
 */
export const yieldWithRework = ({ firstPass, rework, secondPass = firstPass }: ReworkYield): number =>
  firstPass + (1 - firstPass) * rework * secondPass;

/**
 * Dips of a part that was started: 1 + (1 - y) w.
 * @example
 * dipsPerStarted({ firstPass: 0.9, rework: 0.5 }) // => 1.050
 */
export const dipsPerStarted = ({ firstPass, rework }: ReworkYield): number => 1 + (1 - firstPass) * rework;

/**
 * Parts that are dipped again of those that were started: (1 - y) w, in whole parts.
 *
 * Rounded up, so that the good ones of both dips are never fewer than predicted. Common practice, no source.
 * @example
 * partsAgain(124, { firstPass: 0.97, rework: 0.6 }) // => 3
 * partsAgain(124, { firstPass: 0.97, rework: 0 }) // => 0
 */
export const partsAgain = (started: number, { firstPass, rework }: ReworkYield): number =>
  Math.max(0, Math.ceil(started * (1 - firstPass) * rework * (1 - 1e-12) - 1e-9));

/**
 * Cost of one good part where bad ones may be dyed again: (blank + dyeing (1 + (1 - y) w))/(y + (1 - y) w y2).
 *
 * `dyeing` is the cost of one dip of one part; stripping or sorting between the two may be part of `again`.
 * Common practice, no source.
 * @example
 * costWithRework({ blank: 2, dyeing: 1, firstPass: 0.9, rework: 0.5, secondPass: 0.8 }) // => 3.244681
 * costWithRework({ blank: 2, dyeing: 1, firstPass: 0.9, rework: 0 }) // => 3.333333
 */
export const costWithRework = ({
  blank,
  dyeing,
  again = dyeing,
  ...shares
}: ReworkYield & { readonly blank: number; readonly dyeing: number; readonly again?: number }): number =>
  (blank + dyeing + (dipsPerStarted(shares) - 1) * again) / yieldWithRework(shares);

/**
 * Whether dyeing a bad part again is cheaper than starting another: what another dip costs per good part won
 * against blank and dip of a new one per good part.
 * @example
 * reworkPays({ blank: 2, dyeing: 1, firstPass: 0.9, rework: 0.5, secondPass: 0.8 }) // => true
 * reworkPays({ blank: 0.1, dyeing: 1, firstPass: 0.9, rework: 0.5, secondPass: 0.4 }) // => false
 */
export const reworkPays = ({
  blank,
  dyeing,
  again = dyeing,
  firstPass,
  secondPass = firstPass,
}: ReworkYield & { readonly blank: number; readonly dyeing: number; readonly again?: number }): boolean =>
  again / secondPass < (blank + dyeing) / firstPass;
