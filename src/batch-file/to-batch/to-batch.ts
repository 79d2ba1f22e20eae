import { blankCost } from "../../core/cost/rate/blank.js";
import { mapped } from "../../core/mapped.js";
import type * as model from "../../core/model/batch.js";
import { defaults, standardReading, usualCapacityL } from "../../core/model/defaults.js";
import { type ParsedSurface, wettedWallDm2 } from "../../core/quantity/parse/parse-surface.js";
import { isBuild } from "../schema/blank.js";
import type { Amount } from "../schema/quantities.js";
import { baseUnder } from "./base-under.js";
import type { Spec } from "./complete.js";
import { rememberBy } from "./remember-by.js";

/** An object without the keys that are undefined: what an optional key of the model wants. */
type Present<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};
const present = <T extends object>(object: T): Present<T> => {
  const kept: Partial<T> = {};
  for (const key in object) if (object[key] !== undefined) kept[key] = object[key];
  return kept as unknown as Present<T>;
};

type Of<K extends "tanks" | "dryers" | "dyes" | "parts" | "shades"> = Spec[K][string];

const equipment = (given: Of<"tanks">["equipment"]): model.Equipment | undefined =>
  given && { price: given.price.value, lifeHours: given.life.value };

/** Side of the cube of a volume, squared [cm2]. */
const cubeSide = (volumeL: number): ParsedSurface => ({ shape: "area", value: (volumeL * 1000) ** (2 / 3) });

const tank = rememberBy((of: Of<"tanks">, name: string): model.Tank => {
  const volumeL = of.volume.value;
  const surface = of.surface ?? cubeSide(volumeL);
  return present({
    name,
    volumeL,
    capacityL: of.capacity?.value ?? usualCapacityL(volumeL),
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
});

const dryer = rememberBy(
  (of: Of<"dryers">, name: string): model.Dryer =>
    present({
      name,
      capacity: of.capacity,
      celsius: of.temperature.value,
      minutes: of.time.value,
      powerW: of.power.value,
      duty: of.duty.value,
      equipment: equipment(of.equipment),
    }),
);

/** How surely evidence tells an amount; undefined where it comes from none. */
const found = ({ assumedShare, interval95 }: Amount): model.Found | undefined =>
  assumedShare === undefined || interval95 === undefined ? undefined : { assumedShare, interval95 };

const colour = (of: Of<"dyes">["swatches"][number]["colour"]): model.Colour => {
  if (of.kind === "file") throw new Error(`the reflectance file ${of.file} was not read`);
  return of;
};

const dilution = (of: Of<"dyes">["dilution"]): model.Dilution =>
  of.kind === "liquid" ? { kind: "liquid", fraction: of.value } : { kind: "powder", gramsPerL: of.value };

const dye = rememberBy(
  (of: Of<"dyes">, name: string, ownBase: model.Base | undefined): model.Dye =>
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
      base: ownBase,
      reading: of.reading,
      swatches: mapped(of.swatches, (swatch) => ({
        seconds: swatch.time.value,
        ...(swatch.strength === undefined || swatch.strength.value === 1
          ? {}
          : { strength: swatch.strength.value }),
        ...(swatch.temperature === undefined ? {} : { celsius: swatch.temperature.value }),
        colour: colour(swatch.colour),
      })),
      law: of.law,
      ratePerSecond: of.rate?.value,
      saturation: of.saturation,
      stock: of.stock?.value,
      activationEnergyJPerMol: of.activationEnergy.value,
      activationEnergyAssumed: of.activationEnergy.assumed === true,
      strengthExponent: of.strengthExponent?.value,
      uptakePerDm2: of.uptake.value,
      uptakeAssumed: of.uptake.assumed === true,
      uptakeFound: found(of.uptake),
      shelfLifeDays: of.shelfLife?.value,
      notes: of.notes,
    }),
);

type Blank = NonNullable<Of<"parts">["blank"]>;
type Build = Extract<Blank, { powder: Amount }>;
const isAmount = (of: Blank): of is Extract<Blank, { value: number }> =>
  "value" in of && typeof of.value === "number";
const isBuilt = (of: Blank): of is Build => isBuild(of);

