import { coldPerHot } from "../../core/bath/water.js";
import { mapped } from "../../core/mapped.js";
import type * as model from "../../core/model/batch.js";
import { defaults, standardReading } from "../../core/model/defaults.js";
import { undyed } from "../../core/model/undyed.js";
import type { Spec } from "./complete.js";
import { handling } from "./handling.js";
import { startStrength } from "./mixes.js";
import { type Models, modelsOf } from "./models.js";
import { present } from "./present.js";

function start(
  of: Spec["baths"][number]["start"],
  { celsius, mix }: model.Dye,
  roomCelsius: number,
): model.BathStart {
  if (of.kind === "kept")
    return {
      kind: "kept",
      volumeL: of.volume?.value ?? of.coldVolume!.value / coldPerHot(celsius, roomCelsius),
      ...startStrength(of.strength, mix),
      ageDays: of.age.value,
      areaDm2: of.area.value,
      ...(of.log && { log: of.log }),
    };
  // A bath whose log is not read yet is as good as any until then.
  return { kind: "fresh" };
}

/** One dip in a bath as it is. */
const trial = (of: Spec["baths"][number]["trial"]): model.Bath["trial"] =>
  of && {
    seconds: of.time.value,
    colour: of.lab === undefined ? { kind: "hex", hex: of.hex ?? "" } : { kind: "lab", lab: of.lab },
  };

/** Makes the batch of plain numbers from a spec whose names are checked. */
export function toBatch(spec: Spec, models: Models = modelsOf(spec)): model.Batch {
  const { tanks, dyes, parts, shades, bases } = models;
  const { pricing: p, rates, consumables: c } = spec;
  return present({
    name: spec.batch,
    date: spec.date,
    currency: spec.currency,
    startAtMinute: spec.startAt,
    log: spec.log,
    rates: present({
      electricityPerKwh: rates.electricity?.value,
      waterPerM3: rates.water?.value,
      labourPerHour: rates.labour?.value,
      disposalPerL: rates.disposal?.value,
    }),
    room: { celsius: spec.room.temperature.value, humidity: spec.room.humidity.value },
    dryers: Object.values(models.dryers),
    bases: bases.all(),
    dyes: Object.values(dyes),
    parts: Object.values(parts),
    shades: Object.values(shades),
    tanks: Object.values(tanks),
    baths: mapped(
      spec.baths,
      (bath, index): model.Bath =>
        present({
          index,
          tank: tanks[bath.tank]!,
          dye: dyes[bath.dye]!,
          start: start(bath.start, dyes[bath.dye]!, spec.room.temperature.value),
          trial: trial(bath.trial),
          topUp: bath.topUp,
          after: bath.after,
          everyDays: bath.every?.value,
        }),
    ),
    orders: mapped(spec.orders, (order, index): model.Order => {
      const wanted = order.shade === undyed ? undefined : shades[order.shade]!;
      return present({
        index,
        part: parts[order.part]!,
        shade: wanted,
        base:
          order.base === undefined
            ? wanted?.dye.base
            : bases.under(order.base, wanted?.dye.reading ?? standardReading),
        quantity: order.quantity,
        due: order.due,
      });
    }),
    handling: handling(spec.handling),
    consumables: { perBath: c.perBath.value, perLoad: c.perLoad.value, perPart: c.perPart.value },
    yield: spec.yield.value,
    rework: spec.rework?.value,
    pricing:
      p &&
      present({
        overhead: p.overhead?.value ?? defaults.pricing.overhead,
        fees: p.fees?.value ?? defaults.pricing.fees,
        margin: p.margin?.value ?? defaults.pricing.margin,
        tax: p.tax?.value ?? defaults.pricing.tax,
        ending: p.ending,
      }),
    limits: present({ costPerPart: spec.limits.costPerPart?.value }),
  });
}
