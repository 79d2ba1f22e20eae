import type { Assumption } from "../../model/assumption.js";

/** An assumption without what holds for the costs and the loads of one plan alone. */
const ofAnyDay = ({ message, ...rest }: Assumption): Assumption => ({
  ...rest,
  message: message
    .replace(/ \((under )?\d+ % of the cost\)/, "")
    .replace(/\b\d+ (top-up|change)s?\b/g, "$1s")
    .replace(/ takes? no time in this day/, " take no time"),
});

/** The assumptions of several plans, each once; times that are not counted as of the plan that lacks most of them. */
export function ofAnyDays(assumptions: readonly Assumption[]): Assumption[] {
  const each = [...new Map(assumptions.map(ofAnyDay).map((one) => [one.message, one])).values()];
  const uncounted = each.filter(({ code }) => code === "uncounted-times");
  const most = uncounted.reduce<Assumption | undefined>(
    (best, one) => (one.message.length > (best?.message.length ?? 0) ? one : best),
    undefined,
  );
  return each.filter((one) => one === most || one.code !== "uncounted-times");
}
