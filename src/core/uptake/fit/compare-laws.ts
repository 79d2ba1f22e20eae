import type { LawName } from "../../model/batch.js";
import type { UptakeFits } from "./fit-uptake.js";

/** How far readings speak for one law against the others. */
export type Apartness =
  /** Too few points for AICc: nothing but the residual variance compares them. */
  | { readonly told: "unknown" }
  /** Another law has a lower AICc than the one that was asked for. */
  | { readonly told: "worse"; readonly nearest: LawName; readonly aiccApart: number }
  /** `nearest` is the law that comes next, so much higher in AICc; undefined where no other law has constants. */
  | { readonly told: "no" | "partly" | "yes"; readonly nearest: LawName; readonly aiccApart: number }
  | { readonly told: "yes"; readonly nearest: undefined };

/**
 * Whether readings tell a law apart from the next best, by the difference of their AICc: up to 2 they do not, up to
 * 10 in part, above they do. Laws whose rate the readings leave open have no say.
 * @source burnhamAnderson2002 section 2.6
 * @example
 * tellApart({ law: "first-order", bestLaw: "first-order", aicc: 5, perLaw: [] }).told // => "yes"
 */
export function tellApart(
  fits: Pick<UptakeFits, "law" | "bestLaw" | "aicc"> & {
    readonly perLaw: readonly Pick<UptakeFits, "law" | "aicc" | "limit">[];
  },
): Apartness {
  const { aicc } = fits;
  if (aicc === undefined || fits.perLaw.some((fit) => fit.aicc === undefined)) return { told: "unknown" };
  const others = fits.perLaw.filter(({ law, limit }) => law !== fits.law && limit === undefined);
  if (others.length === 0) return { told: "yes", nearest: undefined };
  const next = others.reduce((least, other) => (other.aicc! < least.aicc! ? other : least));
  const nearest = next.law;
  const above = next.aicc! - aicc;
  if (above < 0) return { told: "worse", nearest, aiccApart: -above };
  return { told: above <= 2 ? "no" : above <= 10 ? "partly" : "yes", nearest, aiccApart: above };
}
