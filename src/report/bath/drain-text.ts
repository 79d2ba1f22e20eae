import type { LongerDrain } from "../../core/plan/wear-model.js";
import { duration } from "../../core/quantity/text/duration.js";
import { fineMoney } from "../words/money.js";

/** What a longer drain would save and cost, and what it makes necessary. */
export function drainText(drain: LongerDrain, currency: string | null): string {
  const { low, high } = drain.share;
  const cents = (value: number): string => fineMoney(value, currency);
  const unit = currency ?? "";
  const saved =
    drain.savedPerLoad === null
      ? ""
      : `, ${cents(drain.savedPerLoad.low)} to ${cents(drain.savedPerLoad.high)} ${unit} of dye a load`;
  const time =
    drain.labourPerLoad === null
      ? duration(60 * drain.minutesPerLoad)
      : `${cents(drain.labourPerLoad)} ${unit}`;
  return `Draining ${duration(drain.toSeconds)} instead of ${duration(drain.fromSeconds)} would keep ${Math.round(100 * low)} to ${Math.round(100 * high)} % of what is rinsed away${saved}, for ${time} of time (an estimate: weigh wet parts at both). Colour deepens while parts drip, so a changed drain needs new swatches.`;
}
