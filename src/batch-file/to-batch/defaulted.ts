import type { AssumedFigure } from "../../core/model/defaults.js";
import type { Amount } from "../schema/quantities.js";

/** The quantity, or its default. */
export const orElse = (amount: Amount | undefined, value: number): Amount => amount ?? { value };

/** A figure that nobody gave; without a factor it has no range to draw from. */
export const assumed = (figure: AssumedFigure | Pick<AssumedFigure, "value">): Amount => ({
  ...figure,
  assumed: true,
});

/** The quantity, unless the file gives evidence of it instead. */
export const quantityOf = <T extends Amount>(
  of: T | { readonly evidence: unknown } | undefined,
): T | undefined => (of === undefined || "evidence" in of ? undefined : of);

export const evidenceOf = <T>(of: Amount | { readonly evidence: readonly T[] } | undefined): readonly T[] =>
  of !== undefined && "evidence" in of ? of.evidence : [];
