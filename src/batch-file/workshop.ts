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
import { applyOverride, type Override, readOverride } from "./source/override.js";

/** Readers of all files of a workshop, each given by whoever runs the command. */
export interface WorkshopReaders extends Readers {
  readonly readFile: ReadFile;
}

/**
 * A batch file that has been read with all it includes and all overrides, before it is checked.
 * @internal
 */
export interface OpenBatch {
  /** Faults so far; where it could not be read at all, `settle` tells them again and nothing else. */
  readonly diagnostics: readonly Diagnostic[];
  /** Checks and completes it, with further changes that are not kept; every fault is reported in one go. */
  readonly settle: (changes?: readonly Override[]) => Promise<BatchRead>;
}

/** Models and curves that are kept; a workshop has dozens. */
const mostFiles = 256;

/** Batches that are kept, one for each list of included files. */
const mostMade = 100;

/**
 * A workshop in which batches are read and planned. What many batches share is found once: included files are read and
 * joined, a batch takes what it has from them checked and completed from one made before, and dyes are fitted, shades
 * aimed at and tanks heated in its `work`. Results are those of each batch alone. Nothing read may be changed.
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

  /** Reads a batch file with all it includes and all overrides; every fault of it is reported in one go. */
  async read(file: BatchText): Promise<BatchRead> {
    return (await this.open(file)).settle();
  }

  /**
   * Opens a batch file, to be settled once or, under changes, many times.
   * @internal
   */
  async open({ name, text, overrides = [], needs = [], wanted }: BatchText): Promise<OpenBatch> {
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
    for (const argument of overrides) {
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
          dyes: work.dyes,
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
