import { readCsv } from "../../core/csv/read-csv.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Dye, Lab } from "../../core/model/batch.js";
import { measuredCelsius } from "../../core/uptake/law/measured-at.js";
import { aimAt } from "../../core/uptake/shade/aim.js";
import { type DyeModel, dyeModel, hasCurve } from "../../core/uptake/shade/dye-model.js";
import { nextForLaw, nextSwatch } from "../../core/uptake/shade/next-swatch.js";
import type { ShadeWish } from "../../core/uptake/shade/shade-time.js";
import { firstSwatches } from "../../core/uptake/swatches/first-swatches.js";
import { readSwatches } from "../../core/uptake/swatches/swatch-readings.js";
import { readingsReport } from "../../report/swatches/readings.js";
import { type SwatchSheet, sheetReport } from "../../report/swatches/sheet.js";
import { onBatch, type Worked } from "../batch/on-batch.js";
import { pickDye, readWish } from "../batch/pick.js";
import type { Execute, Request } from "../command.js";
import { readNamed } from "../files/read-text.js";
import type { Io } from "../io.js";

/** Longest file of readings read [bytes]. */
const largest = 1024 * 1024;

/** Shades that a next swatch is sought for: each costs a second or so of work. */
const mostAsked = 6;

/** The shades that matter: the one that is named, else those of the dye. */
function wishesOf(batch: Batch, dye: Dye, typed: ShadeWish | undefined): readonly ShadeWish[] {
  if (typed !== undefined) return [typed];
  return batch.shades
    .filter((shade) => shade.dye === dye)
    .slice(0, mostAsked)
    .map(({ name, target, tolerance }) => ({
      name,
      target: target.kind === "swatch" ? { kind: "time", seconds: target.seconds } : target,
      tolerance,
    }));
}

function next(batch: Batch, model: DyeModel, wishes: readonly ShadeWish[]): SwatchSheet {
  const { dye } = model;
  if (!hasCurve(model)) {
    const one = model.onlySwatch?.seconds;
    const dips = firstSwatches(dye, batch.shades, batch.handling).filter(({ seconds }) => seconds !== one);
    return { dye: dye.name, dips, gain: null, asked: [], known: 1 };
  }
  const aims = wishes.flatMap((wish): { readonly name: string; readonly lab: Lab }[] => {
    const aim = aimAt(model, { ...wish, dye }, undefined);
    return aim.ok && aim.value.lab !== null && aim.value.freshSeconds > 0
      ? [{ name: wish.name, lab: aim.value.lab }]
      : [];
  });
  const found =
    aims.length > 0
      ? nextSwatch(
          model,
          aims.map(({ lab }) => lab),
          batch.handling,
        )
      : nextForLaw(model, batch.handling);
  return {
    dye: dye.name,
    dips: found ? [{ ...found.dip, base: dye.base?.name ?? null, copies: 1 }] : [],
    gain: found?.gain ?? 0,
    asked: aims.map(({ name }) => name),
    known: dye.swatches.length,
  };
}

async function fromReadings(name: string, dye: Dye, io: Io): Promise<Outcome<Worked>> {
  const text = await readNamed(name, io, largest + 1);
  if (!text.ok) return text;
  if (text.value.length > largest)
    return failed(
      error("too-large", ["--from"], `${name} is larger than 1 MiB`, "give the swatches of one dye"),
    );
  const csv = readCsv(text.value);
  const read = csv.ok ? readSwatches(csv.value, measuredCelsius(dye)) : csv;
  const faults = read.faults.map((fault) => ({ ...fault, path: [`--from ${name}`] }));
  return read.ok ? done({ report: readingsReport(dye.name, read.value) }, faults) : { ok: false, faults };
}

async function work(batch: Batch, options: Request["options"], io: Io): Promise<Outcome<Worked>> {
  const typed = (option: string): string | undefined => options[option] as string | undefined;
  const dye = pickDye(batch, typed("dye"), typed("target"));
  const wish = readWish(batch, typed("target"), undefined);
  if (!dye.ok || !wish.ok) return failed(...dye.faults, ...wish.faults);
  const from = typed("from");
  if (from !== undefined) return fromReadings(from, dye.value, io);
  if (dye.value.swatches.length === 0) {
    const dips = firstSwatches(dye.value, batch.shades, batch.handling);
    return done({ report: sheetReport({ dye: dye.value.name, dips, gain: null, asked: [], known: 0 }) });
  }
  const model = dyeModel(dye.value, batch.handling);
  if (!model.ok) return model;
  const wishes = wishesOf(batch, dye.value, wish.value);
  return done({ report: sheetReport(next(batch, model.value, wishes)) }, model.faults);
}

/** Which swatches to dip, or the lines of those that were read. */
export const execute: Execute = (request, io) =>
  onBatch(request, io, ["dyes"], (batch) => work(batch, request.options, io));
