import { nearest } from "../../batch-file/issues/nearest.js";
import { keyTable } from "../../batch-file/json-schema/key-table.js";
import { error } from "../../core/fault.js";
import { keysReport } from "../../report/keys/report.js";
import { type Execute, refused } from "../command.js";
import { findKeys, keyNames } from "./find-keys.js";

/** Prints the keys of the batch file, all of them or those that a word names. */
export const execute: Execute = async ({ args, output }) => {
  if (output.set.length > 0)
    return refused(error("usage", ["--set"], "keys reads no batch file, so there is nothing to set"));
  const [word] = args;
  const rows = keyTable();
  const found = word === undefined ? rows : findKeys(rows, word);
  if (found.length > 0) return { diagnostics: [], report: keysReport(found) };
  const near = nearest(word!.split(".").at(-1)!, keyNames(rows));
  return refused(
    error(
      "unknown-key",
      [],
      `no key is named "${word}", and no meaning of a key has it`,
      near === undefined ? "dipwright keys lists all of them" : `did you mean ${near}?`,
    ),
  );
};
