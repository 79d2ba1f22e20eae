/**
 * Mean wall of a part, t = 20 V/A [mm] from volume V [cm3] and area A [cm2]: exact for a thin plate without its
 * rim, two thirds of the radius for a ball. A part with one thick and one thin end hides its thin end.
 * @example
 * meanWallMm(6.9, 41) // => 3.366
 */
export const meanWallMm = (volumeCm3: number, areaCm2: number): number => (20 * volumeCm3) / areaCm2;

/** Mean wall [mm] under which a nylon part is soft enough at bath temperature to bend: common practice, no source. */
export const softWallMm = 1.5;

/** What to do with a part of thin walls, or nothing. */
export const thinWallAdvice = (volumeCm3: number, areaCm2: number): string | undefined =>
  meanWallMm(volumeCm3, areaCm2) < softWallMm
    ? "thin walls soften in the hot bath: support and cool flat"
    : undefined;
