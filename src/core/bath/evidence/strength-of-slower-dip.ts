import { strengthForSlowing } from "../../uptake/law/slowing.js";
import { freshSeconds, type UptakeModel } from "../../uptake/law/uptake-model.js";
import { usualTimeRatioRelative } from "./forms.js";

/**
 * Strength of a bath in which a depth takes so many times as long as it did in the fresh bath, and its standard
 * deviation from that of the ratio; both dips at one temperature.
 *
 * `slowing` solved for the strength. Undefined where the fresh bath does not reach the depth, or no strength makes a
 * dip so short.
 * @example
 * strengthOfSlowerDip({ law: "parabolic", ratePerSecond: 0.01, referenceSeconds: 300, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 0.3, 4).strength // => 0.5
 */
export function strengthOfSlowerDip(
  model: UptakeModel,
  depth: number,
  ratio: number,
  relative: number = usualTimeRatioRelative,
): { readonly strength: number; readonly strengthError: number } | undefined {
  const fresh = freshSeconds(model, depth);
  if (fresh === undefined || !(fresh > 0)) return undefined;
  const at = (n: number): number | undefined => strengthForSlowing(model, fresh, n);
  const [strength, high, low] = [at(ratio), at(ratio / (1 + relative)), at(ratio * (1 + relative))];
  if (strength === undefined || high === undefined || low === undefined) return undefined;
  return { strength, strengthError: (high - low) / 2 };
}
