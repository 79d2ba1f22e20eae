import { mapped } from "../../core/mapped.js";
import type { Colour } from "../../core/model/batch.js";
import type { MeshUnit } from "../../core/part/units.js";
import type { RawSpec } from "../schema/batch.js";
import type { Amount } from "../schema/quantities.js";
import { longestDipSeconds, shortestDipSeconds } from "../schema/workshop.js";
import { standardReading } from "./base-under.js";
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

/** Uptake where none is given: 0.03 mL of concentrate per dm2, or the powder in 0.3 mL of fresh liquor; ± 100 %. */
function assumedUptake(dilution: RawDye["dilution"]): Amount {
  const value = dilution.kind === "liquid" ? 0.03 : (0.3 * dilution.value) / 1000;
  return { value, plusMinus: value, assumed: true };
}

/** Activation energy where none is given; ± what covers the published range of 45 to 117 kJ/mol. */
const assumedActivation: Amount = { value: 75_000, plusMinus: 36_000, assumed: true };

const assumedDragOut: Amount = { value: 0.8, plusMinus: 0.48, assumed: true };

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
  swatches: mapped(dye.swatches ?? [], (swatch) => ({ time: swatch.time, colour: colourOf(swatch) })),
  law: dye.law ?? ("auto" as const),
  activationEnergy: dye.activationEnergy ?? assumedActivation,
  uptake: quantityOf(dye.uptake) ?? assumedUptake(dye.measuredAt?.dilution ?? dye.dilution),
  uptakeEvidence: evidenceOf(dye.uptake),
}));

const completeTank = rememberBy((tank: Raw<"tanks">[string]) => ({
  ...tank,
  insulation: tank.insulation ?? ("none" as const),
  cover: tank.cover ?? ("none" as const),
  heaterEfficiency: orElse(tank.heaterEfficiency, 0.9),
  agitation: orElse(tank.agitation, 0),
}));

const completeDryer = rememberBy((dryer: Raw<"dryers">[string]) => ({
  ...dryer,
  duty: orElse(dryer.duty, 1),
}));

const completeShade = rememberBy((shade: Raw<"shades">[string]) => ({
  ...shade,
  tolerance: shade.tolerance ?? 1.5,
}));

const completeHandling = rememberBy((h: NonNullable<RawSpec["handling"]>) => {
  return {
    load: orElse(h.load, 40),
    drain: orElse(h.drain, 15),
    rinse: orElse(h.rinse, 30),
    unload: orElse(h.unload, 20),
    dryerLoading: orElse(h.dryerLoading, 3),
    setUp: orElse(h.setUp, 15),
    cleanUp: orElse(h.cleanUp, 15),
    timing: orElse(h.timing, 2),
    shortest: orElse(h.shortest, shortestDipSeconds),
    longest: orElse(h.longest, longestDipSeconds),
    dragOut: quantityOf(h.dragOut) ?? assumedDragOut,
    dragOutEvidence: evidenceOf(h.dragOut),
    rinseWater: orElse(h.rinseWater, 2),
    liquorRatio: orElse(h.liquorRatio, 20),
    freeboard: orElse(h.freeboard, 0.05),
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
const assumedDensity: Amount = { value: 0.93, assumed: true };

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
        strength: orElse(start.strength, 1),
        age: orElse(start.age, 0),
        area: orElse(start.area, 0),
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
  room: { temperature: orElse(raw.room?.temperature, 20), humidity: orElse(raw.room?.humidity, 0.5) },
  tanks: completeTanks(raw.tanks ?? noEntries),
  dryers: completeDryers(raw.dryers ?? noEntries),
  bases: raw.bases ?? {},
  dyes: completeDyes(raw.dyes ?? noEntries),
  parts: completeParts(raw.parts ?? noEntries),
  shades: completeShades(raw.shades ?? noEntries),
  baths: mapped(raw.baths ?? [], (bath) => ({
    ...bath,
    start: completeStart(bath.start),
    topUp: bath.topUp ?? ("none" as const),
    after: bath.after ?? ("keep" as const),
  })),
  orders: raw.orders ?? [],
  handling: completeHandling(raw.handling ?? noEntries),
  consumables: {
    perBath: orElse(raw.consumables?.perBath, 0),
    perLoad: orElse(raw.consumables?.perLoad, 0),
    perPart: orElse(raw.consumables?.perPart, 0),
  },
  yield: orElse(raw.yield, 1),
  limits: raw.limits ?? {},
});

/**
 * A batch as written, with its defaults: names stand for what they name, and every quantity is an amount
 * that may carry ± and whether it was assumed. `toBatch` makes the batch of plain numbers.
 */
export type Spec = ReturnType<typeof complete>;
