import { done, error, failed, type Outcome } from "../../fault.js";
import type { Handling, Part, Tank } from "../../model/batch.js";
import { shortNumber } from "../../quantity/text/short-number.js";

/** What keeps a load from being larger. */
export type LoadLimit = "perLoad" | "freeboard" | "liquorRatio" | "packing" | "least";

/** The most parts that one load may hold, and which limit says so. */
export interface LoadSize {
  readonly parts: number;
  readonly boundBy: LoadLimit;
}

/** What a load's size depends on. */
export type SizedPart = Pick<Part, "massG" | "volumeCm3" | "perLoad" | "boxMm">;
export type SizingTank = Pick<Tank, "volumeL" | "capacityL" | "leastL">;
export type SizingHandling = Pick<Handling, "freeboard" | "liquorRatioLPerKg">;

/** A bath is topped up when it has fallen below this share of its mark or, by its rule, of its strength. */
export const topUpBelow = 0.98;

/**
 * Parts move freely while their boxes together fill no more than this share of the liquor. Only parts measured from a
 * model have a known box. Common practice, no source.
 */
export const freePacking = 0.5;

// Quotients of decimal inputs land a rounding error below a whole number: 0.84 L / 6 cm3 must be 140 parts.
const whole = (quotient: number): number => Math.max(0, Math.floor(quotient * (1 + 1e-12) + 1e-9));

/** A bath that is not topped up yet counts as full: its loads are sized for the mark. */
const sizingL = (volumeL: number, markL: number): number =>
  volumeL < markL && volumeL >= topUpBelow * markL * (1 - 1e-12) ? markL : volumeL;

const boxCm3 = ([x, y, z]: readonly [number, number, number]): number => (x * y * z) / 1000;

/**
 * The most parts of one kind that a load may hold in the liquor that is there [L, hot]: the least of what the part's own
 * limit, the room below the freeboard, the least liquor ratio and the boxes of the parts allow; none where the liquor
 * is under the tank's least level.
 */
export function loadSize(
  part: SizedPart,
  tank: SizingTank,
  handling: SizingHandling,
  volumeL: number = tank.volumeL,
): LoadSize {
  if (tank.leastL !== undefined && volumeL < tank.leastL * (1 - 1e-9)) return { parts: 0, boundBy: "least" };
  const liquorL = sizingL(volumeL, tank.volumeL);
  const roomCm3 = 1000 * (tank.capacityL * (1 - handling.freeboard) - liquorL);
  let parts = part.perLoad ?? Number.POSITIVE_INFINITY;
  let boundBy: LoadLimit = "perLoad";
  const limit = (most: number, by: LoadLimit): void => {
    if (most < parts) {
      parts = most;
      boundBy = by;
    }
  };
  limit(whole(roomCm3 / part.volumeCm3), "freeboard");
  limit(whole((1000 * liquorL) / (handling.liquorRatioLPerKg * part.massG)), "liquorRatio");
  if (part.boxMm !== undefined) limit(whole((freePacking * 1000 * liquorL) / boxCm3(part.boxMm)), "packing");
  return { parts, boundBy };
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

/** Why not one part fits, in words. */
const whyNone: Readonly<
  Record<LoadLimit, (part: Part, tank: Tank, handling: Handling, volumeL: number) => string>
> = {
  perLoad: () => "its perLoad is 0",
  liquorRatio: (part, tank, { liquorRatioLPerKg }, volumeL) =>
    `one part of ${shortNumber(part.massG)} g needs ${shortNumber((liquorRatioLPerKg * part.massG) / 1000)} L of liquor at ${shortNumber(liquorRatioLPerKg)} L/kg, and tank "${tank.name}" works with ${shortNumber(volumeL)} L`,
  freeboard: (part, tank, { freeboard }, volumeL) =>
    `one part displaces ${shortNumber(part.volumeCm3)} cm3, and tank "${tank.name}" has ${Math.max(0, Math.round(1000 * (tank.capacityL * (1 - freeboard) - volumeL)))} cm3 between its ${shortNumber(volumeL)} L of liquor and the freeboard`,
  packing: (part, tank, _handling, volumeL) =>
    `the box around one part takes ${(boxCm3(part.boxMm!) / 1000).toFixed(2)} L, and parts move freely in half of the ${shortNumber(volumeL)} L of tank "${tank.name}"`,
  least: (_part, tank, _handling, volumeL) =>
    `tank "${tank.name}" holds ${shortNumber(volumeL)} L, under its least level of ${shortNumber(tank.leastL!)} L`,
};

/** The load size, or the fault that says why not one part can be dipped. */
export function checkedLoadSize(
  part: Part,
  tank: Tank,
  handling: Handling,
  volumeL: number = tank.volumeL,
): Outcome<LoadSize> {
  const size = loadSize(part, tank, handling, volumeL);
  if (size.parts >= 1) return done(size);
  return failed(
    error(
      "part-too-large",
      ["parts", part.name],
      `part "${part.name}" does not fit tank "${tank.name}": ${whyNone[size.boundBy](part, tank, handling, volumeL)}`,
      size.boundBy === "least"
        ? "fill the bath before it is heated"
        : "use a larger tank for this dye, work with less liquor, or check the part's mass and volume",
    ),
  );
}
