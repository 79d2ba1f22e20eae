import { batchJsonSchema } from "../../batch-file/json-schema/batch-json-schema.js";
import { error } from "../../core/fault.js";
import { type Execute, refused } from "../command.js";

/** The JSON Schema as a file takes it: the same in both formats. */
export const schemaText = (): string => `${JSON.stringify(batchJsonSchema(), null, 2)}\n`;

/** Prints the JSON Schema of the batch file. */
export const execute: Execute = async ({ output }) =>
  output.set.length > 0
    ? refused(error("usage", ["--set"], "schema reads no batch file, so there is nothing to set"))
    : { diagnostics: [], report: schemaText() };
