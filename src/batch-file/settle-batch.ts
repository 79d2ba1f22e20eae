import type { SharedWork } from "../core/plan/run/shared-work.js";
import { type Diagnostic, hasErrors, type Span } from "../diagnostics/diagnostic.js";
import { toDiagnostic } from "../diagnostics/to-diagnostic.js";
import type { BatchRead } from "./batch-read.js";
import type { BatchText, Need } from "./batch-text.js";
import { checkBatch } from "./checks/check-batch.js";
import { inOrder } from "./issues/in-order.js";
import type { PartFault } from "./issues/part-fault.js";
import { type Readers, withResources } from "./resources/resources.js";
import type { RawSpec } from "./schema/batch.js";
import { besides, type ReadFile } from "./source/include.js";
import type { Merged } from "./source/merge.js";
import { locateIn } from "./source/origin.js";
import type { Override } from "./source/override.js";
import type { Part, Path } from "./source/source.js";
import { complete, type Spec } from "./to-batch/complete.js";
import { type Models, modelsOf } from "./to-batch/models.js";
import { toBatch } from "./to-batch/to-batch.js";

/** A faultless batch at each stage of its making; another batch reuses the entries that are the same objects in both. */
export interface MadeBatch {
  readonly data: Merged["data"];
  readonly raw: RawSpec;
  readonly completed: Spec;
  /** With the figures from files and evidence. */
  readonly spec: Spec;
  readonly models: Models;
}

/** A file read with its includes and overrides. */
export interface ReadFiles {
  readonly name: string;
  readonly merged: Merged;
  /** Whether every included file could be read. */
  readonly whole: boolean;
  readonly diagnostics: readonly Diagnostic[];
}

const hasEvidence = ({ dyes, handling }: Spec): boolean =>
  handling.dragOutEvidence.length > 0 ||
  Object.values(dyes).some(({ uptakeEvidence }) => uptakeEvidence.length > 0);

/** What `settleBatch` needs beside the file. */
export interface Settling {
  readonly needs: readonly Need[];
  readonly readers: Readers;
  readonly wanted: BatchText["wanted"];
  readonly work: SharedWork;
  readonly readFile: ReadFile;
  /** Wins over the log that the file names. */
  readonly log: string | undefined;
  readonly startsMatter: boolean | undefined;
  readonly asDayBegan: boolean | undefined;
  /** A batch made before. */
  readonly like: MadeBatch | undefined;
}

/** Checks and completes a batch under some changes, and reports all its faults at once. */
export async function settleBatch(
  { name, merged, whole, diagnostics }: ReadFiles,
  changes: readonly Override[],
  { needs, readers, readFile, wanted, work, log, startsMatter, asDayBegan, like }: Settling,
): Promise<{ readonly read: BatchRead; readonly made?: MadeBatch }> {
  const all = [...diagnostics];
  let joined = merged;
  const override = changes.length > 0 ? await import("./source/override.js") : undefined;
  for (const change of changes) {
    const set = override!.applyOverride(joined, change);
    all.push(...set.diagnostics);
    joined = set.merged;
  }
  const { data, origin } = joined;
  if (wanted?.(data) === false)
    return { read: { unwanted: true, diagnostics: inOrder(all, name), locate: () => undefined } };
  const place = (path: Path, part: Part): Span => locateIn(origin, path, part);
  const locate = (path: Path): Span => place(path, "value");
  const tell = ({ fault, part }: PartFault): void => {
    all.push(toDiagnostic(fault, (path) => place(path, part)));
  };
  const bad = () => ({ read: { diagnostics: inOrder(all, name), locate } });

  const { raw, faults } = await checkBatch(data, whole, needs, readers, like);
  faults.forEach(tell);
  if (raw === undefined || hasErrors(all)) return bad();

  const completed = complete(raw, like);
  const besideFile = (path: Path, named: string): string => {
    const { file } = locate(path);
    return besides(file.startsWith("--") ? name : file, named);
  };
  const filled = await withResources(completed, readers, besideFile);
  for (const fault of filled.faults) tell({ fault, part: "value" });
  if (hasErrors(all)) return bad();

  let { spec } = filled;
  if (hasEvidence(spec)) {
    // Loaded only where there is evidence.
    const { withEvidence } = await import("./to-batch/evidence.js");
    const found = withEvidence(spec, work.dyes);
    for (const fault of found.faults) tell({ fault, part: "value" });
    if (hasErrors(all)) return bad();
    spec = found.spec;
  }
  if (log !== undefined) spec = { ...spec, log };
  if (startsMatter !== false && spec.baths.some(({ start }) => start.kind === "log")) {
    // Loaded only where a bath starts from its log.
    const { loggedStarts } = await import("./resources/logged-starts.js");
    const file = log ?? (spec.log === undefined ? undefined : besideFile(["log"], spec.log));
    const logged = await loggedStarts(spec, { file, readFile, asDayBegan }, work, locate);
    all.push(...logged.diagnostics);
    if (hasErrors(all)) return bad();
    spec = logged.spec;
  }

  const models = modelsOf(spec, like);
  return {
    read: { batch: toBatch(spec, models), spec, diagnostics: inOrder(all, name), locate },
    made: { data, raw, completed, spec, models },
  };
}
