import { ciede2000 } from "../../colour/difference/ciede2000.js";
import { screenColour } from "../../colour/screen/screen-swatch.js";
import { done, type Outcome } from "../../fault.js";
import type { Base, Handling, Lab } from "../../model/batch.js";
import { dipTimer, equivalentSeconds } from "../../uptake/law/dip-time.js";
import { madeUpStrength } from "../../uptake/law/measured-at.js";
import { otherBase } from "../../uptake/shade/aim.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { windowAround } from "../../uptake/shade/find-time.js";
import { labAfter, type ShadeCurve } from "../../uptake/swatches/shade-curve.js";
import { type LeftOutTimes, mergedTimes, type ReasonAt } from "./left-out.js";

/** A colour that can be offered: the dip in a fresh bath, and how far what goes wrong moves it. */
export interface OfferedColour {
  readonly dye: string;
  readonly base: string | null;
  readonly name: string;
  readonly seconds: number;
  readonly lab: Lab;
  readonly hex: string;
  /** Of a base that the swatches were not dyed on. */
  readonly estimated: boolean;
  /** Dips that stay within the tolerance; the far end null where the curve never leaves it. */
  readonly windowSeconds: readonly [from: number, to: number | null];
  /** The larger of what 2 °C more and less do [CIEDE2000]. */
  readonly deltaE00ForCelsius: number;
  /** The larger of what 10 % more and less strength do [CIEDE2000]. */
  readonly deltaE00ForStrength: number;
}

export interface DyeColours {
  readonly colours: readonly OfferedColour[];
  readonly leftOut: readonly LeftOutTimes[];
}

/** What a colour must hold through. */
export const holds = { celsius: 2, strength: 0.1 } as const;

/** Colours that a customer tells apart are so many tolerances from each other. */
export const apartTolerances = 2;

/**
 * Colours along a dye's curve on one base, pale to dark, at whole seconds up to the longest swatch: each is two
 * tolerances (CIEDE2000) from the bare base and from every other, can be timed, and stays within the tolerance where the
 * bath is 2 °C or 10 % of strength off. Left out are dips that would be a colour of their own but for one of these.
 */
export function offeredColours(
  model: DyeModel & { readonly chosen: { readonly curve: ShadeCurve } },
  handling: Pick<Handling, "shortestSeconds" | "longestSeconds" | "timingSeconds">,
  tolerance: number,
  base: Base | undefined,
): Outcome<DyeColours> {
  const { dye, uptake, chosen } = model;
  const other = otherBase(model, base);
  if (!other.ok) return other;
  const ks = other.value;
  const strength = madeUpStrength(dye);
  const { celsius } = dye;
  const timer = dipTimer(uptake, celsius, strength);
  const colourOf = (seconds: number, moreCelsius = 0, moreStrength = 0): Lab =>
    labAfter(
      chosen.curve,
      equivalentSeconds(uptake, {
        seconds,
        strength: strength * (1 + moreStrength),
        celsius: celsius + moreCelsius,
      }),
      ks,
    );
  const inBath = (fresh: number): number => timer(fresh, 1);
  const describe = (seconds: number): OfferedColour => {
    const lab = colourOf(seconds);
    const moved = (moreCelsius: number, moreStrength: number): number =>
      ciede2000(lab, colourOf(seconds, moreCelsius, moreStrength));
    const fresh = equivalentSeconds(uptake, { seconds, strength, celsius });
    const [from, to] = windowAround(chosen.curve, fresh, tolerance, ks);
    return {
      dye: dye.name,
      base: (base ?? dye.base)?.name ?? null,
      name: `${dye.name}-${seconds}s`,
      seconds,
      lab,
      hex: screenColour(lab, dye.reading).hex,
      estimated: ks !== undefined,
      windowSeconds: [inBath(from), to === null ? null : inBath(to)],
      deltaE00ForCelsius: Math.max(moved(holds.celsius, 0), moved(-holds.celsius, 0)),
      deltaE00ForStrength: Math.max(moved(0, holds.strength), moved(0, -holds.strength)),
    };
  };
  const bare = labAfter(chosen.curve, 0, ks);
  const last = Math.floor(
    Math.min(handling.longestSeconds, inBath(chosen.curve.referenceSeconds)) * (1 + 1e-9),
  );
  const colours: OfferedColour[] = [];
  const reasons: ReasonAt[] = [];
  for (let seconds = 1; seconds <= last; seconds++) {
    const lab = colourOf(seconds);
    if (![bare, ...colours.map((one) => one.lab)].every((other) => isApart(other, lab, tolerance))) continue;
    const one = describe(seconds);
    const reason = whyNot(one, handling, tolerance);
    if (reason === undefined) colours.push(one);
    else reasons.push({ seconds, ...reason });
  }
  return done({ colours, leftOut: mergedTimes(dye.name, (base ?? dye.base)?.name ?? null, reasons) });
}

const isApart = (one: Lab, other: Lab, tolerance: number): boolean =>
  ciede2000(one, other) >= apartTolerances * tolerance;

/** Why a dip is not offered, by the first reason in this order; undefined where nothing speaks against it. */
function whyNot(
  { seconds, windowSeconds: [from, to], deltaE00ForCelsius, deltaE00ForStrength }: OfferedColour,
  { shortestSeconds, timingSeconds }: Pick<Handling, "shortestSeconds" | "timingSeconds">,
  tolerance: number,
): Omit<ReasonAt, "seconds"> | undefined {
  if (seconds < shortestSeconds) return { reason: "too-short", figure: shortestSeconds };
  if (to !== null && to - from < 2 * timingSeconds) return { reason: "too-narrow", figure: to - from };
  if (deltaE00ForCelsius > tolerance) return { reason: "temperature", figure: deltaE00ForCelsius };
  if (deltaE00ForStrength > tolerance) return { reason: "strength", figure: deltaE00ForStrength };
  return undefined;
}
