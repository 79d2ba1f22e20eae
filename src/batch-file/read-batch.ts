import type { BatchRead } from "./batch-read.js";
import type { BatchText } from "./batch-text.js";
import { Workshop, type WorkshopReaders } from "./workshop.js";

/** A batch file, and the readers of the files that it names. */
export interface BatchInput extends BatchText, WorkshopReaders {}

/** Reads one batch file with its includes and overrides, and reports all its faults at once. */
export const readBatch = (input: BatchInput): Promise<BatchRead> => new Workshop(input).read(input);
