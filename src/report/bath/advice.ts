import type { Plan, PlanBath } from "../../core/plan/plan-model.js";
import { duration } from "../../core/quantity/text/duration.js";
import { pour } from "../words/amounts.js";
import { mark } from "../words/assumed.js";
import { fineMoney } from "../words/money.js";

/** What a longer drain would save, and what it would cost; null where it saves nothing. */
export function drainText(plan: Plan, { longerDrain: drain }: PlanBath): string | null {
  if (drain === null) return null;
  const { low, high } = drain.share;
  const percents = `${Math.round(100 * low)} to ${Math.round(100 * high)} %`;
  const cents = (value: number): string => fineMoney(value, plan.currency);
  const saved =
    drain.savedPerLoad === null
      ? ""
      : `, ${cents(drain.savedPerLoad.low)} to ${cents(drain.savedPerLoad.high)} ${plan.currency ?? ""} of dye a load`;
  const time =
    drain.labourPerLoad === null
      ? `for ${duration(60 * drain.minutesPerLoad)} of time`
      : `for ${cents(drain.labourPerLoad)} ${plan.currency ?? ""} of time`;
  return `Draining ${duration(drain.toSeconds)} instead of ${duration(drain.fromSeconds)} would keep ${percents} of what is rinsed away${saved}, ${time} (an estimate; weigh wet parts at both).${mark(drain.restsOnAssumed)}`;
}

/** Holding and evaporation in one line; null where it was not looked at. */
export function heatText({ heating }: PlanBath): string | null {
  const { lidOff, lidOn } = heating;
  if (lidOff === undefined || lidOn === undefined) return null;
  const holds =
    lidOff.holds === null
      ? ""
      : lidOff.holds
        ? "; the heater holds it so"
        : `; the heater does not hold it: ${Math.abs(lidOff.kelvinPerMinute ?? 0).toFixed(1)} °C a minute are lost`;
  const covered =
    lidOn.lossW === lidOff.lossW
      ? ""
      : ` With a lid on: ${Math.round(lidOn.powerW)} W and ${pour(1000 * lidOn.evaporationKgPerH)}.`;
  return `While dipping, holding takes ${Math.round(lidOff.powerW)} W and ${pour(1000 * lidOff.evaporationKgPerH)} of water evaporate an hour${holds}.${covered}`;
}
