import { parseColour } from "../../core/colour/screen/parse-colour.js";
import { done, error, type Fault, failed, isError, type Outcome, warning } from "../../core/fault.js";
import type { Base, Batch, Colour, Shade } from "../../core/model/batch.js";
import { cautions } from "../../core/plan/advice/cautions.js";
import { SharedWork } from "../../core/plan/run/shared-work.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { isMix } from "../../core/recipe/mixed-bath/mixed-dye.js";
import { reworkMixed } from "../../core/recipe/rework/rework-mixed.js";
import { type MissedPart, type Rework, reworkShade } from "../../core/recipe/rework/rework-shade.js";
import { dyeModel } from "../../core/uptake/shade/dye-model.js";
import { labAfter } from "../../core/uptake/swatches/shade-curve.js";
import { reworkReport } from "../../report/rework/report.js";
import { dyeOfTime } from "../batch/dye-of-time.js";
import { onBatch, type Worked } from "../batch/on-batch.js";
import { unknownName } from "../batch/pick.js";
import type { Execute, Request } from "../command.js";

interface From {
  readonly colour: Colour;
  /** Given as a base: the part is not dyed yet. */
  readonly base?: Base;
}

/** The colour of a shade of the spec, as its dye gives it. */
function shadeColour(batch: Batch, name: string): Outcome<From> | undefined {
  const shade = batch.shades.find((one) => one.name === name);
  if (shade === undefined) return undefined;
  if (shade.target.kind === "colour") return done({ colour: shade.target.colour });
  const model = dyeOfTime(batch, shade, "from");
  if (!model.ok) return model;
  const lab = labAfter(model.value.chosen.curve, shade.target.seconds);
  return done({ colour: { kind: "lab", lab } });
}

function readFrom(batch: Batch, typed: string | undefined): Outcome<From> {
  if (typed === undefined)
    return failed(
      error(
        "usage",
        [],
        "--from is needed: the colour of the part",
        "write --from 58,30,9, a hex colour, a shade or a base",
      ),
    );
  const ofShade = shadeColour(batch, typed);
  if (ofShade !== undefined) return ofShade;
  const base = batch.bases.find(({ name }) => name === typed);
  if (base !== undefined)
    return base.lab === undefined
      ? failed(
          error(
            "no-base-colour",
            ["bases", typed],
            `base "${typed}" has no colour`,
            "write lab: [38.4, 0.1, -0.9] as read",
          ),
        )
      : done({ colour: { kind: "lab", lab: base.lab }, base });
  const colour = parseColour(typed);
  if (colour.ok) return done({ colour: colour.value });
  if (/^[\w-]+$/.test(typed))
    return failed(unknownName("from", "shade, base or colour", typed, [...batch.shades, ...batch.bases]));
  return failed(...colour.faults.map((fault) => ({ ...fault, path: ["--from"] })));
}

/** What a part becomes on its way to a shade, of one dye or of a mix. */
function reworkTo(
  batch: Batch,
  shade: Shade,
  part: MissedPart,
  { dyes, mixes }: SharedWork,
): Outcome<Rework> {
  const { dye } = shade;
  if (isMix(dye)) {
    const mixed = mixes.fit(dye, batch.handling, dyes);
    return mixed.ok ? reworkMixed(mixed.value, shade, part) : mixed;
  }
  const model = dyeModel(dye, batch.handling);
  return model.ok ? reworkShade(model.value, shade, part) : model;
}

/** A part that is not dyed yet takes no dye's curve up: every dye takes it as its base. */
const undyed = "";

function work(batch: Batch, options: Request["options"]): Outcome<Worked> {
  const meantName = options.shade as string | undefined;
  const typed = options.from as string | undefined;
  const from = readFrom(batch, typed);
  const meant = batch.shades.find(({ name }) => name === meantName);
  const faults: Fault[] = [...from.faults];
  if (meantName !== undefined && meant === undefined)
    faults.push(unknownName("shade", "shade", meantName, batch.shades));
  if (!from.ok || faults.some(isError)) return failed(...faults);
  const { base, colour } = from.value;
  const dyeOf = base === undefined ? meant?.dye.name : undyed;
  const part: MissedPart = { colour, ...(dyeOf === undefined ? {} : { dye: dyeOf }) };
  const shared = new SharedWork();
  const shades: Rework[] = [];
  for (const shade of batch.shades) {
    // On its own base a dye's curve begins at the bare part.
    const own = base !== undefined && base.name === shade.dye.base?.name;
    const of = own ? { ...part, dye: shade.dye.name } : part;
    const made = reworkTo(batch, shade, of, shared);
    if (made.ok) shades.push(made.value);
    else
      faults.push(
        ...made.faults.map((fault) =>
          fault.path[0] === "--from"
            ? fault
            : warning(fault.code, fault.path, `${fault.message}; it is left out`, fault.help),
        ),
      );
  }
  if (faults.some(isError)) return { ok: false, faults };
  if (shades.length === 0)
    return failed(
      ...faults,
      error(
        "no-shades",
        ["shades"],
        "the spec has no shade whose dye has swatches: nothing says what the part could become",
        "add shades: coral-light: { dye: coral, time: 30 s }",
      ),
    );
  const dyes = batch.dyes.filter((dye) => shades.some((shade) => shade.dye === dye.name));
  const caution = cautions({
    celsius: Math.max(...dyes.map(({ celsius }) => celsius)),
    roomCelsius: batch.room.celsius,
    agitation: false,
    drying: false,
    powder: dyes.some(({ dilution }) => dyeKinds[dilution.kind].raisesDust),
    lid: false,
    coolToCelsius: batch.handling.coolToCelsius,
  });
  const report = reworkReport({
    from: typed!,
    base: base?.name ?? null,
    meant: meantName ?? null,
    shades,
    cautions: caution,
  });
  const missed = meant !== undefined && !shades.some((one) => one.shade === meant.name && one.reachable);
  return done({ report, missed }, faults);
}

/** Shades that a part can still become. Where the shade that was meant is out of reach, the status is 1. */
export const execute: Execute = (request, io) =>
  onBatch(request, io, ["dyes", "shades"], (batch) => work(batch, request.options));
