import { nearest } from "../../batch-file/issues/nearest.js";
import { parseColour } from "../../core/colour/screen/parse-colour.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Batch, Dye, Mix } from "../../core/model/batch.js";
import { defaults } from "../../core/model/defaults.js";
import type { ShadeWish } from "../../core/uptake/shade/shade-time.js";

const names = (of: readonly { readonly name: string }[]): string => of.map(({ name }) => name).join(", ");

/** An option names something that the batch does not have. */
export function unknownName(
  option: string,
  what: string,
  text: string,
  of: readonly { readonly name: string }[],
): Fault {
  const near = nearest(
    text,
    of.map(({ name }) => name),
  );
  return error(
    "undefined-name",
    [],
    `--${option}: no ${what} is named "${text}"`,
    near === undefined ? `the spec has ${names(of) || "none"}` : `did you mean ${near}?`,
  );
}

/** A mix is asked for what only a dye of its own has. */
const noCurve = (name: string, { parts }: Mix): Fault =>
  error(
    "mixed-dye",
    ["dyes", name],
    `dye "${name}" is a mix, which has no shade curve of its own`,
    `take one of its dyes: ${names(parts.map(({ dye }) => dye))}; plan and blend reckon with the mix`,
  );

/** The dye that is meant: the one named, the target shade's, or the only one there is. */
export function pickDye(batch: Batch, typed: string | undefined, target: string | undefined): Outcome<Dye> {
  const of = target === undefined ? undefined : batch.shades.find(({ name }) => name === target)?.dye;
  if (typed !== undefined) {
    const dye = batch.dyes.find(({ name }) => name === typed);
    if (!dye) return failed(unknownName("dye", "dye", typed, batch.dyes));
    if (dye.mix !== undefined) return failed(noCurve(dye.name, dye.mix));
    if (of && of !== dye)
      return failed(
        error(
          "usage",
          [],
          `--target: shade "${target}" is dyed with ${of.name}, not ${dye.name}`,
          `leave out --dye, or write --dye ${of.name}`,
        ),
      );
    return done(dye);
  }
  if (of?.mix !== undefined) return failed(noCurve(of.name, of.mix));
  if (of) return done(of);
  const plain = batch.dyes.filter(({ mix }) => mix === undefined);
  const [only, ...others] = plain;
  if (only && others.length === 0) return done(only);
  return failed(
    error(
      "usage",
      [],
      "--dye is needed: the spec has several dyes",
      `write --dye with one of ${names(plain)}`,
    ),
  );
}

/** The colour or shade that `--target` means; undefined where it is not given. */
export function readWish(
  batch: Batch,
  typed: string | undefined,
  tolerance: number | undefined,
): Outcome<ShadeWish | undefined> {
  if (typed === undefined) return done(undefined);
  const shade = batch.shades.find(({ name }) => name === typed);
  if (shade) {
    const { target } = shade;
    return done({
      name: shade.name,
      target: target.kind === "swatch" ? { kind: "time", seconds: target.seconds } : target,
      tolerance: tolerance ?? shade.tolerance,
    });
  }
  const colour = parseColour(typed);
  if (colour.ok)
    return done({
      name: typed,
      target: { kind: "colour", colour: colour.value },
      tolerance: tolerance ?? defaults.shade.tolerance,
    });
  if (/^[\w-]+$/.test(typed) && !typed.startsWith("#"))
    return failed(unknownName("target", "shade or colour", typed, batch.shades));
  return failed(...colour.faults.map((fault) => ({ ...fault, message: `--target: ${fault.message}` })));
}
