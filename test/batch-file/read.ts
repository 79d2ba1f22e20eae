import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { BatchRead } from "../../src/batch-file/batch-read.js";
import { type BatchInput, readBatch } from "../../src/batch-file/read-batch.js";
import { reflectanceReader } from "../../src/batch-file/resources/reflectance.js";

const root = new URL("../../", import.meta.url).pathname;
export const readFile = (name: string): string => readFileSync(join(root, name), "utf8");

export const readBytes = (name: string): Uint8Array => readFileSync(join(root, name));

/** Reads a file of fixtures/good. */
export const readGood = (name: string, more: Partial<BatchInput> = {}): Promise<BatchRead> => {
  const path = `fixtures/good/${name}`;
  const reflectance = reflectanceReader(readFile);
  return readBatch({ name: path, text: readFile(path), readFile, reflectance, ...more });
};

/** Reads a text as if it were the file batch.yaml. */
export const readText = (text: string, more: Partial<BatchInput> = {}): Promise<BatchRead> =>
  readBatch({ name: "batch.yaml", text, readFile, ...more });
