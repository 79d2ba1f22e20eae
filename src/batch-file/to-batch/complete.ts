import { mapped } from "../../core/mapped.js";
import type { BathStart, Colour } from "../../core/model/batch.js";
import { defaults, standardReading } from "../../core/model/defaults.js";
import type { MeshUnit } from "../../core/part/units.js";
import type { RawSpec } from "../schema/batch.js";
import type { Amount } from "../schema/quantities.js";
import { assumed, evidenceOf, orElse, quantityOf } from "./defaulted.js";
import { type Entries, makeEach } from "./entries.js";
import { completeHandling } from "./handling.js";

type Raw<K extends keyof RawSpec> = NonNullable<RawSpec[K]>;
type RawDye = Exclude<Raw<"dyes">[string], { mix: unknown }>;
type RawMix = Extract<Raw<"dyes">[string], { mix: unknown }>;
type RawSwatch = NonNullable<RawDye["swatches"]>[number];

const none = {};
const noBases: Raw<"bases"> = {};

function assumedUptake(dilution: RawDye["dilution"]): Amount {
  const { uptakeMlPerDm2, powderUptakeLiquorMlPerDm2 } = defaults.dye;
  return assumed(
    dilution.kind === "liquid"
      ? uptakeMlPerDm2
      : { ...uptakeMlPerDm2, value: (powderUptakeLiquorMlPerDm2 * dilution.value) / 1000 },
  );
}

const { activationEnergyJPerMol, law } = defaults.dye;
const assumedActivation = assumed(activationEnergyJPerMol);

/** The colour of a swatch; a reflectance file is read later. */
export type SwatchColour = Colour | { readonly kind: "file"; readonly file: string };

const colourOf = ({ lab, hex, reflectance }: RawSwatch): SwatchColour =>
  lab !== undefined
    ? { kind: "lab", lab }
    : hex !== undefined
      ? { kind: "hex", hex }
      : { kind: "file", file: reflectance ?? "" };

const completeDye = (dye: RawDye) => ({
  ...dye,
  reading: dye.reading ?? standardReading,
  swatches: mapped(dye.swatches ?? [], (swatch) => ({ ...swatch, colour: colourOf(swatch) })),
  law: dye.law ?? law,
  activationEnergy: dye.activationEnergy ?? assumedActivation,
  strengthExponent: dye.strengthExponent === undefined ? undefined : { value: dye.strengthExponent },
  uptake: quantityOf(dye.uptake) ?? assumedUptake(dye.measuredAt?.dilution ?? dye.dilution),
  uptakeEvidence: evidenceOf(dye.uptake),
});

const noMixes: Entries<RawMix> = {};

/** Dyes that are no mixes, and mixes of them; the same dyes where there are no mixes. */
function splitDyes(dyes: Raw<"dyes">): { readonly plain: Entries<RawDye>; readonly mixes: Entries<RawMix> } {
  const names = Object.keys(dyes);
  const isMix = (name: string): boolean => "mix" in dyes[name]!;
  if (!names.some(isMix)) return { plain: dyes as Entries<RawDye>, mixes: noMixes };
  const those = <T>(keep: (name: string) => boolean) =>
    Object.fromEntries(names.filter(keep).map((name) => [name, dyes[name]])) as Entries<T>;
  return { plain: those<RawDye>((name) => !isMix(name)), mixes: those<RawMix>(isMix) };
}

const completeTank = (tank: Raw<"tanks">[string]) => ({
  ...tank,
  insulation: tank.insulation ?? defaults.tank.insulation,
  cover: tank.cover ?? defaults.tank.cover,
  heaterEfficiency: orElse(tank.heaterEfficiency, defaults.tank.heaterEfficiency),
  agitation: orElse(tank.agitation, defaults.tank.agitationW),
});

const completeDryer = (dryer: Raw<"dryers">[string]) => ({
  ...dryer,
  duty: orElse(dryer.duty, defaults.dryer.duty),
});

const completeShade = (shade: Raw<"shades">[string]) => ({
  ...shade,
  tolerance: shade.tolerance ?? defaults.shade.tolerance,
});

type RawPart = Raw<"parts">[string];

interface CompletePart extends Omit<RawPart, "mesh" | "density" | "heatCapacity"> {
  readonly mesh: { readonly file: string; readonly unit?: MeshUnit | undefined } | undefined;
  readonly density: Amount;
  readonly heatCapacity: Amount;
  /** From the model, once it is read. */
  readonly boxMm?: readonly [x: number, y: number, z: number];
}

