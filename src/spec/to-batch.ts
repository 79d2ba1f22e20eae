import type * as model from "../core/batch/model.js";
import { type ParsedSurface, wettedWallDm2 } from "../core/quantity/surface.js";
import type { Spec } from "./complete.js";
import type { Amount } from "./schema/quantities.js";

/** An object without the keys that are undefined: what an optional key of the model wants. */
type Present<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};
const present = <T extends object>(object: T): Present<T> =>
  Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined)) as Present<T>;

type Of<K extends "tanks" | "dryers" | "dyes" | "parts" | "shades"> = Spec[K][string];

const equipment = (given: Of<"tanks">["equipment"]): model.Equipment | undefined =>
  given && { price: given.price.value, lifeHours: given.life.value };

/** Side of the cube of a volume, squared [cm2]. */
const cubeSide = (volumeL: number): ParsedSurface => ({ shape: "area", value: (volumeL * 1000) ** (2 / 3) });

function tank(name: string, of: Of<"tanks">): model.Tank {
  const volumeL = of.volume.value;
  const surface = of.surface ?? cubeSide(volumeL);
  return present({
    name,
    volumeL,
    capacityL: of.capacity?.value ?? (115 * volumeL) / 100,
    surfaceCm2: surface.value,
    surfaceAssumed: of.surface === undefined,
    wallAreaDm2: of.wallArea?.value ?? wettedWallDm2(surface, volumeL),
    insulation: of.insulation,
    cover: of.cover,
    heaterW: of.heater?.value,
    heaterEfficiency: of.heaterEfficiency.value,
    agitationW: of.agitation.value,
    equipment: equipment(of.equipment),
  });
}

const dryer = (name: string, of: Of<"dryers">): model.Dryer =>
  present({
    name,
    capacity: of.capacity,
    celsius: of.temperature.value,
    minutes: of.time.value,
    powerW: of.power.value,
    duty: of.duty.value,
    equipment: equipment(of.equipment),
  });

/** How surely evidence tells an amount; undefined where it comes from none. */
const found = ({ assumedShare, interval95 }: Amount): model.Found | undefined =>
  assumedShare === undefined || interval95 === undefined ? undefined : { assumedShare, interval95 };

const colour = (of: Of<"dyes">["swatches"][number]["colour"]): model.Colour => {
  if (of.kind === "file") throw new Error(`the reflectance file ${of.file} was not read`);
  return of;
};

const dilution = (of: Of<"dyes">["dilution"]): model.Dilution =>
  of.kind === "liquid" ? { kind: "liquid", fraction: of.value } : { kind: "powder", gramsPerL: of.value };

const dye = (name: string, of: Of<"dyes">, bases: ReadonlyMap<string, model.Base>): model.Dye =>
  present({
    name,
    price: of.price?.value,
    dilution: dilution(of.dilution),
    celsius: of.temperature.value,
    measuredAt:
      of.measuredAt &&
      present({
        dilution: of.measuredAt.dilution && dilution(of.measuredAt.dilution),
        celsius: of.measuredAt.temperature?.value,
      }),
    base: of.base === undefined ? undefined : bases.get(of.base),
    reading: of.reading,
    swatches: of.swatches.map((swatch) => ({ seconds: swatch.time.value, colour: colour(swatch.colour) })),
    law: of.law,
    ratePerSecond: of.rate?.value,
    saturation: of.saturation,
    stock: of.stock?.value,
    activationEnergyJPerMol: of.activationEnergy.value,
    uptakePerDm2: of.uptake.value,
    uptakeAssumed: of.uptake.assumed === true,
    uptakeFound: found(of.uptake),
    shelfLifeDays: of.shelfLife?.value,
    notes: of.notes,
  });

type Blank = Of<"parts">["blank"];
const blank = (of: Blank): number | ReadonlyMap<string, number> | undefined => {
  if (of === undefined) return undefined;
  if (isAmount(of)) return of.value;
  return new Map(Object.entries(of).map(([base, amount]) => [base, amount.value]));
};
const isAmount = (of: NonNullable<Blank>): of is Extract<Blank, { value: number }> =>
  typeof of.value === "number";

/** Density of the parts' material where only the mass is given [g/cm3]. */
const densityGPerCm3 = 0.93;

const part = (name: string, of: Of<"parts">): model.Part => {
  if (of.mass === undefined || of.area === undefined) throw new Error(`the part ${name} was not measured`);
  return present({
    name,
    massG: of.mass.value,
    areaDm2: of.area.value,
    volumeCm3: of.volume?.value ?? of.mass.value / densityGPerCm3,
    blank: blank(of.blank),
    perLoad: of.perLoad,
  });
};

