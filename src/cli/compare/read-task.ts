import { differenceFormulas, type FormulaName } from "../../core/colour/difference/compare-colours.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Reading } from "../../core/model/colour.js";
import type { Limit } from "../../report/compare/pair.js";
import { readReading } from "../colour/read-reading.js";
import type { Request } from "../command.js";
import { usage } from "../usage.js";

/** What is asked of `compare`. */
export interface CompareTask {
  readonly what:
    | { readonly kind: "two"; readonly standard: string; readonly sample: string; readonly spec?: string }
    | { readonly kind: "pairs"; readonly file: string; readonly failFast: boolean };
  readonly reading?: Reading;
  readonly limit?: Limit;
}

function limitOf(tolerance: string | undefined, formula: string | undefined): Outcome<Limit | undefined> {
  if (tolerance === undefined)
    return formula === undefined
      ? done(undefined)
      : failed(usage("--formula", "there is not a tolerance to judge by it", "add --tolerance 1.0"));
  const value = /^\d+(\.\d+)?$|^\.\d+$/.test(tolerance.trim()) ? Number(tolerance) : Number.NaN;
  if (!Number.isFinite(value))
    return failed(
      usage("--tolerance", `"${tolerance}" is not a tolerance`, "write a number of 0 or more, such as 1.0"),
    );
  const name = (formula ?? "ciede2000") as FormulaName;
  if (!(name in differenceFormulas)) throw new Error(`no formula ${name}`);
  return done({ formula: name, tolerance: value });
}

/** Reads arguments and options of `compare`; every fault of them at once. */
export function readTask({ args, options, output }: Request): Outcome<CompareTask> {
  const text = (name: string): string | undefined => options[name] as string | undefined;
  const reading = readReading(text("reading"));
  const limit = limitOf(text("tolerance"), text("formula"));
  const faults: Fault[] = [...reading.faults, ...limit.faults];
  const pairs = text("pairs");
  const spec = text("spec");
  const failFast = options.failFast === true;
  const [standard, sample] = args;
  if (pairs !== undefined && args.length > 0)
    faults.push(usage("--pairs", "the colours come from the file", "leave out A and B"));
  if (pairs !== undefined && spec !== undefined)
    faults.push(usage("--spec", "a file of pairs names no shades", "leave out --spec"));
  if (pairs === undefined && (standard === undefined || sample === undefined))
    faults.push(
      error("usage", [], "two colours are compared", "write compare A B, or compare --pairs FILE.csv"),
    );
  if (pairs === undefined && failFast)
    faults.push(usage("--fail-fast", "there are no rows to end at", "add --pairs FILE.csv"));
  if (spec === undefined && output.set.length > 0)
    faults.push(usage("--set", "no batch file is read, so there is nothing to set", "add --spec FILE"));
  if (faults.length > 0 || !reading.ok || !limit.ok) return failed(...faults);
  return done({
    what:
      pairs !== undefined
        ? { kind: "pairs", file: pairs, failFast }
        : { kind: "two", standard: standard!, sample: sample!, ...(spec === undefined ? {} : { spec }) },
    ...(reading.value === undefined ? {} : { reading: reading.value }),
    ...(limit.value === undefined ? {} : { limit: limit.value }),
  });
}
