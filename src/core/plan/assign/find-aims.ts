import { append } from "../../append.js";
import { done, error, type Fault, isError, type Outcome, warning } from "../../fault.js";
import type { Batch, Dye } from "../../model/batch.js";
import { isDyed } from "../../model/undyed.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { aimAtMix, type MixedShadeAim } from "../../recipe/mixed-bath/mixed-aim.js";
import { isMix, type MixedDye } from "../../recipe/mixed-bath/mixed-dye.js";
import { measuredCelsius } from "../../uptake/law/measured-at.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import { aimOf, type FittedDye } from "../../uptake/shade/fitted-dyes.js";
import type { SharedWork } from "../run/shared-work.js";

/** What an order aims at; in a mixed bath with what finds the dip of each load. */
export type OrderAim = ShadeAim & Partial<MixedShadeAim>;

interface FoundAims {
  /** Of the dyes of baths, and of those in mixes. */
  readonly models: ReadonlyMap<Dye, DyeModel>;
  readonly mixed: ReadonlyMap<Dye, MixedDye>;
  /** By order index. */
  readonly aims: readonly OrderAim[];
}

/** Models of all dyes that orders ask for, and what each order aims at. */
export function findAims(batch: Batch, { dyes, mixes }: SharedWork): Outcome<FoundAims> {
  const models = new Map<Dye, DyeModel>();
  const mixed = new Map<Dye, MixedDye>();
  const fitted = new Map<Dye, FittedDye | undefined>();
  const found: OrderAim[] = [];
  const faults: Fault[] = [];
  for (const order of batch.orders.filter(isDyed)) {
    const { dye } = order.shade;
    if (!batch.baths.some((bath) => bath.dye === dye)) {
      faults.push(
        error(
          "no-bath",
          ["orders", order.index],
          `no bath holds dye "${dye.name}", which shade "${order.shade.name}" needs`,
          `add a bath: - { tank: ..., dye: ${dye.name} }`,
        ),
      );
      continue;
    }
    if (isMix(dye)) {
      if (!fitted.has(dye)) {
        const fit = mixes.fit(dye, batch.handling, dyes);
        append(faults, fit.faults);
        fitted.set(dye, undefined);
        if (fit.ok) {
          mixed.set(dye, fit.value);
          models.set(dye, fit.value.model);
          for (const part of fit.value.parts) models.set(part.dye, part);
          faults.push(...fit.value.parts.flatMap(doubtfulSwatches), ...unlikeTemperatures(dye));
        }
      }
      const mix = mixed.get(dye);
      const aim = mix && aimAtMix(mix, order.shade, order.base);
      append(faults, aim?.faults ?? []);
      if (aim?.ok) found[order.index] = aim.value;
      continue;
    }
    if (!fitted.has(dye)) {
      const fit = dyes.fit(dye, batch.handling);
      append(faults, fit.faults);
      fitted.set(dye, fit.ok ? fit.value : undefined);
      if (fit.ok) {
        models.set(dye, fit.value.model);
        faults.push(...doubtfulSwatches(fit.value.model));
      }
    }
    const known = fitted.get(dye);
    if (!known) continue;
    const aim = aimOf(known, order.shade, order.base);
    append(faults, aim.faults);
    if (aim.ok) found[order.index] = aim.value;
  }
  return faults.some(isError) ? { ok: false, faults } : done({ models, mixed, aims: found }, faults);
}

/** Leave-one-out error over which readings are off by 2 and more per axis, by the simulation of invented dyes [CIEDE2000]. */
const badPrediction = 2.5;

function doubtfulSwatches({ dye, chosen }: DyeModel): Fault[] {
  const own = chosen?.tried.find(({ law }) => law === chosen.curve.law);
  if (own === undefined || own.median <= badPrediction) return [];
  return [
    warning(
      "swatches-doubtful",
      ["dyes", dye.name, "swatches"],
      `the swatches of dye "${dye.name}" do not agree: their leave-one-out prediction error is ${own.median.toFixed(1)} CIEDE2000, so its times are rough`,
      "read them again under one light, or dip new ones; a phone is off by 0.5 to 2 and more",
    ),
  ];
}

/** The warning on a mix whose dyes were measured at unlike temperatures, and that was never tried. */
function unlikeTemperatures({ name, celsius, mix }: MixedDye["dye"]): Fault[] {
  const unlike = mix.parts.filter((part) => measuredCelsius(part.dye) !== celsius);
  if (unlike.length === 0 || mix.trials.length > 0) return [];
  const said = mix.parts.map(({ dye }) => `${dye.name} at ${shortNumber(measuredCelsius(dye))} °C`);
  return [
    warning(
      "unlike-temperatures",
      ["dyes", name, "mix"],
      `the dyes of mix "${name}" were measured at other temperatures than its ${shortNumber(celsius)} °C (${said.join(", ")}): what they do there is computed`,
      "trust a trial dip at that temperature, written under its trials, more than the recipe",
    ),
  ];
}
