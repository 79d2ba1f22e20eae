import { done, error, type Fault, failed, isError, type Outcome, warning } from "../../core/fault.js";
import type { Base, Batch, Dye } from "../../core/model/batch.js";
import { sameReading } from "../../core/model/colour.js";
import { type MixDye, mixDye } from "../../core/recipe/mixture/mix-dye.js";
import { dyeModel } from "../../core/uptake/shade/dye-model.js";
import { unknownName } from "../batch/pick.js";

/** The dyes that were named, or all; a name that the spec does not have is a fault. */
function named(batch: Batch, typed: string | undefined): Outcome<readonly Dye[]> {
  if (typed === undefined) return done(batch.dyes.filter(({ mix }) => mix === undefined));
  const names = [...new Set(typed.split(",").map((name) => name.trim()))].filter((name) => name !== "");
  const faults = names.flatMap((name) =>
    batch.dyes.some((dye) => dye.name === name) ? [] : [unknownName("dyes", "dye", name, batch.dyes)],
  );
  if (names.length === 0)
    faults.push(error("usage", [], "--dyes: no dye is named", "write names of the spec with commas"));
  return faults.length > 0 ? failed(...faults) : done(batch.dyes.filter(({ name }) => names.includes(name)));
}

const leftOut = (fault: Fault): Fault => ({
  ...fault,
  severity: "warning",
  message: `${fault.message}; it is left out`,
});

/** Where dyes were dyed on unlike bases and none is named, nothing says what will be dyed. */
function unlikeBases(dyes: readonly MixDye[]): Fault[] {
  const names = [...new Set(dyes.map(({ model }) => model.dye.base?.name ?? "a bare swatch"))];
  return names.length < 2
    ? []
    : [
        error(
          "usage",
          [],
          `--base is needed: the swatches of the dyes were dyed on ${names.join(" and ")}`,
          "write --base with the base that will be dyed",
        ),
      ];
}

/**
 * The dyes to mix, over a base. A dye whose colours are not known, or that was read under another light than the first, is
 * a fault where it was named and left out with a warning where it was not.
 */
export function pickDyes(
  batch: Batch,
  typed: string | undefined,
  base: Base | undefined,
): Outcome<readonly MixDye[]> {
  const asked = named(batch, typed);
  if (!asked.ok) return asked;
  const faults: Fault[] = [];
  const dyes: MixDye[] = [];
  for (const dye of asked.value) {
    const model = dyeModel(dye, batch.handling);
    const read = model.ok ? mixDye(model.value, base) : model;
    const found = [...(model.ok ? model.faults : []), ...read.faults];
    faults.push(...(typed === undefined && !read.ok ? found.map(leftOut) : found));
    if (!read.ok) continue;
    const first = dyes[0]?.model.dye ?? dye;
    if (sameReading(first.reading, dye.reading)) dyes.push(read.value);
    else
      faults.push(
        (typed === undefined ? warning : error)(
          "unlike-readings",
          ["dyes", dye.name, "reading"],
          `dye "${dye.name}" was read under another light than "${first.name}"${typed === undefined ? "; it is left out" : ""}`,
          "mix dyes that were read alike",
        ),
      );
  }
  if (faults.some(isError)) return { ok: false, faults };
  if (dyes.length === 0)
    return failed(
      ...faults,
      error(
        "no-dyes-to-mix",
        ["dyes"],
        "no dye of the spec has swatches that tell its colours",
        "dip at least two swatches of each dye: dipwright swatches says which",
      ),
    );
  const unlike = base === undefined ? unlikeBases(dyes) : [];
  return unlike.length > 0 ? failed(...faults, ...unlike) : done(dyes, faults);
}
