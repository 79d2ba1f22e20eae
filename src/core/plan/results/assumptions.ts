import { mostAssumedShare } from "../../bath/evidence/most-assumed-share.js";
import { freePacking } from "../../bath/load/load-size.js";
import type { AssumedName, AssumedShare } from "../../cost/assumed-shares.js";
import { mapped } from "../../mapped.js";
import type { Assumption } from "../../model/assumption.js";
import type { AssumedHandling, Batch, Dye, Found, Handling } from "../../model/batch.js";
import { defaults } from "../../model/defaults.js";
import { dyesOf } from "../../model/dyes-of.js";
import { isDyed } from "../../model/undyed.js";
import { dyeUnitInWords } from "../../quantity/dye/dye-figures.js";
import { rangeInWords } from "../../quantity/text/range-in-words.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { MixedDye } from "../../recipe/mixed-bath/mixed-dye.js";
import { madeUpStrength } from "../../uptake/law/measured-at.js";
import { assumedRateText, type DyeModel } from "../../uptake/shade/dye-model.js";
import type { OrderAim } from "../assign/find-aims.js";
import type { BathRun } from "../run/bath-run.js";
import { mixtureInWords } from "./mixture-in-words.js";

/** "estimated from evidence, 0.02 to 0.05 in 95 of 100 cases; partly assumed: ..." */
function foundInWords({ assumedShare, interval95: [low, high] }: Found): string {
  const range = `${low.toPrecision(2)} to ${high.toPrecision(2)} in 95 of 100 cases`;
  const partly =
    assumedShare > mostAssumedShare
      ? `; partly assumed: the evidence leaves ${Math.round(100 * assumedShare)} % of the assumed figure's variance`
      : "";
  return `estimated from evidence, ${range}${partly}`;
}

/** How far a bath must leave full strength before the assumed exponent matters [-]. Common practice, no source. */
const strengthMatters = 0.05;

const leavesFull = ({ loads, bath }: BathRun): boolean =>
  loads.some(
    ({ result }) => Math.abs(result.strengthDuring * madeUpStrength(bath.dye) - 1) > strengthMatters,
  );

/** How far a bath must leave its temperature while parts are in it before the assumed answer to it matters [K]. Common practice, no source. */
const kelvinMatters = 0.5;

const leavesSet = ({ loads, bath }: BathRun): boolean =>
  loads.some(
    ({ result }) =>
      Math.abs((result.celsiusBefore + result.celsiusAfter) / 2 - bath.dye.celsius) > kelvinMatters,
  );

/** ", which is 12 % of the cost"; nothing where no cost rests on it. */
function carriesInWords(shares: readonly AssumedShare[], what: AssumedName): string {
  const share = shares.find((one) => one.what === what)?.share ?? 0;
  if (share === 0) return "";
  return share < 0.005 ? " (under 1 % of the cost)" : ` (${Math.round(100 * share)} % of the cost)`;
}

/** A time of the handling as the batch file would give it. */
function timeInWords(handling: Handling, key: Exclude<AssumedHandling, "liquorRatio">): string {
  return key === "dryerLoading" || key === "setUp" || key === "cleanUp"
    ? `${key}: ${shortNumber(handling[`${key}Minutes`])} min`
    : `${key}: ${shortNumber(handling[`${key}Seconds`])} s`;
}

/** The dyes of each assumed uptake, in words. */
function assumedUptakes(used: Iterable<Dye>): Map<string, Dye[]> {
  const found = new Map<string, Dye[]>();
  for (const dye of used) {
    if (dye.uptakeFound || !dye.uptakeAssumed) continue;
    const uptake = `${dye.uptakePerDm2} ${dyeUnitInWords(dye.dilution.kind)} per dm2`;
    found.set(uptake, [...(found.get(uptake) ?? []), dye]);
  }
  return found;
}

/** What the hands do in this day and no time is given for. */
const uncountedTimes = (
  { topUpSeconds, rinseChangeSeconds, rinseEvery }: Handling,
  runs: readonly BathRun[],
): { readonly key: string; readonly what: string }[] => [
  ...(topUpSeconds === undefined &&
  runs.some(({ loads }) => loads.some(({ result }) => result.topUp !== null))
    ? [{ key: "topUpTime", what: "topping up" }]
    : []),
  ...(rinseChangeSeconds === undefined && runs.some(({ loads }) => loads.length > rinseEvery)
    ? [{ key: "rinseChange", what: "changing the rinse water" }]
    : []),
];

