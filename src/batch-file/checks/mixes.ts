import { sameReading } from "../../core/model/colour.js";
import { standardReading } from "../../core/model/defaults.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { listed } from "../../core/quantity/text/listed.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { isMap } from "../source/is-map.js";
import type { Path } from "../source/source.js";
import { isAmount } from "../to-batch/amounts.js";
import {
  amountsIn,
  entries,
  items,
  mixes,
  own,
  type PartlyMix,
  type PartlyRead,
  plainDyes,
  type Report,
} from "./report.js";

type Amounts = PartlyMix["mix"];
type Plain = ReturnType<typeof plainDyes>[number][1];

/** Strength of a dye in a mix beyond which nothing is known of it: twice the bath that it was measured in. */
const mostStrength = 2;

/** Each amount must be one of its dye's kind, no stronger than the arithmetic holds. */
function checkAmounts(amounts: Amounts, known: ReadonlyMap<string, Plain>, at: Path, report: Report): void {
  let room = 0;
  for (const [name, amount] of Object.entries(amountsIn(amounts))) {
    const dye = known.get(name);
    const measured = dye?.measuredAt?.dilution ?? dye?.dilution;
    if (amount?.value === undefined || measured?.value === undefined) continue;
    const { kind, value } = measured;
    if (amount.kind !== kind) {
      report(
        "liquid-or-powder",
        [...at, name],
        `${amount.kind === "liquid" ? "a volume" : "a mass"} is given for the dye ${name}, which is ${dyeKinds[kind!].treated}`,
        kind === "liquid"
          ? "write mL of its concentrate, such as 12 mL/L"
          : "write g of its powder, such as 2 g/L",
      );
      continue;
    }
    if (kind === "liquid") room += amount.value;
    if (amount.value > mostStrength * value * (1 + 1e-9))
      report(
        "mix-strength",
        [...at, name],
        `that is ${shortNumber(amount.value / value, 2)} times as strong as the bath in which ${name} was measured, and colours are known up to ${mostStrength}`,
        `write at most ${kind === "liquid" ? `${shortNumber(mostStrength * 1000 * value)} mL` : `${shortNumber(mostStrength * value)} g`}/L`,
      );
  }
  if (room > 1) report("mix-strength", at, "the dyes take up more than the whole bath", "write less of each");
}

/** The dyes of a mix must be plain ones of one kind, read under one light. */
function checkParts(
  batch: PartlyRead,
  [name, { mix, base, trials }]: [string, PartlyMix],
  known: ReadonlyMap<string, Plain>,
  report: Report,
): void {
  const at: Path = ["dyes", name, "mix"];
  const names = Object.keys(amountsIn(mix));
  if (names.length === 0) {
    if (isMap(mix)) report("mix-empty", at, "the mix has no dyes", "write { straw: 12 mL/L, rose: 3 mL/L }");
    return;
  }
  const mixedIn = new Set(mixes(batch).map(([one]) => one));
  for (const part of names)
    if (mixedIn.has(part))
      report(
        "mix-of-mix",
        [...at, part],
        `${part} is a mix itself`,
        "write the dyes that it is mixed from, each with its own amount",
        "key",
      );
  const parts = names.flatMap((part) => {
    const dye = known.get(part);
    return dye === undefined ? [] : [[part, dye] as const];
  });
  const unlike = (of: (dye: Plain) => unknown): readonly string[] => [
    ...new Set(parts.map(([, dye]) => String(of(dye)))),
  ];
  if (unlike(({ dilution }) => dilution?.kind ?? parts[0]?.[1].dilution?.kind).length > 1)
    report(
      "mix-kinds",
      at,
      "liquids and powders are mixed, which a plan does not reckon with",
      "mix dyes of one kind, or dip in two baths",
    );
  const readings = parts.map(([, dye]) => dye.reading ?? standardReading);
  const [first] = readings;
  if (readings.some((one) => !sameReading(one as typeof standardReading, first as typeof standardReading)))
    report(
      "unlike-readings",
      at,
      "the dyes of the mix were read under unlike lights",
      "mix dyes that were read alike",
    );
  const bases = unlike(({ base: own }) => (typeof own === "string" ? own : "a bare swatch"));
  if (base === undefined && bases.length > 1)
    report(
      "mix-base",
      at,
      `the swatches of its dyes were dyed on ${listed(bases, "and")}`,
      `add base: with the one that the mix is for`,
    );
  if (names.length === 1 && items(trials).length > 0)
    report(
      "mix-trials",
      ["dyes", name, "trials"],
      "a mix of one dye is that dye, diluted: trials correct mixes of several",
      "write the trial under its bath, as trial: { time: 45 s, lab: [69.0, 39.8, 20.1] }",
      "key",
    );
}

