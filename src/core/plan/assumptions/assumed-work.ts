import type { AssumedName, AssumedShare } from "../../cost/assumed-shares.js";
import { type Assumption, assumption } from "../../model/assumption.js";
import type { Batch, Dye } from "../../model/batch.js";
import { dyesOf } from "../../model/dyes-of.js";
import type { MixedDye } from "../../recipe/mixed-bath/mixed-dye.js";
import type { DyeModel } from "../../uptake/shade/dye-model.js";
import type { OrderAim } from "../assign/find-aims.js";
import type { BathRun } from "../run/bath-run.js";

/** A worked batch as far as it decides what its results assume. */
export interface AssumedWork {
  readonly batch: Batch;
  readonly models: ReadonlyMap<Dye, DyeModel>;
  readonly mixed: ReadonlyMap<Dye, MixedDye>;
  readonly aims: readonly OrderAim[];
  readonly runs: readonly BathRun[];
  readonly shares: readonly AssumedShare[];
}

/** The dyes in the baths of a batch, those of mixes one by one. */
export const dyesInBaths = ({ baths }: Batch): ReadonlySet<Dye> =>
  new Set(baths.flatMap((bath) => dyesOf(bath.dye)));

/** The share of the cost that rests on an assumption; nothing where none does. */
export function costShareOf({ shares }: AssumedWork, what: AssumedName): Pick<Assumption, "costShare"> {
  const costShare = shares.find((one) => one.what === what)?.share ?? 0;
  return costShare === 0 ? {} : { costShare };
}

/** What is assumed of a dye; what is said follows its name. */
export const ofDye = ({ name }: Dye, code: string, keys: readonly string[], said: string): Assumption =>
  assumption(code, ["dyes", name, ...keys], `dye "${name}"${said}`);
