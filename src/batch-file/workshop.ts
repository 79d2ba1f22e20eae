import type { Outcome } from "../core/fault.js";
import { madeOnce } from "../core/made-once.js";
import type { MeshMeasure } from "../core/part/mesh-measure.js";
import { SharedWork } from "../core/plan/run/shared-work.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import type { BatchRead } from "./batch-read.js";
import type { BatchText } from "./batch-text.js";
import { inOrder } from "./issues/in-order.js";
import type { Reflectance } from "./resources/parse-reflectance.js";
import type { Readers } from "./resources/resources.js";
import { type MadeBatch, settleBatch } from "./settle-batch.js";
import { gather, IncludedFiles, type ReadFile } from "./source/include.js";
import type { Override } from "./source/override.js";

/** Readers of all files of a workshop, supplied by the caller. */
export interface WorkshopReaders extends Readers {
  readonly readFile: ReadFile;
}

/**
 * A batch file read with its includes and overrides, not yet checked.
 * @internal
 */
export interface OpenBatch {
  /** Faults so far; if the file could not be read at all, `settle` reports only these again. */
  readonly diagnostics: readonly Diagnostic[];
  /** Checks and completes the batch, under further changes that are not kept, and reports all its faults at once. */
  readonly settle: (changes?: readonly Override[]) => Promise<BatchRead>;
}

/** Most models and curves to cache; a workshop has dozens. */
const mostFiles = 256;

/** Most batches to cache, one for each list of included files. */
const mostMade = 100;

/**
 * A workshop that reads and plans batches and does the work that they share once: it reads and joins included files,
 * checks and completes their entries, and in its `work` fits dyes, aims at shades and heats tanks. Each batch gives the
 * same results as alone. Callers must not change what it returns.
 */
export class Workshop {
  /** For `planBatch`. */
  readonly work = new SharedWork();
  private readonly readers: WorkshopReaders;
  private readonly included = new IncludedFiles();
  /** By the list of included files. */
  private readonly made = new Map<string, MadeBatch>();
  private readonly models = new Map<string, Promise<Outcome<MeshMeasure>>>();
  private readonly curves = new Map<string, Promise<Outcome<Reflectance>>>();

  constructor({ readFile, measure, reflectance }: WorkshopReaders) {
    this.readers = {
      readFile,
      ...(measure && {
        measure: (file, unit) =>
          madeOnce(this.models, `${unit} ${file}`, mostFiles, () => measure(file, unit)),
      }),
      ...(reflectance && {
        reflectance: (file) => madeOnce(this.curves, file, mostFiles, () => reflectance(file)),
      }),
    };
  }

  /** Reads a batch file with its includes and overrides, and reports all its faults at once. */
  async read(file: BatchText): Promise<BatchRead> {
    return (await this.open(file)).settle();
  }

  /**
   * Opens a batch file, to settle it once or, under changes, many times.
   * @internal
   */
  async open({
    name,
    text,
    overrides = [],
    needs = [],
    wanted,
    log,
    startsMatter,
    asDayBegan,
  }: BatchText): Promise<OpenBatch> {
    const { readers, work } = this;
    const {
      merged,
      included,
      whole,
      diagnostics: found,
    } = await gather(name, text, readers.readFile, this.included);
    const diagnostics: Diagnostic[] = [...found];
    if (merged === undefined)
      return {
        diagnostics,
        settle: async () => ({ diagnostics: inOrder(diagnostics, name), locate: () => undefined }),
      };
    let joined = merged;
    // Most files are read as they are.
    const override = overrides.length > 0 ? await import("./source/override.js") : undefined;
    for (const argument of overrides) {
      const { applyOverride, readOverride } = override!;
      const { read, diagnostics: faults } = await readOverride(argument);
      const set = read === undefined ? { merged: joined, diagnostics: faults } : applyOverride(joined, read);
      diagnostics.push(...set.diagnostics);
      joined = set.merged;
    }
    const open = { name, merged: joined, whole, diagnostics };
    let like = included === undefined ? undefined : this.made.get(included);
    return {
      diagnostics,
      settle: async (changes = []) => {
        const { read, made } = await settleBatch(open, changes, {
          needs,
          readers,
          wanted,
          work,
          readFile: readers.readFile,
          log,
          startsMatter,
          asDayBegan,
          like,
        });
        if (like === undefined && made !== undefined) {
          like = made;
          if (included !== undefined) madeOnce(this.made, included, mostMade, () => made);
        }
        return read;
      },
    };
  }
}
