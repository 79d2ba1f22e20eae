import { done, error, type Outcome } from "../../fault.js";
import type { Handling, Part, Tank } from "../../model/batch.js";
import { shortNumber } from "../../quantity/text/short-number.js";

/** What keeps a load from being larger. */
export type LoadLimit = "perLoad" | "freeboard" | "liquorRatio";

/** The most parts that one load may hold, and which limit says so. */
export interface LoadSize {
  readonly parts: number;
  readonly boundBy: LoadLimit;
}

// Quotients of decimal inputs land a rounding error below a whole number: 0.84 L / 6 cm3 must be 140 parts.
const whole = (quotient: number): number => Math.floor(quotient * (1 + 1e-12) + 1e-9);

/**
 * The most parts of one kind that a load may hold in a tank: the least of what the part's own limit, the
 * room below the freeboard and the least liquor ratio allow. No load is possible where this is zero.
 */
export function loadSize(
  part: Pick<Part, "massG" | "volumeCm3" | "perLoad">,
  tank: Pick<Tank, "volumeL" | "capacityL">,
  handling: Pick<Handling, "freeboard" | "liquorRatioLPerKg">,
): LoadSize {
  const roomCm3 = 1000 * (tank.capacityL * (1 - handling.freeboard) - tank.volumeL);
  const limits: LoadSize[] = [
    { parts: part.perLoad ?? Number.POSITIVE_INFINITY, boundBy: "perLoad" },
    { parts: Math.max(0, whole(roomCm3 / part.volumeCm3)), boundBy: "freeboard" },
    {
      parts: whole((1000 * tank.volumeL) / (handling.liquorRatioLPerKg * part.massG)),
      boundBy: "liquorRatio",
    },
  ];
  return limits.reduce((least, limit) => (limit.parts < least.parts ? limit : least));
}

/**
 * Parts to start so that a quantity of good ones is left at a yield.
 *
 * @example
 * partsToStart(97, 0.97) // => 100
 * partsToStart(120, 0.97) // => 124
 */
export const partsToStart = (quantity: number, goodShare: number): number =>
  Math.ceil((quantity / goodShare) * (1 - 1e-12) - 1e-9);

/**
 * The next load when `left` parts wait and a load holds at most `most`: as few loads as possible, as even
 * as possible, larger ones first.
 *
 * @example
 * nextLoad(121, 50) // => 41
 * nextLoad(80, 50) // => 40
 */
export const nextLoad = (left: number, most: number): number => Math.ceil(left / Math.ceil(left / most));

/** The load size, or the fault that says why not one part can be dipped. */
export function checkedLoadSize(part: Part, tank: Tank, handling: Handling): Outcome<LoadSize> {
  const size = loadSize(part, tank, handling);
  if (size.parts >= 1) return done(size);
  const kg = part.massG / 1000;
  const why =
    size.boundBy === "liquorRatio"
      ? `one part of ${shortNumber(part.massG)} g needs ${shortNumber(handling.liquorRatioLPerKg * kg)} L of liquor at ${shortNumber(handling.liquorRatioLPerKg)} L/kg, and tank "${tank.name}" works with ${shortNumber(tank.volumeL)} L`
      : `one part displaces ${shortNumber(part.volumeCm3)} cm3, and tank "${tank.name}" has ${Math.max(0, Math.round(1000 * (tank.capacityL * (1 - handling.freeboard) - tank.volumeL)))} cm3 between its ${shortNumber(tank.volumeL)} L of liquor and the freeboard`;
  return {
    ok: false,
    faults: [
      error(
        "part-too-large",
        ["parts", part.name],
        `part "${part.name}" does not fit tank "${tank.name}": ${why}`,
        "use a larger tank for this dye, work with less liquor, or check the part's mass and volume",
      ),
    ],
  };
}
