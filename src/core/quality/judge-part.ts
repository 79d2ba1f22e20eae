import { ciede2000 } from "../colour/difference/ciede2000.js";
import type { Lab } from "../model/colour.js";
import { type DippedIn, dipTimer } from "../uptake/law/dip-time.js";
import type { DyeModel } from "../uptake/shade/dye-model.js";
import { hasCurve } from "../uptake/shade/dye-model.js";
import { nearestTime } from "../uptake/shade/find-time.js";
import { goOn } from "../uptake/shade/go-on.js";

/** What another dip in the same dye would do to a part. */
export interface SecondDip {
  readonly seconds: number;
  /** Expected difference from the shade after it [CIEDE2000]. */
  readonly deltaE00: number;
}

/** A dyed part beside the shade that it should have, along the curve of its dye. */
export interface PartDepth {
  /** Times in a fresh bath at the dye's temperature whose colours are nearest to the part's and the shade's. */
  readonly partSeconds: number;
  readonly shadeSeconds: number;
  readonly depth: "too light" | "too dark" | "right";
  /** How far the part's colour is from the curve: what no dip mends [CIEDE2000]. */
  readonly besideCurve: number;
  /** Dip of the part less that of the shade in the bath as it is; negative: too short [s]. */
  readonly apartSeconds: number;
  /** Null where the part is dark enough, or where a dip does not bring it nearer. */
  readonly secondDip: SecondDip | null;
}

/** A difference in time that no hand keeps, as a share of the shade's time. */
const alike = 0.02;

/**
 * Where a dyed part lies along the curve of its dye, and what a second dip would do: a part that is too light goes on
 * along the curve, and keeps its distance from it. Null where the dye has too few swatches to know its curve.
 * @param part CIELAB as read, under the dye's reading
 * @param shade CIELAB that is wanted, under the same
 * @param bath that a second dip would be in
 */
export function judgePart(model: DyeModel, part: Lab, shade: Lab, bath: DippedIn): PartDepth | null {
  if (!hasCurve(model)) return null;
  const there = nearestTime(model.chosen.curve, shade, 0, undefined, model.longestSeconds);
  const { at: here, lab: after } = goOn(model, part, there.seconds);
  const timer = dipTimer(model.uptake, bath.celsius);
  const apartSeconds = timer(here.seconds, bath.strength) - timer(there.seconds, bath.strength);
  const right = Math.abs(here.seconds - there.seconds) <= alike * there.seconds;
  const depth = right ? "right" : here.seconds < there.seconds ? "too light" : "too dark";
  const deltaE00 = ciede2000(shade, after);
  return {
    partSeconds: here.seconds,
    shadeSeconds: there.seconds,
    depth,
    besideCurve: here.deltaE00,
    apartSeconds,
    secondDip:
      depth === "too light" && deltaE00 < ciede2000(shade, part)
        ? { seconds: -apartSeconds, deltaE00 }
        : null,
  };
}
