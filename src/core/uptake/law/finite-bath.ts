import { integrate } from "../../maths/quadrature.js";
import type { LawName } from "../../model/batch.js";
import { referenceUptake, type UptakeModel } from "./depth.js";
import { strengthForUptake, uptakeAtStrength } from "./isotherm.js";
import { lawUptake } from "./laws.js";

/** Inverse of a law's own speed, 1/g'(x), where it has come to u = g(x) of its plateau. */
function slowness(law: LawName, u: number): number {
  switch (law) {
    case "first-order":
      return 1 / (1 - u);
    case "second-order":
      return 1 / (1 - u) ** 2;
    case "parabolic":
      return 2 * u;
    case "cegarra-puente":
      return (2 * u) / (1 - u * u);
  }
}

/**
 * The constant strength at which a dip would take as long as it does in a bath that the parts weaken meanwhile.
 *
 * dD/dt = k P g'(g⁻¹(D/P)), P = a(s)/g(k t_ref) the plateau that the bath's strength s allows at that moment,
 * s falling in proportion to D from `before` to `after` [-]; for the first-order law and a linear isotherm that is
 * dD/dt = k (P - D). The time does not depend on k but through k t. Most of a dip's time is spent near its end,
 * where the bath is weak, so the result is below the mean of the two strengths: the mean is 2 % short in time for
 * a dip to half its plateau that takes 10 % of the dye, 1 % where it takes 5 %. Undefined where the bath is too
 * weak for the depth at any time.
 * @source lagergren1898 first-order
 * @example
 * strengthDuringDip({ law: "first-order", ratePerSecond: 0.01, referenceSeconds: 1e9, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 0.5, { before: 1, after: 1 }) // => 1.000000000
 * strengthDuringDip({ law: "first-order", ratePerSecond: 0.01, referenceSeconds: 1e9, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, 0.5, { before: 1, after: 0.9 }) // => 0.936325
 */
export function strengthDuringDip(
  model: UptakeModel,
  depth: number,
  strength: { readonly before: number; readonly after: number },
): number | undefined {
  const { law, saturation } = model;
  const { before, after } = strength;
  if (depth === 0) return before;
  const reference = referenceUptake(model);
  const plateau = (share: number): number =>
    uptakeAtStrength(before + (after - before) * share, saturation) / reference;
  const last = plateau(1);
  if (!(last > 0) || (law !== "parabolic" && depth >= last)) return undefined;
  const x = integrate(
    (share) => (depth * slowness(law, (depth * share) / plateau(share))) / plateau(share),
    0,
    1,
  );
  return strengthForUptake((depth * reference) / lawUptake(law, x), saturation);
}
