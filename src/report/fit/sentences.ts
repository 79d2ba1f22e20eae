import { tellApart } from "../../core/uptake/fit/compare-laws.js";
import { lawInverse } from "../../core/uptake/law/laws.js";
import { timeSaid } from "./digits.js";
import type { FitFacts } from "./facts.js";

/** How long dyeing takes by the law. */
function pace({ fits: { law, halfTime, parameters } }: FitFacts): string {
  const most = lawInverse(law, 0.9);
  if (halfTime === undefined || most === undefined)
    return "Uptake grows with the square root of time: twice as much takes four times as long. No plateau shows, so there is no half time.";
  return `Half of the plateau is taken up after ${timeSaid(halfTime)}, 90 % of it after ${timeSaid(most / parameters!.rate)}.`;
}

/** Which law, and how sure that is. */
function choice({ fits }: FitFacts): string {
  const apart = tellApart(fits);
  const asked = fits.law === fits.bestLaw ? "fits best" : "was asked for";
  if (apart.told === "unknown")
    return `The ${fits.law} law ${asked}; ${fits.points} readings are too few to tell the laws apart.`;
  const { nearest } = apart;
  if (nearest === undefined) return `Only the ${fits.law} law fits at all.`;
  const lower = (value: number): string => `AICc ${value.toFixed(1)} lower`;
  if (apart.told === "worse")
    return `The ${fits.law} law was asked for; the ${nearest} law fits better (${lower(apart.aiccApart)}).`;
  const { halfTime } = fits.perLaw.find(({ law }) => law === nearest)!;
  const other = halfTime === undefined ? "" : `, by which the half time is ${timeSaid(halfTime)}`;
  const said = `The ${fits.law} law fits best (${lower(apart.aiccApart)} than the next), `;
  switch (apart.told) {
    case "yes":
      return `${said}and the readings tell it apart from the ${nearest} law.`;
    case "partly":
      return `${said}and the readings speak for it, but do not rule out the ${nearest} law${other}.`;
    case "no":
      return `${said}but the readings do not tell it apart from the ${nearest} law${other}.`;
  }
}

/** What a fit says to someone who wants to dip. */
export const sentences = (facts: FitFacts): string => `${pace(facts)} ${choice(facts)}`;