/** Whether a part is dyed that carries out what parts usually do. */
const usesUsualDragOut = ({ orders }: Batch): boolean =>
  orders.some(({ part, shade }) => shade !== undefined && part.dragOutMlPerDm2 === undefined);

/** The figures that the results rest on and that nobody measured here. */
export function assumptionsOf(
  batch: Batch,
  {
    models,
    mixed,
    aims,
    runs,
    shares,
  }: {
    readonly models: ReadonlyMap<Dye, DyeModel>;
    readonly mixed: ReadonlyMap<Dye, MixedDye>;
    readonly aims: readonly OrderAim[];
    readonly runs: readonly BathRun[];
    readonly shares: readonly AssumedShare[];
  },
): Assumption[] {
  const found: Assumption[] = [];
  const carries = (what: AssumedName): string => carriesInWords(shares, what);
  const add = (code: string, path: (string | number)[], message: string): void => {
    if (!found.some((known) => known.message === message)) found.push({ code, path, message });
  };
  const used = new Set(batch.baths.flatMap((bath) => dyesOf(bath.dye)));
  for (const [uptake, dyes] of assumedUptakes(used))
    add(
      "assumed-uptake",
      dyes.length === 1 ? ["dyes", dyes[0]!.name, "uptake"] : ["dyes"],
      `${dyes.length === 1 ? "dye" : "dyes"} ${dyes.map(({ name }) => `"${name}"`).join(", ")}: an uptake of ${uptake} (${rangeInWords(defaults.dye.uptakeMlPerDm2.factor)}) is assumed: strength, top-ups and life of ${dyes.length === 1 ? "its bath" : "their baths"} rest on it${carries("uptake")}`,
    );
  for (const dye of used) {
    const unit = dyeUnitInWords(dye.dilution.kind);
    if (dye.uptakeFound)
      add(
        dye.uptakeAssumed ? "partly-assumed-uptake" : "estimated-uptake",
        ["dyes", dye.name, "uptake"],
        `dye "${dye.name}": ${dye.uptakePerDm2.toPrecision(2)} ${unit} per dm2 at depth 1 is ${foundInWords(dye.uptakeFound)}`,
      );
    if (dye.swatches.some(({ colour }) => colour.kind === "hex"))
      add(
        "screen-colour",
        ["dyes", dye.name, "swatches"],
        `dye "${dye.name}": swatches given as hex are taken for exact sRGB and carried over to D65/10 by their smoothest curve; a phone or screen is off by 0.5 to 2 CIEDE2000 and more`,
      );
    const model = models.get(dye)?.uptake;
    if (model && dye.swatches.length === 0)
      add(
        "assumed-reference",
        ["dyes", dye.name],
        `dye "${dye.name}" has no swatches: depth 1 is ${model.referenceSeconds} s in a fresh bath, and its colours are not known`,
      );
  }
  for (const dye of used) {
    const model = models.get(dye);
    if (model?.rate === "assumed")
      add(
        "assumed-rate",
        ["dyes", dye.name, "rate"],
        `dye "${dye.name}" has one swatch, which does not say how fast the dye goes in: ${assumedRateText} is assumed`,
      );
    else if (model?.chosen && dye.swatches.length < 3)
      add(
        "unchecked-law",
        ["dyes", dye.name, "law"],
        `dye "${dye.name}" has ${dye.swatches.length === 1 ? "one swatch" : "two swatches"}: nothing checks its ${model.uptake.law} law; dip and read two more`,
      );
  }
  for (const dye of used) {
    const model = models.get(dye);
    if (model === undefined) continue;
    const { response, uptake } = model;
    const holding = runs.filter((run) => dyesOf(run.bath.dye).includes(dye));
    if (
      response.strengthExponent === undefined &&
      dye.strengthExponent === undefined &&
      holding.some((run) => run.bath.dye === dye && leavesFull(run))
    )
      add(
        "assumed-strength-exponent",
        ["dyes", dye.name, "strengthExponent"],
        `dye "${dye.name}": 1/s to 1/s² times as long at strength s is assumed; a swatch from a half-strength bath or a trial dip tells it`,
      );
    if (
      response.activationEnergyJPerMol === undefined &&
      dye.activationEnergyAssumed &&
      holding.some((run) => run.bath.dye.celsius !== uptake.referenceCelsius || leavesSet(run))
    )
      add(
        "assumed-activation-energy",
        ["dyes", dye.name, "activationEnergy"],
        `dye "${dye.name}": ${shortNumber(uptake.activationEnergyJPerMol / 1000)} kJ/mol, published range 45 to 117, is assumed: its times in a bath that is not at ${shortNumber(uptake.referenceCelsius)} °C rest on it; a swatch dipped cooler tells it`,
      );
  }
  for (const mix of mixed.values()) {
    const order = batch.orders.find((one) => one.shade?.dye === mix.dye);
    const { mixture, freshSeconds } = aims[order!.index]!;
    add("assumed-mixture", ["dyes", mix.dye.name, "mix"], mixtureInWords(mix, mixture!, freshSeconds));
  }
  for (const order of batch.orders.filter(isDyed))
    if (aims[order.index]?.estimated)
      add(
        "estimated-base",
        ["orders", order.index],
        `shade "${order.shade.name}" on ${order.base?.name} is an estimate: the swatches of dye "${order.shade.dye.name}" were dyed on ${dyesOf(order.shade.dye)[0]!.base?.name}`,
      );
  const unweighed = [...new Set(mapped(batch.orders, ({ part }) => part))].filter(
    ({ massAssumed }) => massAssumed === true,
  );
  if (unweighed.length > 0)
    add(
      "assumed-density",
      unweighed.length === 1 ? ["parts", unweighed[0]!.name, "density"] : ["parts"],
      `the mass of ${mapped(unweighed, ({ name }) => name).join(", ")} is that of the model at ${defaults.part.densityGPerCm3} g/cm3, sintered nylon, which is assumed: weigh one, or write the density of yours`,
    );
  const { dragOutFound } = batch.handling;
  if (dragOutFound)
    add(
      batch.handling.dragOutAssumed ? "partly-assumed-drag-out" : "estimated-drag-out",
      ["handling", "dragOut"],
      `${batch.handling.dragOutMlPerDm2.toPrecision(2)} mL of liquor carried out per dm2 is ${foundInWords(dragOutFound)}`,
    );
  else if (batch.handling.dragOutAssumed && usesUsualDragOut(batch))
    add(
      "assumed-drag-out",
      ["handling", "dragOut"],
      `${batch.handling.dragOutMlPerDm2} mL of liquor carried out per dm2, ${rangeInWords(defaults.handling.dragOutMlPerDm2.factor)}, is assumed${carries("dragOut")}: weigh ten parts wet and dry for your own figure`,
    );
  const { assumed } = batch.handling;
  const times = assumed.filter((key) => key !== "liquorRatio");
  if (times.length > 0 && runs.length > 0)
    add(
      "assumed-handling",
      ["handling"],
      `handling times are assumed where none are given (${times.map((key) => timeInWords(batch.handling, key)).join(", ")})${carries("handlingTimes")}: time your own with a watch`,
    );
  for (const { key, what } of uncountedTimes(batch.handling, runs))
    add(
      "uncounted-time",
      ["handling", key],
      `${what} takes no time in this day: write ${key} under handling`,
    );
  if (
    assumed.includes("liquorRatio") &&
    runs.some(({ loads }) => loads.some(({ plan }) => plan.boundBy === "liquorRatio"))
  )
    add(
      "assumed-liquor-ratio",
      ["handling", "liquorRatio"],
      `${shortNumber(batch.handling.liquorRatioLPerKg)} L of liquor per kg of parts is assumed, and sets how many go into a load${carries("liquorRatio")}: parts must move freely, so try what your basket allows`,
    );
  if (runs.some(({ loads }) => loads.some(({ plan }) => plan.boundBy === "packing")))
    add(
      "assumed-packing",
      ["parts"],
      `parts are taken to move freely while their boxes fill at most ${Math.round(100 * freePacking)} % of the liquor: write perLoad for what your basket allows`,
    );
  for (const tank of new Set(mapped(batch.baths, (bath) => bath.tank)))
    if (tank.heaterW === undefined)
      add(
        "unknown-heater",
        ["tanks", tank.name],
        `tank "${tank.name}" has no heater power: heating up is left out of the day, the energy and the costs`,
      );
  for (const tank of new Set(mapped(batch.baths, (bath) => bath.tank)))
    if (tank.surfaceAssumed)
      add(
        "assumed-surface",
        ["tanks", tank.name, "surface"],
        `tank "${tank.name}": a liquor surface of ${Math.round(tank.surfaceCm2)} cm2 (as deep as wide) is assumed: heat and evaporation rest on it`,
      );
  if (batch.rework !== undefined && batch.rework > 0 && batch.yield < 1)
    add(
      "second-dip",
      ["rework"],
      `of the parts that miss their shade a second dip saves ${shortNumber(100 * batch.rework)} %: they are in loads of their own behind the first ones of their order, in a full dip each time`,
    );
  return found;
}
