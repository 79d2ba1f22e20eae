import { parseColour } from "../../core/colour/screen/parse-colour.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Colour } from "../../core/model/batch.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { parseQuantity } from "../../core/quantity/parse/parse-quantity.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import type { MixDye } from "../../core/recipe/mixture/mix-dye.js";
import { pouredFor, strengthOf } from "../../core/recipe/solve/amounts.js";
import { mostStrength } from "../../core/recipe/solve/solve-set.js";
import type { MixTrial } from "../../core/recipe/trial/fit-trials.js";
import { dyedColour } from "../../core/uptake/swatches/swatch-curves.js";
import { unknownName } from "../batch/pick.js";

const form =
  "write what was poured, the time and the colour read: --trial 'yellow 12 mL, blue 3 mL, water 485 mL, 60 s: 61,-20,30'";
const bad = (message: string, help = form): Outcome<never> =>
  failed(error("trial-form", [], `--trial: ${message}`, help));

/** A number with a unit at the end of a piece, after the name that it belongs to. */
const piece = /^(.*?)\s*(-?\d+(?:\.\d+)?\s*[^\d\s.][^\d]*)$/u;
/** How far over the strongest bath a recipe at that limit may come when its amounts are rounded. */
const rounding = 1.02;

interface Mixed {
  readonly poured: Map<MixDye, number>;
  waterMl: number | undefined;
  seconds: number | undefined;
}

/** Takes one piece of a recipe: a time, the water, or a dye with its amount. */
function take(text: string, dyes: readonly MixDye[], mixed: Mixed): Outcome<undefined> {
  const [, name = "", amount = ""] = piece.exec(text) ?? [];
  if (amount === "") return bad(`"${text}" has no amount with a unit`);
  if (name === "") {
    const time = parseQuantity("time", amount, { path: ["--trial"] });
    if (!time.ok) return time;
    if (mixed.seconds !== undefined) return bad(`"${text}" is a second time: a dip has one`);
    if (!(time.value.value > 0)) return bad("the time of a dip is above 0 s");
    mixed.seconds = time.value.value;
    return done(undefined);
  }
  if (name === "water") {
    const water = parseQuantity("volume", amount, { path: ["--trial"] });
    if (!water.ok) return water;
    if (mixed.waterMl !== undefined) return bad("water is given twice");
    mixed.waterMl = water.value.value * 1000;
    return done(undefined);
  }
  const dye = dyes.find((one) => one.name === name);
  if (dye === undefined) return failed(unknownName("trial", "dye to mix", name, dyes));
  if (mixed.poured.has(dye)) return bad(`dye "${name}" is given twice`);
  const { kind } = dye.model.dye.dilution;
  const liquid = dyeKinds[kind].takesRoom;
  const read = parseQuantity(liquid ? "volume" : "mass", amount, { path: ["--trial"] });
  if (!read.ok) return read;
  mixed.poured.set(dye, liquid ? read.value.value * 1000 : read.value.value);
  return done(undefined);
}

/** The colour that was read, as the dyes read theirs. */
function readLab(text: string, { model }: MixDye): ReturnType<typeof dyedColour> {
  const colour: Outcome<Colour> = parseColour(text.trim());
  if (!colour.ok) return failed(...colour.faults.map((fault) => ({ ...fault, path: ["--trial"] })));
  return dyedColour(colour.value, model.dye.reading, ["--trial"]);
}

/**
 * What was mixed and the colour it gave, as typed: 'yellow 12 mL, blue 3 mL, water 485 mL, 60 s: 61,-20,30'. Without a time
 * the dip took the usual one.
 */
export function readTrial(typed: string, dyes: readonly MixDye[], usualSeconds: number): Outcome<MixTrial> {
  const colon = typed.lastIndexOf(":");
  if (colon < 0) return bad(`"${typed}" has no colour after a colon`);
  // Pieces are parted by commas, so one within a number would cut it in two.
  const comma = /\d+,\d+/.exec(typed.slice(0, colon))?.[0];
  if (comma !== undefined)
    return bad(`the number "${comma}" contains a comma`, `decimals have a point: ${comma.replace(",", ".")}`);
  const mixed: Mixed = { poured: new Map(), waterMl: undefined, seconds: undefined };
  const faults: Fault[] = typed
    .slice(0, colon)
    .split(",")
    .flatMap((text) => [...take(text.trim(), dyes, mixed).faults]);
  if (faults.length > 0) return failed(...faults);
  const of = [...mixed.poured.keys()];
  if (of.length === 0) return bad(`"${typed}" names no dye`);
  if (mixed.waterMl === undefined)
    return bad(
      `"${typed}" has no water`,
      "write the water too: water 485 mL; the strength of each dye follows from it",
    );
  const lab = readLab(typed.slice(colon + 1), of[0]!);
  if (!lab.ok) return lab;
  const liquid = of.reduce((sum, dye) => sum + (dye.share > 0 ? mixed.poured.get(dye)! : 0), 0);
  const coldMl = liquid + mixed.waterMl;
  if (!(coldMl > 0)) return bad(`"${typed}" has neither water nor dye in it`);
  const strengths = of.map((dye) => strengthOf(dye, mixed.poured.get(dye)!, coldMl));
  const strong = strengths.findIndex((strength) => strength > rounding * mostStrength);
  if (strong >= 0)
    return failed(
      error(
        "mix-strength",
        [],
        `--trial: the bath has ${shortNumber(strengths[strong]!, 2)} times as much ${of[strong]!.name} as a fresh bath of it alone, and colours are known up to ${mostStrength} times`,
        "check the amounts and their units, the water too",
      ),
    );
  return done({
    dyes: of,
    strengths,
    poured: pouredFor(of, strengths, coldMl),
    seconds: mixed.seconds ?? usualSeconds,
    lab: lab.value.lab,
  });
}