/** Density of sintered nylon, the default [g/cm3]. */
const assumedDensity: Amount = { value: defaults.part.densityGPerCm3, assumed: true };

const meshOf = (mesh: RawPart["mesh"]): CompletePart["mesh"] =>
  typeof mesh === "string" ? { file: mesh } : mesh;

const completePart = (part: RawPart): CompletePart => ({
  ...part,
  mesh: meshOf(part.mesh),
  density: part.density ?? assumedDensity,
  heatCapacity: orElse(part.heatCapacity, defaults.part.heatCapacityKjPerKgK),
});

/** What is in a tank before the first load. */
export type SpecStart =
  | { readonly kind: "fresh" }
  /** Until the log is read. */
  | { readonly kind: "log" }
  | {
      readonly kind: "kept";
      /** Measured hot; absent where `coldVolume` is given. */
      readonly volume: Amount | undefined;
      readonly coldVolume: Amount | undefined;
      readonly strength: Amount | Entries<Amount>;
      readonly age: Amount;
      readonly area: Amount;
      readonly log?: Extract<BathStart, { kind: "kept" }>["log"];
    };

const completeStart = (start: Raw<"baths">[number]["start"]): SpecStart =>
  typeof start === "object"
    ? {
        kind: "kept",
        volume: start.volume,
        coldVolume: start.coldVolume,
        strength: start.strength ?? { value: defaults.keptBath.strength },
        age: orElse(start.age, defaults.keptBath.ageDays),
        area: orElse(start.area, defaults.keptBath.areaDm2),
      }
    : { kind: start ?? "fresh" };

interface Completed {
  readonly tanks: Entries<ReturnType<typeof completeTank>>;
  readonly dryers: Entries<ReturnType<typeof completeDryer>>;
  readonly dyes: Entries<ReturnType<typeof completeDye>>;
  readonly mixes: Entries<RawMix>;
  readonly parts: Entries<CompletePart>;
  readonly shades: Entries<ReturnType<typeof completeShade>>;
}

const withDefaults = (raw: RawSpec, named: Completed) => ({
  ...raw,
  rates: raw.rates ?? {},
  room: {
    temperature: orElse(raw.room?.temperature, defaults.room.celsius),
    humidity: orElse(raw.room?.humidity, defaults.room.humidity),
  },
  ...named,
  bases: raw.bases ?? noBases,
  baths: mapped(raw.baths ?? [], (bath) => ({
    ...bath,
    start: completeStart(bath.start),
    topUp: bath.topUp ?? defaults.bath.topUp,
    after: bath.after ?? defaults.bath.after,
  })),
  orders: raw.orders ?? [],
  handling: completeHandling(raw.handling ?? none),
  consumables: {
    perBath: orElse(raw.consumables?.perBath, defaults.consumables.perBath),
    perLoad: orElse(raw.consumables?.perLoad, defaults.consumables.perLoad),
    perPart: orElse(raw.consumables?.perPart, defaults.consumables.perPart),
  },
  yield: orElse(raw.yield, defaults.yield),
  limits: raw.limits ?? {},
});

/**
 * A batch as written, with its defaults: things still refer to each other by name, and every quantity is an amount that
 * may carry ± and whether it was assumed. `toBatch` makes the batch of plain numbers.
 */
export type Spec = ReturnType<typeof withDefaults>;

/** Fills in the defaults; reuses the completed entries of a batch that shares them (`like`). */
export function complete(
  raw: RawSpec,
  like?: { readonly raw: RawSpec; readonly completed: Completed },
): Spec {
  const before = <From, To>(from: Entries<From> | undefined, to: Entries<To> | undefined) =>
    from && to && { from, to };
  const { raw: from, completed: to } = like ?? {};
  const { plain, mixes } = splitDyes(raw.dyes ?? none);
  return withDefaults(raw, {
    tanks: makeEach(raw.tanks ?? none, completeTank, before(from?.tanks, to?.tanks)),
    dryers: makeEach(raw.dryers ?? none, completeDryer, before(from?.dryers, to?.dryers)),
    dyes: makeEach(plain, completeDye, before(from?.dyes && splitDyes(from.dyes).plain, to?.dyes)),
    mixes,
    parts: makeEach(raw.parts ?? none, completePart, before(from?.parts, to?.parts)),
    shades: makeEach(raw.shades ?? none, completeShade, before(from?.shades, to?.shades)),
  });
}