const oneBlank = (of: Amount | Build, massG: number): number =>
  isBuilt(of)
    ? blankCost({
        massG,
        powderPerKg: of.powder.value,
        refresh: of.refresh.value,
        packing: of.packing.value,
        buildHours: of.build.value,
        machinePerHour: of.machine.value,
        partsPerBuild: of.partsPerBuild,
        finishing: of.finishing?.value ?? defaults.blank.finishing,
      }).total
    : of.value;

const blank = (of: Blank | undefined, massG: number): number | ReadonlyMap<string, number> | undefined => {
  if (of === undefined) return undefined;
  if (isAmount(of) || isBuilt(of)) return oneBlank(of, massG);
  return new Map(mapped(Object.entries(of), ([base, each]) => [base, oneBlank(each, massG)]));
};

const part = rememberBy((of: Of<"parts">, name: string): model.Part => {
  if (of.mass === undefined || of.area === undefined) throw new Error(`the part ${name} was not measured`);
  return present({
    name,
    massG: of.mass.value,
    areaDm2: of.area.value,
    volumeCm3: of.volume?.value ?? of.mass.value / of.density.value,
    massAssumed: of.mass.assumed,
    boxMm: of.boxMm,
    blank: blank(of.blank, of.mass.value),
    perLoad: of.perLoad,
  });
});

const shade = rememberBy(
  (of: Of<"shades">, name: string, own: model.Dye): model.Shade => ({
    name,
    dye: own,
    target: target(of),
    tolerance: of.tolerance,
  }),
);

const handling = rememberBy(
  (h: Spec["handling"]): model.Handling => ({
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
  }),
);

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
  return { kind: "fresh" };
}

/** One dip in a bath as it is. */
const trial = (of: Spec["baths"][number]["trial"]): model.Bath["trial"] =>
  of && {
    seconds: of.time.value,
    colour: of.lab === undefined ? { kind: "hex", hex: of.hex ?? "" } : { kind: "lab", lab: of.lab },
  };

const named = <T, U>(
  entries: { readonly [name: string]: T },
  make: (of: T, name: string) => U,
): ReadonlyMap<string, U> => new Map(mapped(Object.entries(entries), ([name, of]) => [name, make(of, name)]));

const tanksOf = rememberBy((of: Spec["tanks"]) => named(of, tank));
const dryersOf = rememberBy((of: Spec["dryers"]) => named(of, dryer));
const partsOf = rememberBy((of: Spec["parts"]) => named(of, part));
const basesOf = rememberBy((of: Spec["bases"]) =>
  named(of, (base, name) => baseUnder(base, name, standardReading)),
);
const dyesOf = rememberBy((of: Spec["dyes"], bases: Spec["bases"]) =>
  named(of, (one, name) =>
    dye(one, name, one.base === undefined ? undefined : baseUnder(bases[one.base]!, one.base, one.reading)),
  ),
);
const shadesOf = rememberBy((of: Spec["shades"], dyes: ReadonlyMap<string, model.Dye>) =>
  named(of, (one, name) => shade(one, name, dyes.get(one.dye)!)),
);

/** The checked batch of plain numbers. The spec's names must have been checked. */
export function toBatch(spec: Spec): model.Batch {
  const tanks = tanksOf(spec.tanks);
  const bases = basesOf(spec.bases);
  const dyes = dyesOf(spec.dyes, spec.bases);
  const parts = partsOf(spec.parts);
  const shades = shadesOf(spec.shades, dyes);
  const { pricing: p, rates, consumables: c } = spec;
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
    dryers: [...dryersOf(spec.dryers).values()],
    bases: [...bases.values()],
    dyes: [...dyes.values()],
    parts: [...parts.values()],
    shades: [...shades.values()],
    tanks: [...tanks.values()],
    baths: mapped(
      spec.baths,
      (bath, index): model.Bath =>
        present({
          index,
          tank: tanks.get(bath.tank)!,
          dye: dyes.get(bath.dye)!,
          start: start(bath.start),
          trial: trial(bath.trial),
          topUp: bath.topUp,
          after: bath.after,
          everyDays: bath.every?.value,
        }),
    ),
    orders: mapped(spec.orders, (order, index): model.Order => {
      const wanted = shades.get(order.shade)!;
      return present({
        index,
        part: parts.get(order.part)!,
        shade: wanted,
        base:
          order.base === undefined
            ? wanted.dye.base
            : baseUnder(spec.bases[order.base]!, order.base, wanted.dye.reading),
        quantity: order.quantity,
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
