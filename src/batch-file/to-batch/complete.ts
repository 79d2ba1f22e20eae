import { mapped } from "../../core/mapped.js";
import type { Colour } from "../../core/model/batch.js";
import { defaults, standardReading } from "../../core/model/defaults.js";
import type { MeshUnit } from "../../core/part/units.js";
import type { RawSpec } from "../schema/batch.js";
import type { Amount } from "../schema/quantities.js";
import { rememberBy } from "./remember-by.js";

type Raw<K extends keyof RawSpec> = NonNullable<RawSpec[K]>;
type RawDye = Raw<"dyes">[string];
type RawSwatch = NonNullable<RawDye["swatches"]>[number];

const given = (value: number): Amount => ({ value });
const orElse = (amount: Amount | undefined, value: number): Amount => amount ?? given(value);
/** Completes every entry of a map, and the same map, as that of an included file is in every batch, once. */
const eachOf = <T extends object, U>(of: (entry: T) => U) =>
  rememberBy((entries: { readonly [name: string]: T }): { readonly [name: string]: U } =>
    Object.fromEntries(mapped(Object.entries(entries), ([name, entry]) => [name, of(entry)])),
  );
const noEntries = {};

const assumed = (value: number, relative: number): Amount => ({
  value,
  plusMinus: value * relative,
  assumed: true,
});

function assumedUptake(dilution: RawDye["dilution"]): Amount {
  const { uptakeMlPerDm2, powderUptakeLiquorMlPerDm2 } = defaults.dye;
  return assumed(
    dilution.kind === "liquid" ? uptakeMlPerDm2.value : (powderUptakeLiquorMlPerDm2 * dilution.value) / 1000,
    uptakeMlPerDm2.relative,
  );
}

const { activationEnergyJPerMol, law } = defaults.dye;
const assumedActivation = assumed(activationEnergyJPerMol.value, activationEnergyJPerMol.relative);
const { dragOutMlPerDm2 } = defaults.handling;
const assumedDragOut = assumed(dragOutMlPerDm2.value, dragOutMlPerDm2.relative);

/** The colour of a swatch; a reflectance file is read later. */
export type SwatchColour = Colour | { readonly kind: "file"; readonly file: string };

const colourOf = ({ lab, hex, reflectance }: RawSwatch): SwatchColour =>
  lab !== undefined
    ? { kind: "lab", lab }
    : hex !== undefined
      ? { kind: "hex", hex }
      : { kind: "file", file: reflectance ?? "" };

/** The quantity where one is given, and not evidence of it. */
const quantityOf = <T extends Amount>(of: T | { readonly evidence: unknown } | undefined): T | undefined =>
  of === undefined || "evidence" in of ? undefined : of;

const evidenceOf = <T>(of: Amount | { readonly evidence: readonly T[] } | undefined): readonly T[] =>
  of !== undefined && "evidence" in of ? of.evidence : [];

const completeDye = rememberBy((dye: RawDye) => ({
  ...dye,
  reading: dye.reading ?? standardReading,
  swatches: mapped(dye.swatches ?? [], (swatch) => ({ ...swatch, colour: colourOf(swatch) })),
  law: dye.law ?? law,
  activationEnergy: dye.activationEnergy ?? assumedActivation,
  strengthExponent: dye.strengthExponent === undefined ? undefined : given(dye.strengthExponent),
  uptake: quantityOf(dye.uptake) ?? assumedUptake(dye.measuredAt?.dilution ?? dye.dilution),
  uptakeEvidence: evidenceOf(dye.uptake),
}));

const completeTank = rememberBy((tank: Raw<"tanks">[string]) => ({
  ...tank,
  insulation: tank.insulation ?? defaults.tank.insulation,
  cover: tank.cover ?? defaults.tank.cover,
  heaterEfficiency: orElse(tank.heaterEfficiency, defaults.tank.heaterEfficiency),
  agitation: orElse(tank.agitation, defaults.tank.agitationW),
}));

const completeDryer = rememberBy((dryer: Raw<"dryers">[string]) => ({
  ...dryer,
  duty: orElse(dryer.duty, defaults.dryer.duty),
}));

const completeShade = rememberBy((shade: Raw<"shades">[string]) => ({
  ...shade,
  tolerance: shade.tolerance ?? defaults.shade.tolerance,
}));