function target(of: Of<"shades">): model.ShadeTarget {
  if (of.time !== undefined) return { kind: "time", seconds: of.time.value };
  if (of.swatch !== undefined) return { kind: "swatch", seconds: of.swatch.value };
  if (of.lab !== undefined) return { kind: "colour", colour: { kind: "lab", lab: of.lab } };
  return { kind: "colour", colour: { kind: "hex", hex: of.hex ?? "" } };
}

function start(of: Spec["baths"][number]["start"]): model.BathStart {
  if (of.kind === "kept")
    return {
      kind: "kept",
      volumeL: of.volume.value,
      strength: of.strength.value,
      ageDays: of.age.value,
      areaDm2: of.area.value,
    };
  if (of.kind === "log") throw new Error("the bath log was not read");
  return { kind: "fresh" };
}

const named = <T, U>(
  entries: { readonly [name: string]: T },
  make: (name: string, of: T) => U,
): Map<string, U> => new Map(Object.entries(entries).map(([name, of]) => [name, make(name, of)]));

/** The checked batch of plain numbers. The spec's names must have been checked. */
export function toBatch(spec: Spec): model.Batch {
  const tanks = named(spec.tanks, tank);
  const bases = named(spec.bases, (name, of): model.Base => present({ name, lab: of.lab }));
  const dyes = named(spec.dyes, (name, of) => dye(name, of, bases));
  const parts = named(spec.parts, part);
  const shades = named(
    spec.shades,
    (name, of): model.Shade => ({
      name,
      dye: dyes.get(of.dye)!,
      target: target(of),
      tolerance: of.tolerance,
    }),
  );
  const { handling: h, pricing: p, rates, consumables: c } = spec;
  return present({
    name: spec.batch,
    date: spec.date,
    currency: spec.currency,
    startAtMinute: spec.startAt,
    rates: present({
      electricityPerKwh: rates.electricity?.value,
      waterPerM3: rates.water?.value,
      labourPerHour: rates.labour?.value,
      disposalPerL: rates.disposal?.value,
    }),
    room: { celsius: spec.room.temperature.value, humidity: spec.room.humidity.value },
    dryers: [...named(spec.dryers, dryer).values()],
    bases: [...bases.values()],
    dyes: [...dyes.values()],
    parts: [...parts.values()],
    shades: [...shades.values()],
    tanks: [...tanks.values()],
    baths: spec.baths.map(
      (bath, index): model.Bath =>
        present({
          index,
          tank: tanks.get(bath.tank)!,
          dye: dyes.get(bath.dye)!,
          start: start(bath.start),
          topUp: bath.topUp,
          after: bath.after,
          everyDays: bath.every?.value,
        }),
    ),
    orders: spec.orders.map((order, index): model.Order => {
      const shade = shades.get(order.shade)!;
      return present({
        index,
        part: parts.get(order.part)!,
        shade,
        base: order.base === undefined ? shade.dye.base : bases.get(order.base),
        quantity: order.quantity,
      });
    }),
    handling: {
      loadSeconds: h.load.value,
      drainSeconds: h.drain.value,
      rinseSeconds: h.rinse.value,
      unloadSeconds: h.unload.value,
      dryerLoadingMinutes: h.dryerLoading.value,
      setUpMinutes: h.setUp.value,
      cleanUpMinutes: h.cleanUp.value,
      timingSeconds: h.timing.value,
      shortestSeconds: h.shortest.value,
      longestSeconds: h.longest.value,
      dragOutMlPerDm2: h.dragOut.value,
      dragOutAssumed: h.dragOut.assumed === true,
      ...present({ dragOutFound: found(h.dragOut) }),
      rinseWaterL: h.rinseWater.value,
      liquorRatioLPerKg: h.liquorRatio.value,
      freeboard: h.freeboard.value,
    },
    consumables: { perBath: c.perBath.value, perLoad: c.perLoad.value, perPart: c.perPart.value },
    yield: spec.yield.value,
    pricing:
      p &&
      present({
        overhead: p.overhead?.value ?? 0,
        fees: p.fees?.value ?? 0,
        margin: p.margin?.value ?? 0,
        tax: p.tax?.value ?? 0,
        ending: p.ending,
      }),
    limits: present({ costPerPart: spec.limits.costPerPart?.value }),
  });
}
