import type * as model from "../../core/model/batch.js";
import { Bases } from "./bases.js";
import type { Spec } from "./complete.js";
import { dye, shade } from "./dyes.js";
import { type Entries, type MadeEntries, makeEach } from "./entries.js";
import { dryer, tank } from "./equipment.js";
import { mixedDye } from "./mixes.js";
import { part } from "./parts.js";

/** The named things of a batch as core models. */
export interface Models {
  readonly tanks: Entries<model.Tank>;
  readonly dryers: Entries<model.Dryer>;
  readonly bases: Bases;
  readonly dyes: Entries<model.Dye>;
  readonly parts: Entries<model.Part>;
  readonly shades: Entries<model.Shade>;
}

/** A batch whose models another one may reuse. */
interface Like {
  readonly spec: Spec;
  readonly models: Models;
}

/** Makes the models of a checked spec; reuses those of a batch that shares the same entries (`like`). */
export function modelsOf(spec: Spec, like?: Like): Models {
  const before = <K extends "tanks" | "dryers" | "dyes" | "parts" | "shades">(key: K) =>
    like &&
    ({ from: like.spec[key], to: like.models[key] } as MadeEntries<Spec[K][string], Models[K][string]>);
  const bases = spec.bases === like?.spec.bases ? like.models.bases : new Bases(spec.bases);
  const plain = makeEach(
    spec.dyes,
    (one, name) => dye(one, name, one.base === undefined ? undefined : bases.under(one.base, one.reading)),
    bases === like?.models.bases ? before("dyes") : undefined,
  );
  const dyes =
    Object.keys(spec.mixes).length === 0
      ? plain
      : { ...plain, ...makeEach(spec.mixes, (one, name) => mixedDye(one, name, plain, bases)) };
  return {
    tanks: makeEach(spec.tanks, tank, before("tanks")),
    dryers: makeEach(spec.dryers, dryer, before("dryers")),
    bases,
    dyes,
    parts: makeEach(spec.parts, part, before("parts")),
    shades: makeEach(
      spec.shades,
      (one, name) => shade(one, name, dyes[one.dye]!),
      dyes === like?.models.dyes ? before("shades") : undefined,
    ),
  };
}
