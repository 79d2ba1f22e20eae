import { coldPerHot } from "../../core/bath/water.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Base, Batch, Dye, Tank } from "../../core/model/batch.js";
import { usualCapacityL } from "../../core/model/defaults.js";
import { dyesOf } from "../../core/model/dyes-of.js";
import { cautions } from "../../core/plan/advice/cautions.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { type Blend, blend } from "../../core/recipe/blend/blend.js";
import { jarMl } from "../../core/recipe/blend/described.js";
import { carriedMl } from "../../core/recipe/carry-over/carried-strength.js";
import type { Liquor } from "../../core/recipe/carry-over/carry-over.js";
import { type ThroughOneTank, throughOneTank } from "../../core/recipe/carry-over/through-one-tank.js";
import { mixDyes } from "../../core/recipe/mixture/mix-dye.js";
import type { MixTrial } from "../../core/recipe/trial/fit-trials.js";
import { dyeModel } from "../../core/uptake/shade/dye-model.js";
import { blendReport } from "../../report/blend/report.js";
import { onBatch, type Worked } from "../batch/on-batch.js";
import { unknownName } from "../batch/pick.js";
import type { Execute, Request } from "../command.js";
import { optionReader } from "../option-reader.js";
import { fileTrials } from "./file-trials.js";
import { pickDyes } from "./pick-dyes.js";
import { readTarget } from "./read-target.js";
import { readTrial } from "./read-trial.js";
import { reachWarnings, temperatureWarnings, timeWarnings, trialWarnings } from "./warnings.js";

const usualSeconds = 60;

/** What the recipe is made for: a tank, a volume, or a jar alone. */
interface Vessel {
  readonly said: string | null;
  readonly tank?: Tank;
  readonly coldMl: (celsius: number) => number;
  readonly capacityMl: (celsius: number) => number;
}

function vesselOf(batch: Batch, tank: Tank | undefined, volumeL: number | undefined): Vessel {
  const cold = (hotL: number) => (celsius: number) => hotL * coldPerHot(celsius, batch.room.celsius) * 1000;
  if (tank !== undefined)
    return { said: `tank ${tank.name}`, tank, coldMl: cold(tank.volumeL), capacityMl: cold(tank.capacityL) };
  if (volumeL !== undefined)
    return { said: "bath", coldMl: cold(volumeL), capacityMl: cold(usualCapacityL(volumeL)) };
  return { said: null, coldMl: () => jarMl, capacityMl: () => 2 * jarMl };
}

/**
 * The recipe and the other dyes that the spec has in the tank, as baths that follow each other in it; not the mix of the
 * shade that is asked for, which the recipe replaces.
 */
function carryOver(
  batch: Batch,
  { tank, coldMl }: Vessel,
  { first }: Blend,
  base: Base | undefined,
  replaced: Dye | undefined,
): ThroughOneTank | undefined {
  if (tank === undefined || first === undefined) return undefined;
  const { mixture, strengths } = first;
  const others = [
    ...new Set(
      batch.baths.filter((bath) => bath.tank === tank && bath.dye !== replaced).map(({ dye }) => dye),
    ),
  ];
  const fresh = others.flatMap((dye): Liquor[] => {
    const models = dyesOf(dye).map((one) => dyeModel(one, batch.handling));
    if (!models.every((model) => model.ok)) return [];
    const dyes = mixDyes(
      models.map(({ value }) => value),
      base,
    );
    const strengths = dye.mix?.parts.map(({ strength }) => strength) ?? [1];
    return dyes.ok ? [{ name: dye.name, dyes: dyes.value, strengths }] : [];
  });
  const carried = {
    carriedMl,
    bathMl: coldMl(mixture.dip.celsius),
    rinseMl: 1000 * batch.handling.rinseWaterL,
  };
  return throughOneTank(
    [{ name: "this recipe", dyes: mixture.dyes, strengths }, ...fresh],
    mixture.dip.seconds,
    carried,
  );
}

