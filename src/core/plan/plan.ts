import { topUpCelsiusOf } from "../bath/load/bath-setting.js";
import { done, type Outcome } from "../fault.js";
import { mapped } from "../mapped.js";
import { largest } from "../maths/extent.js";
import type { Batch } from "../model/batch.js";
import { dyeKinds } from "../quantity/dye/dye-kinds.js";
import { type CautionFacts, cautions } from "./advice/cautions.js";
import { adviceFor } from "./advice/part-advice.js";
import type { Plan } from "./plan-model.js";
import { planBath } from "./results/plan-bath.js";
import type { SharedWork } from "./run/shared-work.js";
import { workBatch } from "./run/work-batch.js";

/**
 * The whole run sheet of a batch: make-up, loads and times, top-ups, the day, costs, cautions. `shared`: work that many
 * plans have in common, which makes them faster.
 * Errors where an order cannot be dyed, a heater cannot reach its temperature, or a bath is too weak.
 */
export function planBatch(batch: Batch, shared?: SharedWork): Outcome<Plan> {
  const worked = workBatch(batch, "own", shared);
  if (!worked.ok) return worked;
  const { runs, lives, aims, day } = worked.value;
  const { batch: name, date, currency, orders, totals, assumptions, warnings, ...costs } = worked.value.costs;
  const { handling } = batch;
  const dryer = batch.dryers[0];
  return done(
    {
      batch: name,
      date,
      currency,
      startAtMinute: batch.startAtMinute ?? null,
      ...(batch.log === undefined ? {} : { log: batch.log }),
      baths: mapped(runs, (run, i) => planBath(batch, run, lives[i]!, aims)),
      handling: {
        drainSeconds: handling.drainSeconds,
        rinseSeconds: handling.rinseSeconds,
        rinses: handling.rinses,
        rinseWaterL: handling.rinseWaterL,
        rinseEvery: handling.rinseEvery,
        belowKelvin: handling.belowKelvin,
        topUpCelsius: topUpCelsiusOf(handling, batch.room),
        coolToCelsius: handling.coolToCelsius,
      },
      dryer: dryer
        ? { name: dryer.name, capacity: dryer.capacity, celsius: dryer.celsius, minutes: dryer.minutes }
        : null,
      timeline: day.entries,
      orders,
      totals,
      ...costs,
      assumptions,
      advice: runs.flatMap(({ bath, loads }, i) =>
        adviceFor(
          i + 1,
          bath.dye.celsius,
          mapped(loads, ({ plan }) => plan.order.part),
          handling.dragOutMlPerDm2,
        ),
      ),
      cautions: cautions(cautionFacts(batch)),
      warnings,
    },
    worked.faults,
  );
}

const cautionFacts = ({ baths, dryers, room, handling }: Batch): CautionFacts => ({
  lid: baths.some((bath) => bath.tank.cover === "lid"),
  coolToCelsius: handling.coolToCelsius,
  celsius: largest(mapped(baths, (bath) => bath.dye.celsius)),
  roomCelsius: room.celsius,
  agitation: baths.some((bath) => bath.tank.agitationW > 0),
  drying: dryers.length > 0,
  powder: baths.some((bath) => dyeKinds[bath.dye.dilution.kind].raisesDust),
});
