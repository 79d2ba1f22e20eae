import { referenceUptake, type UptakeModel } from "../../uptake/law/depth.js";
import { strengthForUptake } from "../../uptake/law/isotherm.js";
import { lawInverse, lawUptake } from "../../uptake/law/laws.js";
import { usualTimeRatioRelative } from "./forms.js";

/**
 * Strength of a bath in which a depth takes so many times as long as it did in the fresh bath, and its standard
 * deviation from that of the ratio.
 *
 * a(s) = D g(k t_ref)/g(n k t), t the fresh bath's time, n the ratio; both dips at one temperature. Undefined where
 * the fresh bath does not reach the depth, or no strength makes a dip so short.
 * @example
 * strengthOfSlowerDip({ law: "parabolic", ratePerSecond: 0.01, referenceSeconds: 300, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 0.3, 4).strength // => 0.5
 */
export function strengthOfSlowerDip(
  model: UptakeModel,
  depth: number,
  ratio: number,
  relative: number = usualTimeRatioRelative,
): { readonly strength: number; readonly strengthError: number } | undefined {
  const { law, saturation } = model;
  const reference = referenceUptake(model);
  const x = lawInverse(law, depth * reference);
  if (x === undefined || !(x > 0)) return undefined;
  const at = (n: number): number | undefined =>
    strengthForUptake((depth * reference) / lawUptake(law, n * x), saturation);
  const [strength, high, low] = [at(ratio), at(ratio / (1 + relative)), at(ratio * (1 + relative))];
  if (strength === undefined || high === undefined || low === undefined) return undefined;
  return { strength, strengthError: (high - low) / 2 };
}
