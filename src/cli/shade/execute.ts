import { dyeOf, makeUp } from "../../core/bath/make-up/make-up.js";
import { baseUnder } from "../../core/colour/base-under.js";
import { parseColour } from "../../core/colour/screen/parse-colour.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Dye } from "../../core/model/batch.js";
import { parseQuantity } from "../../core/quantity/parse/parse-quantity.js";
import { describeShade } from "../../core/uptake/shade/describe-shade.js";
import type { ShadeBath } from "../../core/uptake/shade/shade-bath.js";
import type { ShadeWish } from "../../core/uptake/shade/shade-time.js";
import { timeCard } from "../../core/uptake/shade/time-grid.js";
import { cardReport } from "../../report/shade/card.js";
import { shadeReport } from "../../report/shade/report.js";
import { onBatch, type Worked } from "../batch/on-batch.js";
import { pickDye, readWish, unknownName } from "../batch/pick.js";
import type { Execute, Request } from "../command.js";
import { type OptionReader, optionReader } from "../option-reader.js";

/** What a trial is typed as: "45 s, 69.0,39.8,20.1" or "45 s, #d9603b". */
function readTrial(typed: string | undefined): Outcome<ShadeBath["trial"]> {
  if (typed === undefined) return done(undefined);
  const comma = typed.indexOf(",");
  const time = parseQuantity("time", comma < 0 ? typed : typed.slice(0, comma));
  const colour = parseColour(comma < 0 ? "" : typed.slice(comma + 1).trim());
  const form = "write the time of the dip and the colour read: --trial '45 s, 69.0,39.8,20.1'";
  if (!time.ok || !(time.value.value > 0))
    return failed(error("trial-form", [], `--trial: "${typed}" does not begin with a dip time`, form));
  if (!colour.ok)
    return failed(error("trial-form", [], `--trial: "${typed}" has no colour behind its time`, form));
  return done({ seconds: time.value.value, colour: colour.value });
}

function readBath(
  batch: Batch,
  dye: Dye,
  read: OptionReader,
  typed: { readonly base: string | undefined; readonly trial: string | undefined },
): Outcome<ShadeBath> {
  const { base } = typed;
  const trial = readTrial(typed.trial);
  const strength =
    read.quantity("strength", "percent", { above: 0, must: "the strength of a bath is above 0 %" }) ?? 1;
  const celsius =
    read.quantity("temperature", "temperature", {
      above: 0,
      to: 99,
      must: "a bath is between 0 and 99 °C",
    }) ?? dye.celsius;
  const found = base === undefined ? undefined : batch.bases.find(({ name }) => name === base);
  const faults = [
    ...read.faults,
    ...trial.faults,
    ...(base !== undefined && !found ? [unknownName("base", "base", base, batch.bases)] : []),
  ];
  if (faults.length > 0 || !trial.ok) return failed(...faults);
  return done({
    strength,
    celsius,
    ...(found ? { base: baseUnder(found, dye.reading) } : {}),
    ...(trial.value ? { trial: trial.value } : {}),
    ...makeUpOf(batch, dye),
  });
}

/** The make-up of the first bath of the spec that holds the dye. */
function makeUpOf(batch: Batch, dye: Dye): Partial<Pick<ShadeBath, "makeUp">> {
  const tank = batch.baths.find((bath) => bath.dye === dye)?.tank;
  if (tank === undefined) return {};
  const made = makeUp({
    volumeHotL: tank.volumeL,
    celsius: dye.celsius,
    roomCelsius: batch.room.celsius,
    dilution: dye.dilution,
  });
  return { makeUp: { dye: dyeOf(made), volumeL: tank.volumeL } };
}

/** A card of dip times for a target over temperature and strength. */
function card(
  batch: Batch,
  options: Request["options"],
  dye: Dye,
  wish: ShadeWish | undefined,
  bath: ShadeBath,
): Outcome<Worked> {
  if (wish === undefined)
    return failed(error("usage", [], "--grid needs a colour", "add --target with a colour or a shade"));
  const fixed = ["strength", "temperature", "trial"].find((option) => options[option] !== undefined);
  if (fixed !== undefined)
    return failed(
      error("usage", [], `--grid cannot be used with --${fixed}`, "leave one out: a card has many baths"),
    );
  const made = timeCard(dye, batch.handling, bath.base, wish);
  return made.ok
    ? done({ report: cardReport(made.value), missed: !made.value.reachable }, made.faults)
    : made;
}

function work(batch: Batch, options: Request["options"]): Outcome<Worked> {
  const typed = (option: string): string | undefined => options[option] as string | undefined;
  const read = optionReader(typed);
  const dye = pickDye(batch, typed("dye"), typed("target"));
  const toleranceText = typed("tolerance");
  const tolerance = toleranceText === undefined ? undefined : Number(toleranceText);
  if (tolerance !== undefined && !(tolerance > 0 && Number.isFinite(tolerance)))
    return failed(
      error(
        "range",
        [],
        `--tolerance: "${toleranceText}" is not a difference`,
        "write a number above 0: 1.5",
      ),
    );
  const wish = readWish(batch, typed("target"), tolerance);
  if (!dye.ok) return failed(...wish.faults, ...dye.faults);
  const bath = readBath(batch, dye.value, read, { base: typed("base"), trial: typed("trial") });
  if (!wish.ok || !bath.ok) return failed(...wish.faults, ...bath.faults);
  if (options.grid === true) return card(batch, options, dye.value, wish.value, bath.value);
  const described = describeShade(dye.value, batch.handling, bath.value, wish.value);
  if (!described.ok) return described;
  if (described.value === null)
    return failed(
      error(
        "no-swatches",
        ["dyes", dye.value.name],
        `dye "${dye.value.name}" has no swatches: its colours are not known`,
        "add swatches: - { time: 60 s, lab: [65.9, 44.6, 23.0] }",
      ),
    );
  const { target } = described.value;
  const missed = target !== null && !target.reachable;
  return done({ report: shadeReport(described.value), missed }, described.faults);
}

/** A shade curve, and the time for a colour. A colour out of reach gives status 1. */
export const execute: Execute = (request, io) =>
  onBatch(request, io, ["dyes"], (batch) => work(batch, request.options));
