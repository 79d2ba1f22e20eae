/**
 * A CIELAB colour for a message, to 0.1.
 * @example
 * labText([57, 54.12, -30.26]) // => "L 57.0, 54.1, -30.3"
 */
export const labText = (lab: readonly [number, number, number]): string =>
  `L ${lab.map((value) => value.toFixed(1)).join(", ")}`;