const completeHandling = rememberBy((h: NonNullable<RawSpec["handling"]>) => {
  const usual = defaults.handling;
  return {
    load: orElse(h.load, usual.loadSeconds),
    drain: orElse(h.drain, usual.drainSeconds),
    rinse: orElse(h.rinse, usual.rinseSeconds),
    unload: orElse(h.unload, usual.unloadSeconds),
    dryerLoading: orElse(h.dryerLoading, usual.dryerLoadingMinutes),
    setUp: orElse(h.setUp, usual.setUpMinutes),
    cleanUp: orElse(h.cleanUp, usual.cleanUpMinutes),
    timing: orElse(h.timing, usual.timingSeconds),
    shortest: orElse(h.shortest, usual.shortestSeconds),
    longest: orElse(h.longest, usual.longestSeconds),
    dragOut: quantityOf(h.dragOut) ?? assumedDragOut,
    dragOutEvidence: evidenceOf(h.dragOut),
    rinseWater: orElse(h.rinseWater, usual.rinseWaterL),
    liquorRatio: orElse(h.liquorRatio, usual.liquorRatioLPerKg),
    freeboard: orElse(h.freeboard, usual.freeboard),
  };
});

type RawPart = Raw<"parts">[string];

interface CompletePart extends Omit<RawPart, "mesh" | "density"> {
  readonly mesh: { readonly file: string; readonly unit?: MeshUnit | undefined } | undefined;
  readonly density: Amount;
  /** Of the model, once that was read. */
  readonly boxMm?: readonly [x: number, y: number, z: number];
}

/** Density of sintered nylon, where none is given [g/cm3]. */
const assumedDensity: Amount = { value: defaults.part.densityGPerCm3, assumed: true };

const meshOf = (mesh: RawPart["mesh"]): CompletePart["mesh"] =>
  typeof mesh === "string" ? { file: mesh } : mesh;

const completePart = rememberBy(
  (part: RawPart): CompletePart => ({
    ...part,
    mesh: meshOf(part.mesh),
    density: part.density ?? assumedDensity,
  }),
);

/** What is in a tank before the first load. */
export type SpecStart =
  | { readonly kind: "fresh" }
  | {
      readonly kind: "kept";
      readonly volume: Amount;
      readonly strength: Amount;
      readonly age: Amount;
      readonly area: Amount;
    };

const completeStart = (start: Raw<"baths">[number]["start"]): SpecStart =>
  typeof start === "object"
    ? {
        kind: "kept",
        volume: start.volume,
        strength: orElse(start.strength, defaults.keptBath.strength),
        age: orElse(start.age, defaults.keptBath.ageDays),
        area: orElse(start.area, defaults.keptBath.areaDm2),
      }
    : { kind: "fresh" };

const completeTanks = eachOf(completeTank);
const completeDryers = eachOf(completeDryer);
const completeDyes = eachOf(completeDye);
const completeParts = eachOf(completePart);
const completeShades = eachOf(completeShade);

/** The batch file with its defaults filled in. */
export const complete = (raw: RawSpec) => ({
  ...raw,
  rates: raw.rates ?? {},
  room: {
    temperature: orElse(raw.room?.temperature, defaults.room.celsius),
    humidity: orElse(raw.room?.humidity, defaults.room.humidity),
  },
  tanks: completeTanks(raw.tanks ?? noEntries),
  dryers: completeDryers(raw.dryers ?? noEntries),
  bases: raw.bases ?? {},
  dyes: completeDyes(raw.dyes ?? noEntries),
  parts: completeParts(raw.parts ?? noEntries),
  shades: completeShades(raw.shades ?? noEntries),
  baths: mapped(raw.baths ?? [], (bath) => ({
    ...bath,
    start: completeStart(bath.start),
    topUp: bath.topUp ?? defaults.bath.topUp,
    after: bath.after ?? defaults.bath.after,
  })),
  orders: raw.orders ?? [],
  handling: completeHandling(raw.handling ?? noEntries),
  consumables: {
    perBath: orElse(raw.consumables?.perBath, defaults.consumables.perBath),
    perLoad: orElse(raw.consumables?.perLoad, defaults.consumables.perLoad),
    perPart: orElse(raw.consumables?.perPart, defaults.consumables.perPart),
  },
  yield: orElse(raw.yield, defaults.yield),
  limits: raw.limits ?? {},
});

/**
 * A batch as written, with its defaults: names stand for what they name, and every quantity is an amount
 * that may carry ± and whether it was assumed. `toBatch` makes the batch of plain numbers.
 */
export type Spec = ReturnType<typeof complete>;
