import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { uncorrected } from "../mixture/correction.js";
import type { MixDye } from "../mixture/mix-dye.js";
import { mixedLab, mixtureOf } from "../mixture/mixture.js";
import { type Carried, carriedStrength } from "./carried-strength.js";

/** A bath by the dyes in it and their strengths; one dye of strength 1 is that dye's fresh bath. */
export interface Liquor {
  readonly name: string;
  readonly dyes: readonly MixDye[];
  readonly strengths: readonly number[];
}

/** Largest shift that nobody sees [CIEDE2000]. */
export const unseenShift = 0.3;
/** A strength of another dye that shifts no colour by as much as is seen [-]: baskets that are rinsed bring less. */
export const tracelessStrength = 1e-5;
const mostRinses = 20;

/** How far a dip in a bath is off when liquor of another was brought into it [CIEDE2000]. */
export function carryOverShift(
  last: Liquor,
  next: Liquor,
  seconds: number,
  carried: Carried,
  rinses = 0,
): number {
  const own = mixtureOf(next.dyes, seconds);
  // What is dyed and how hot stay the same, whatever the guests' swatches were dyed on and at.
  const guests = last.dyes
    .filter(({ name }) => !next.dyes.some((dye) => dye.name === name))
    .map((dye): MixDye => ({ ...dye, baseKs: own.baseKs }));
  const brought = (dye: MixDye): number => {
    const at = last.dyes.findIndex(({ name }) => name === dye.name);
    return at < 0 ? 0 : carriedStrength(last.strengths[at]!, carried, rinses);
  };
  const clean = mixedLab(own, next.strengths);
  const soiled = mixedLab(mixtureOf([...next.dyes, ...guests], seconds, uncorrected, own.dip.celsius), [
    ...next.strengths.map((strength, i) => strength + brought(next.dyes[i]!)),
    ...guests.map(brought),
  ]);
  return ciede2000(clean, soiled);
}

/** The fewest rinses that keep the shift where nobody sees it. */
export function rinsesUnseen(last: Liquor, next: Liquor, seconds: number, carried: Carried): number {
  let rinses = 0;
  while (rinses < mostRinses && carryOverShift(last, next, seconds, carried, rinses) > unseenShift) rinses++;
  return rinses;
}
