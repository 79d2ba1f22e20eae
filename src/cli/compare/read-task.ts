import { differenceFormulas, type FormulaName } from "../../core/colour/difference/compare-colours.js";
import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Reading } from "../../core/model/colour.js";
import type { Limit } from "../../report/compare/pair.js";
import { readReading } from "../colour/read-reading.js";
import type { Request } from "../command.js";
import { usage } from "../usage.js";
import type { TypedBath } from "./judged.js";

/** A letter each names them in messages. */
const mostColours = 26;

/** What is asked of `compare`. */
export interface CompareTask {
  readonly what:
    | {
        readonly kind: "colours";
        readonly typed: readonly string[];
        readonly spec?: string;
        /** Of a second dip. */
        readonly bath: TypedBath;
      }
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
  const [strength, temperature] = [text("strength"), text("temperature")];
  if (pairs !== undefined && args.length > 0)
    faults.push(usage("--pairs", "the colours come from the file", "leave out A and B"));
  if (spec === undefined && (strength ?? temperature) !== undefined)
    faults.push(
      usage(
        strength === undefined ? "--temperature" : "--strength",
        "without a shade there is no bath for a second dip",
        "add --spec FILE and name a shade",
      ),
    );
  if (args.length > mostColours)
    faults.push(
      error(
        "usage",
        [],
        `${args.length} colours are too many`,
        `give at most ${mostColours}, or --pairs FILE.csv`,
      ),
    );
  if (pairs !== undefined && spec !== undefined)
    faults.push(usage("--spec", "a file of pairs names no shades", "leave out --spec"));
  if (pairs === undefined && args.length < 2)
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
        : {
            kind: "colours",
            typed: args,
            ...(spec === undefined ? {} : { spec }),
            bath: {
              ...(strength === undefined ? {} : { strength }),
              ...(temperature === undefined ? {} : { temperature }),
            },
          },
    ...(reading.value === undefined ? {} : { reading: reading.value }),
    ...(limit.value === undefined ? {} : { limit: limit.value }),
  });
}
