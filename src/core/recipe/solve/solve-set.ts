import { ciede2000, ciede2000Components } from "../../colour/difference/ciede2000.js";
import { type BoundedFit, boundedLeastSquares } from "../../maths/least-squares/bounded-least-squares.js";
import { combinations } from "../../maths/sampling/combinations.js";
import type { Lab } from "../../model/batch.js";
import { type Mixture, mixedLab } from "../mixture/mixture.js";

/** Strengths of a set of dyes that come nearest to a colour. */
export interface Solved {
  readonly strengths: readonly number[];
  readonly lab: Lab;
  readonly deltaE00: number;
}

/** Strengths between which the dyes of a bath are sought; 1 is a dye's own fresh bath. */
export interface StrengthLimits {
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** Room for concentrate beyond the low ones, as a share of the bath. */
  readonly room: number;
}

/** Most that a dye may be stronger than in its own fresh bath: swatches say nothing beyond. */
export const mostStrength = 2;

/** Whether a recipe has a dye at the most that it may be, so that the time of the dip holds it back. */
export const isStrongest = (strengths: readonly number[]): boolean =>
  strengths.some((strength) => strength > 0.99 * mostStrength);

/** Strengths below this count about as their own size, those above as their logarithm. */
const bend = 0.02;
const toPlace = (strength: number): number => Math.asinh(strength / bend);
const toStrength = (u: number): number => bend * Math.sinh(u);

/** A match that no reader tells from a perfect one; its square ends the search. */
const perfect = 1e-4;
/** Share of the sum of squares that the steps of a start gain, and those of the last search from the best. */
const [coarse, fine] = [1e-3, 1e-10];
/** Weight of liquor without room for its concentrates, against CIEDE2000. */
const overfull = 500;

const oneDye = [0.005, 0.02, 0.06, 0.15, 0.3, 0.6, 1, 1.6];
const corners = [0.05, 0.6];
const alike = [0.01, 0.2, 1.5, 0.9];

/** Where the search begins: along one dye; the corners of a cube for several, and points on its diagonal. */
function usualStarts(count: number): readonly (readonly number[])[] {
  if (count === 1) return oneDye.map((strength) => [strength]);
  return [
    ...combinations(Array.from({ length: count }, () => corners)),
    ...alike.map((strength) => Array.from({ length: count }, () => strength)),
  ];
}

/** The limits of a bath that is made afresh. */
export const freshLimits = (count: number): StrengthLimits => ({
  low: Array.from({ length: count }, () => 0),
  high: Array.from({ length: count }, () => mostStrength),
  room: 1,
});

/**
 * The strengths of a mixture whose colour differs least from a target (CIEDE2000), from eight starts or more.
 *
 * Least squares over the exact components of the difference, in u = asinh(s/0.02), within the limits; the concentrates
 * take no more room than there is.
 * @param more strengths to start from too, such as solutions with fewer dyes
 */
export function solveSet(
  mixture: Mixture,
  target: Lab,
  limits: StrengthLimits = freshLimits(mixture.dyes.length),
  more: readonly (readonly number[])[] = [],
): Solved {
  const { dyes } = mixture;
  const [low, high] = [limits.low.map(toPlace), limits.high.map(toPlace)];
  const strengths = new Float64Array(dyes.length);
  const residuals = (u: Float64Array, out: Float64Array): void => {
    let room = 0;
    for (let i = 0; i < u.length; i++) {
      strengths[i] = toStrength(u[i]!);
      room += (strengths[i]! - limits.low[i]!) * dyes[i]!.share;
    }
    ciede2000Components(target, mixedLab(mixture, strengths), out);
    out[3] = overfull * Math.max(0, room - limits.room);
  };
  const search = (start: ArrayLike<number>, leastGain: number) =>
    boundedLeastSquares({ residuals, count: 4, start, low, high, enough: perfect * perfect, leastGain });
  let best: BoundedFit | undefined;
  for (const start of [...more, ...usualStarts(dyes.length)]) {
    const found = search(start.map(toPlace), coarse);
    if (best === undefined || found.residualSum < best.residualSum) best = found;
    if (best.residualSum <= perfect * perfect) break;
  }
  const closest = search(best!.parameters, fine);
  const solved = withRoom(mixture, Array.from(closest.parameters, toStrength), limits);
  const lab = mixedLab(mixture, solved);
  return { strengths: solved, lab, deltaE00: ciede2000(target, lab) };
}

/** Strengths whose concentrates fit: all nearer to the low ones by what is too much. */
function withRoom(
  { dyes }: Mixture,
  strengths: readonly number[],
  { low, room }: StrengthLimits,
): readonly number[] {
  const taken = dyes.reduce((sum, { share }, i) => sum + share * (strengths[i]! - low[i]!), 0);
  if (taken <= room) return strengths;
  return strengths.map((strength, i) => low[i]! + ((strength - low[i]!) * room) / taken);
}
