import type { Dye, Handling, Shade } from "../../model/batch.js";
import { measuredCelsius } from "../law/measured-at.js";

/** A dip of a sheet of swatches. */
export interface SheetDip {
  /** 0: the bare base, not dipped. */
  readonly seconds: number;
  readonly strength: number;
  readonly celsius: number;
  readonly base: string | null;
  /** How often it is dipped: 2 where it is repeated last. */
  readonly copies: number;
}

/** Swatches of a first ladder. */
const rungs = 4;

/** Without shades given as times a ladder ends here [s]: a dip of three minutes is near the deepest shade of most baths. Common practice, no source. */
const usualLast = 180;

/** Seconds as one would set a watch: whole ones to 20, then fives. */
export const handySeconds = (seconds: number): number =>
  seconds < 20 ? Math.round(seconds) : Math.round(seconds / 5) * 5;

/** Times in equal ratios from a first to a last, as one would set a watch. */
export const ladder = (first: number, last: number, count: number): readonly number[] => [
  ...new Set(
    Array.from({ length: count }, (_, i) => handySeconds(first * (last / first) ** (i / (count - 1)))),
  ),
];

/**
 * The swatches of a dye that has none: four times in equal ratios from the shortest dip to the longest that is worth
 * it, half as long again as the longest shade given as a time and at least three minutes; the bare base; and the
 * shortest dip once more at the end, which tells whether the bath or the reading drifted.
 */
export function firstSwatches(dye: Dye, shades: readonly Shade[], handling: Handling): readonly SheetDip[] {
  const asked = shades.flatMap(({ dye: of, target }) =>
    of === dye && target.kind === "time" ? [1.5 * target.seconds] : [],
  );
  const worth = asked.reduce((most, seconds) => Math.max(most, seconds), usualLast);
  const last = Math.max(2 * handling.shortestSeconds, Math.min(handling.longestSeconds, worth));
  const dip = (seconds: number, copies = 1): SheetDip => ({
    seconds,
    strength: 1,
    celsius: measuredCelsius(dye),
    base: dye.base?.name ?? null,
    copies,
  });
  const [first, ...others] = ladder(handling.shortestSeconds, last, rungs);
  return [dip(0), dip(first!, 2), ...others.map((seconds) => dip(seconds))];
}