/** What a mixed bath cannot have, or has in a form of its own. */
function checkBaths(batch: PartlyRead, report: Report): void {
  const byName = new Map(mixes(batch));
  for (const [i, bath] of items(batch.baths)) {
    const { start } = bath;
    const mixed = own(Object.fromEntries(byName), bath.dye);
    const mix = mixed && amountsIn(mixed.mix);
    const strength = typeof start === "object" && start !== null ? start.strength : undefined;
    const each = isMap(strength) && !isAmount(strength) ? strength : undefined;
    if (
      each !== undefined &&
      mix === undefined &&
      bath.dye !== undefined &&
      own(batch.dyes, bath.dye) !== undefined
    )
      report(
        "start-strength",
        ["baths", i, "start", "strength"],
        `the dye ${bath.dye} is not a mix: it has one strength`,
        "write strength: 92 %",
      );
    if (mix === undefined) continue;
    const names = Object.keys(mix);
    for (const name of Object.keys(each ?? {}))
      if (names.length > 0 && !names.includes(name))
        report(
          "start-strength",
          ["baths", i, "start", "strength", name],
          `${name} is not in the mix ${bath.dye}`,
          `write the strengths of ${listed(names, "and")}`,
          "key",
        );
    const missing = each === undefined ? [] : names.filter((name) => !Object.hasOwn(each, name));
    if (missing.length > 0)
      report(
        "start-strength",
        ["baths", i, "start", "strength"],
        `the strength of ${listed(missing, "and")} is missing`,
        `add ${missing[0]}: 92 %, or write one strength for all`,
      );
    if (names.length > 1 && bath.trial !== undefined)
      report(
        "mix-bath-trial",
        ["baths", i, "trial"],
        `trials of a mix are written under the mix, with the colours of all its dyes corrected`,
        `move it to dyes.${bath.dye}.trials`,
        "key",
      );
    if (start === "log")
      report(
        "mix-log",
        ["baths", i, "start"],
        "the bath log does not tell the dyes of a mix apart",
        "write the start that the last plan printed: { coldVolume: 5.4 L, strength: { ... }, age: 12 d, area: 3.1 m2 }",
      );
  }
}

/** Mixes must be of dyes that the arithmetic can mix, and their baths and shades of a form that it knows. */
export function checkMixes(batch: PartlyRead, report: Report): void {
  const found = mixes(batch);
  const known = new Map(plainDyes(batch));
  for (const one of found) {
    const [name, { mix, trials }] = one;
    checkParts(batch, one, known, report);
    checkAmounts(mix, known, ["dyes", name, "mix"], report);
    for (const [i, trial] of items(trials)) {
      const at: Path = ["dyes", name, "trials", i, "mix"];
      checkAmounts(trial.mix, known, at, report);
      for (const dye of Object.keys(amountsIn(trial.mix)))
        if (known.has(dye) && isMap(mix) && !Object.hasOwn(mix, dye))
          report(
            "trial-dye",
            [...at, dye],
            `${dye} is not in the mix ${name}`,
            `a trial is of ${listed(Object.keys(mix), "and")}; leave out what it did not have`,
            "key",
          );
    }
  }
  const names = new Set(found.map(([name]) => name));
  for (const [name, { swatch, dye }] of entries(batch.shades))
    if (swatch !== undefined && dye !== undefined && names.has(dye))
      report(
        "swatch-missing",
        ["shades", name, "swatch"],
        `${dye} is a mix, which has no swatches`,
        `write time: ${swatch.value === undefined ? "60" : shortNumber(swatch.value)} s, or the colour as lab or hex`,
        "key",
      );
  checkBaths(batch, report);
}
