import type { Assumption } from "../../model/assumption.js";

/** The assumptions of several plans, each once, without the share of the cost that it carries in one of them. */
export const ofAnyDay = (assumptions: readonly Assumption[]): Assumption[] => [
  ...new Map(assumptions.map(({ costShare: _, ...one }) => [one.message, one])).values(),
];
