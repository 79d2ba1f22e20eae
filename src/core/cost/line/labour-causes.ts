import { type Factor, type LineCause, type LineChange, perGood, splitChange, yieldFactor } from "./change.js";
import type { CostDrivers } from "./drivers.js";

/** What moves the labour of an order. */
export type LabourCause =
  | "labour-rate"
  | "load-size"
  | "yield"
  | "strength"
  | "dip-time"
  | "handling-time"
  | "set-up-share";

/** A changed strength counts as the reason for a longer or shorter dip from here on. */
const strengthMoved = 0.002;

const inverse = (figure: number): number => 1 / figure;

/** The loads' share of labour is known to the second; the rest is set-up, cleaning and the dryer. */
export function labourCauses(line: LineChange): LineCause<LabourCause>[] {
  const [before, now] = line;
  const [was, is] = [before.drivers, now.drivers];
  const whole = [perGood(before), perGood(now)] as const;
  if (!was || !is || !(was.labourPerHour! > 0 && is.labourPerHour! > 0))
    return splitChange(whole[1] - whole[0], [{ code: "set-up-share", before: whole[0], now: whole[1] }]);
  const dipping = (quantity: number, drivers: CostDrivers): number =>
    (drivers.labourPerHour! * drivers.cycleSeconds * drivers.loads) / 3600 / quantity;
  const [wasDipping, isDipping] = [dipping(before.quantity, was), dipping(now.quantity, is)];
  const rate: Factor<LabourCause> = {
    code: "labour-rate",
    before: was.labourPerHour!,
    now: is.labourPerHour!,
  };
  const minutes = (money: number, drivers: CostDrivers): number =>
    (60 * Math.max(0, money)) / drivers.labourPerHour!;
  const loads = splitChange<LabourCause>(isDipping - wasDipping, [
    rate,
    { code: "load-size", before: was.partsPerLoad, now: is.partsPerLoad, as: inverse },
    yieldFactor(line),
    { code: "dip-time", before: was.cycleSeconds, now: is.cycleSeconds, as: (seconds) => seconds / 3600 },
  ]);
  return [
    ...loads.flatMap((cause) => (cause.code === "dip-time" ? cycleCauses(cause, was, is) : [cause])),
    ...splitChange<LabourCause>(whole[1] - isDipping - (whole[0] - wasDipping), [
      rate,
      {
        code: "set-up-share",
        before: minutes(whole[0] - wasDipping, was),
        now: minutes(whole[1] - isDipping, is),
        as: (spent) => spent / 60,
      },
    ]),
  ];
}

/** A longer cycle is a longer dip, of a weaker bath or not, or longer handling. */
function cycleCauses(
  { change }: LineCause<LabourCause>,
  was: CostDrivers,
  is: CostDrivers,
): LineCause<LabourCause>[] {
  const cycle = is.cycleSeconds - was.cycleSeconds;
  const dip = is.dipSeconds - was.dipSeconds;
  const share = cycle === 0 ? 0 : dip / cycle;
  const moved = is.strength - was.strength;
  const weaker = Math.abs(moved) >= strengthMoved && moved * dip < 0;
  return [
    weaker
      ? { code: "strength", before: was.strength, now: is.strength, change: change * share }
      : { code: "dip-time", before: was.dipSeconds, now: is.dipSeconds, change: change * share },
    {
      code: "handling-time",
      before: was.cycleSeconds - was.dipSeconds,
      now: is.cycleSeconds - is.dipSeconds,
      change: change * (1 - share),
    },
  ];
}
