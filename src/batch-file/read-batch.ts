import { error } from "../core/fault.js";
import { madeOnce } from "../core/made-once.js";
import { mapped } from "../core/mapped.js";
import type { Batch } from "../core/model/batch.js";
import { FittedDyes } from "../core/uptake/shade/fitted-dyes.js";
import { type Diagnostic, hasErrors, type Span } from "../diagnostics/diagnostic.js";
import { toDiagnostic } from "../diagnostics/to-diagnostic.js";
import { checkCurrency } from "./checks/currency.js";
import { checkNames } from "./checks/names.js";
import { checkOrders } from "./checks/orders.js";
import { checkReaders } from "./checks/readers.js";
import type { Report } from "./checks/report.js";
import { checkValues } from "./checks/values.js";
import { issueFaults } from "./issues/issues.js";
import type { PartFault } from "./issues/part-fault.js";
import type { ReadModel } from "./resources/model-reader.js";
import { type Readers, withResources } from "./resources/resources.js";
import { batchSchema, type RawSpec } from "./schema/batch.js";
import { readPartly } from "./schema/read-partly.js";
import { withoutEchoes } from "./source/echoes.js";
import { besides, gather, type IncludeMemory, type ReadFile } from "./source/include.js";
import type { Merged } from "./source/merge.js";
import { locateIn } from "./source/origin.js";
import { applyOverride, type Override, readOverride } from "./source/override.js";
import type { Part, Path } from "./source/source.js";
import { complete, type Spec } from "./to-batch/complete.js";
import { withEvidence } from "./to-batch/evidence.js";
import { toBatch } from "./to-batch/to-batch.js";

/** Top-level keys that a command cannot do without. */
export type Need = "tanks" | "dyes" | "parts" | "shades" | "baths" | "orders" | "bases";

export interface BatchInput extends Readers {
  /** Name of the file as the user gave it; "-" for standard input. */
  readonly name: string;
  readonly text: string;
  readonly readFile: ReadFile;
  /** Arguments of `--set`, in order. */
  readonly overrides?: readonly string[];
  readonly needs?: readonly Need[];
  /** Kept over many batches that share included files. */
  readonly memory?: IncludeMemory;
  /** Whether the batch is wanted, told from its data before they are checked; all are where absent. */
  readonly wanted?: (data: Readonly<Record<string, unknown>>) => boolean;
}

export interface BatchRead {
  /** Not wanted: nothing of it was looked at but its YAML. */
  readonly unwanted?: boolean;
  /** Absent where a diagnostic is an error. */
  readonly batch?: Batch;
  /** @internal */
  readonly spec?: Spec;
  readonly diagnostics: readonly Diagnostic[];
  /** The place in the input that a path into the batch came from. */
  readonly locate: (path: Path) => Span | undefined;
}

const needHelp: { readonly [N in Need]: string } = {
  tanks: "add tanks: with a name and volume: 6 L below it",
  dyes: "add dyes: with a name, dilution: 1:9 and temperature: 80 °C below it",
  parts: "add parts: with a name, mass: 6.4 g and area: 41 cm2 below it",
  shades: "add shades: with a name and { dye: coral, time: 30 s } behind it",
  baths: "add baths: with - { tank: six, dye: coral } below it",
  orders: "add orders: with - { part: hook, shade: coral-light, quantity: 120 } below it",
  bases: "add bases: with a name and { lab: [92.1, -0.6, -2.3] } behind it",
};

function missing(data: Record<string, unknown>, needs: readonly Need[]): PartFault[] {
  return mapped(
    needs.filter((need) => {
      const value = data[need];
      return (
        value === undefined ||
        (typeof value === "object" && value !== null && Object.keys(value).length === 0)
      );
    }),
    (need) => ({
      fault: error(
        "missing-key",
        [need],
        `the batch has no ${need}, which this command needs`,
        needHelp[need],
      ),
      part: "key",
    }),
  );
}

/**
 * Everything that is wrong with the data, and the spec if nothing is. Where a part of the data could not be
 * read, names and needs are not looked at: what is missed may stand in that part.
 */
function checked(
  data: Record<string, unknown>,
  whole: boolean,
  input: BatchInput,
): { raw?: RawSpec; faults: PartFault[] } {
  const { value, issues } = readPartly(batchSchema(), data);
  const faults = issues.flatMap((issue) => issueFaults(issue, data, batchSchema()));
  const report: Report = (code, path, message, help, part = "value") =>
    void faults.push({ fault: error(code, path, message, help), part });
  const looks = [
    checkReaders(input),
    ...(whole ? [checkNames, checkOrders, checkValues, checkCurrency] : []),
  ];
  for (const look of looks) look(value, report);
  if (whole) faults.push(...missing(data, input.needs ?? []));
  return faults.length === 0 ? { raw: value as RawSpec, faults } : { faults: withoutEchoes(faults) };
}

