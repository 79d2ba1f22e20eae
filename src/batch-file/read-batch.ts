import type { BatchRead } from "./batch-read.js";
import type { BatchText } from "./batch-text.js";
import { Workshop, type WorkshopReaders } from "./workshop.js";

/** A batch file, and the readers of the files that it names. */
export interface BatchInput extends BatchText, WorkshopReaders {}

/** Reads one batch file with all it includes and all overrides; every fault of it is reported in one go. */
export const readBatch = (input: BatchInput): Promise<BatchRead> => new Workshop(input).read(input);
