import { largestModel, modelReader, type ReadModel } from "../../batch-file/resources/model-reader.js";
import type { Io } from "../io.js";

const readers = new WeakMap<Io, ReadModel>();

/** The reader of model files of a run: a file that several parts or batches name is read once. */
export function modelsOf(io: Io): ReadModel {
  const known = readers.get(io) ?? modelReader((file) => io.readFile(file, largestModel + 1));
  readers.set(io, known);
  return known;
}