/** By place: the main file first, then others in the order they appear; then line and column. */
function inOrder(diagnostics: readonly Diagnostic[], main: string): Diagnostic[] {
  const files = [
    ...new Set([main, ...diagnostics.flatMap((d) => mapped(d.spans.slice(0, 1), (s) => s.file))]),
  ];
  const key = (d: Diagnostic): readonly number[] => {
    const span = d.spans[0];
    return span === undefined ? [-1, 0, 0] : [files.indexOf(span.file), span.line, span.column];
  };
  const seen = new Set<string>();
  return mapped(
    mapped(diagnostics, (d) => ({ d, k: key(d) })).sort(
      (a, b) => a.k[0]! - b.k[0]! || a.k[1]! - b.k[1]! || a.k[2]! - b.k[2]!,
    ),
    ({ d }) => d,
  ).filter((d) => {
    const same = JSON.stringify([
      d.code,
      d.message,
      d.spans[0]?.file,
      d.spans[0]?.line,
      d.spans[0]?.column,
      d.spans[0]?.text.slice(0, 1000),
    ]);
    return !seen.has(same) && seen.add(same) !== undefined;
  });
}

/** Meshes and curves that are remembered while a batch is open. */
const mostFiles = 256;

/** A batch file that has been read with all it includes and all overrides, before it is checked. */
export interface OpenBatch {
  /** Faults so far; where it could not be read at all, `settle` tells them again and nothing else. */
  readonly diagnostics: readonly Diagnostic[];
  /** Checks and completes it, with further changes that are not kept; every fault is reported in one go. */
  readonly settle: (changes?: readonly Override[]) => Promise<BatchRead>;
}

/** Opens a batch file, to be settled once or, under changes, many times; files that it points at are read once. */
export async function openBatch(given: BatchInput): Promise<OpenBatch> {
  const { measure, reflectance } = given;
  const models = new Map<string, ReturnType<ReadModel>>();
  const curves = new Map<string, ReturnType<NonNullable<typeof reflectance>>>();
  const input: BatchInput = {
    ...given,
    ...(measure && {
      measure: (file, unit) => madeOnce(models, `${unit} ${file}`, mostFiles, () => measure(file, unit)),
    }),
    ...(reflectance && {
      reflectance: (file) => madeOnce(curves, file, mostFiles, () => reflectance(file)),
    }),
  };
  const { merged, whole, diagnostics } = await gather(input.name, input.text, input.readFile, input.memory);
  const first: Diagnostic[] = [...diagnostics];
  if (merged === undefined)
    return {
      diagnostics: first,
      settle: async () => ({ diagnostics: inOrder(first, input.name), locate: () => undefined }),
    };
  let joined: Merged = merged;
  for (const argument of input.overrides ?? []) {
    const { read, diagnostics: faults } = await readOverride(argument);
    const set = read === undefined ? { merged: joined, diagnostics: faults } : applyOverride(joined, read);
    first.push(...set.diagnostics);
    joined = set.merged;
  }
  const open = joined;
  const fitted = new FittedDyes();
  return {
    diagnostics: first,
    settle: (changes = []) => settle({ merged: open, whole, diagnostics: first }, changes, input, fitted),
  };
}

async function settle(
  open: { readonly merged: Merged; readonly whole: boolean; readonly diagnostics: readonly Diagnostic[] },
  changes: readonly Override[],
  input: BatchInput,
  fitted: FittedDyes,
): Promise<BatchRead> {
  const all = [...open.diagnostics];
  let joined = open.merged;
  for (const change of changes) {
    const set = applyOverride(joined, change);
    all.push(...set.diagnostics);
    joined = set.merged;
  }
  if (input.wanted?.(joined.data) === false)
    return { unwanted: true, diagnostics: inOrder(all, input.name), locate: () => undefined };
  const place = (path: Path, part: Part): Span => locateIn(joined.origin, path, part);
  const locate = (path: Path): Span => place(path, "value");
  const tell = ({ fault, part }: PartFault): void => {
    all.push(toDiagnostic(fault, (path) => place(path, part)));
  };

  const { raw, faults } = checked(joined.data, open.whole, input);
  faults.forEach(tell);
  if (raw === undefined || hasErrors(all)) return { diagnostics: inOrder(all, input.name), locate };

  const filled = await withResources(complete(raw), input, (path, name) => {
    const { file } = locate(path);
    return besides(file.startsWith("--") ? input.name : file, name);
  });
  for (const fault of filled.faults) tell({ fault, part: "value" });
  if (hasErrors(all)) return { diagnostics: inOrder(all, input.name), locate };

  const { spec, faults: doubts } = withEvidence(filled.spec, fitted);
  for (const fault of doubts) tell({ fault, part: "value" });
  if (hasErrors(all)) return { diagnostics: inOrder(all, input.name), locate };

  return { batch: toBatch(spec), spec, diagnostics: inOrder(all, input.name), locate };
}

/** Reads a batch file with all it includes and all overrides; every fault of it is reported in one go. */
export const readBatch = async (input: BatchInput): Promise<BatchRead> => (await openBatch(input)).settle();