function work(batch: Batch, options: Request["options"]): Outcome<Worked> {
  const typed = (option: string): string | undefined => options[option] as string | undefined;
  const read = optionReader(typed);
  const positive = (must: string) => ({ above: 0, must });
  const seconds = read.quantity("time", "time", positive("a dip takes more than 0 s"));
  const volumeL = read.quantity("volume", "volume", positive("a bath has more than nothing"));
  const faults: Fault[] = [...read.faults];
  const [tankName, baseName] = [typed("tank"), typed("base")];
  const tank = batch.tanks.find(({ name }) => name === tankName);
  if (tankName !== undefined && tank === undefined)
    faults.push(unknownName("tank", "tank", tankName, batch.tanks));
  if (tankName !== undefined && volumeL !== undefined)
    faults.push(error("usage", [], "--tank cannot be used with --volume", "leave one out"));
  const base = batch.bases.find(({ name }) => name === baseName);
  if (baseName !== undefined && base === undefined)
    faults.push(unknownName("base", "base", baseName, batch.bases));
  if (typed("target") === undefined)
    faults.push(...readTarget(batch, undefined, { illuminant: "D65", observer: 10 }).faults);
  if (faults.length > 0) return failed(...faults);
  const dyes = pickDyes(batch, typed("dyes"), base);
  if (!dyes.ok) return dyes;
  const { reading } = dyes.value[0]!.model.dye;
  const target = readTarget(batch, typed("target"), reading);
  const typedTrials = (options.trial as readonly string[] | undefined) ?? [];
  const trials = typedTrials.map((text) => readTrial(text, dyes.value, seconds ?? usualSeconds));
  const wrong = [...target.faults, ...trials.flatMap((trial) => trial.faults)];
  if (!target.ok || wrong.length > 0) return failed(...wrong);
  const { name, lab, ks, tolerance } = target.value;
  const shadeDye = batch.shades.find((shade) => shade.name === name)?.dye;
  const replaced = shadeDye?.mix === undefined ? undefined : shadeDye;
  const typedOnes: readonly MixTrial[] = trials.flatMap((trial) => (trial.ok ? [trial.value] : []));
  const before = fileTrials(replaced, dyes.value, base, typedOnes);
  if (!before.ok) return before;
  const earlier = before.value ?? [];
  const tried = [...earlier, ...typedOnes];
  const said = [
    ...earlier.map((_, i) => `trial ${i + 1} of ${name} in the batch file`),
    ...typedTrials.map((text) => `"${text}"`),
  ];
  const vessel = vesselOf(batch, tank, volumeL);
  const dipSeconds = seconds ?? tried.at(-1)?.seconds ?? usualSeconds;
  const made = blend({
    dyes: dyes.value,
    target: lab,
    targetKs: ks,
    seconds: dipSeconds,
    coldMl: vessel.coldMl,
    capacityMl: vessel.capacityMl,
    trials: tried,
    standing: typedOnes.at(-1),
    bases: batch.bases,
    rates: batch.rates,
    handling: batch.handling,
  });
  const used = dyes.value.filter((dye) => made.first?.mixture.dyes.includes(dye));
  const caution = cautions({
    celsius: Math.max(...dyes.value.map(({ model }) => model.dye.celsius)),
    roomCelsius: batch.room.celsius,
    agitation: (tank?.agitationW ?? 0) > 0,
    drying: false,
    powder: used.some(({ model }) => dyeKinds[model.dye.dilution.kind].raisesDust),
    lid: tank?.cover === "lid",
    coolToCelsius: batch.handling.coolToCelsius,
  });
  const warnings = [
    ...trialWarnings(tried, said),
    ...reachWarnings(made, tolerance),
    ...temperatureWarnings(made, dyes.value),
    ...timeWarnings(made),
  ];
  const report = blendReport({
    blend: made,
    name,
    tolerance,
    reading,
    base: base?.name ?? dyes.value[0]!.model.dye.base?.name ?? null,
    vessel: vessel.said,
    currency: batch.currency ?? null,
    trials: tried,
    typedTrials,
    fileTrials: before.value?.length ?? null,
    carryOver: carryOver(batch, vessel, made, base, replaced) ?? null,
    cautions: caution,
  });
  const missed = made.nearest === null || made.nearest > tolerance;
  return done({ report, missed }, [...dyes.faults, ...warnings]);
}

/** Recipes for a colour. A colour out of reach gives status 1. */
export const execute: Execute = (request, io) =>
  onBatch(request, io, ["dyes"], (batch) => work(batch, request.options));
