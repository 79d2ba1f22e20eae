import { error } from "../../core/fault.js";
import { type Diagnostic, hasErrors } from "../../diagnostics/diagnostic.js";
import type { CostEntry } from "../../report/cost/entry.js";
import { unplaced } from "../command.js";
import type { Counts } from "./counts.js";
import type { FileCosts } from "./file-costs.js";

/** One file's costs, or why it has none, and its exceeded limits. */
export interface Costed {
  readonly entry?: CostEntry;
  /** To be shown: errors, and warnings where the file is the only one. */
  readonly diagnostics: readonly Diagnostic[];
  readonly bad: boolean;
  /** A line each. */
  readonly exceeded: readonly string[];
}

/** Joins the results of the files in their order; what is left out is counted. `alone`: there is one file. */
export async function* costed(
  files: AsyncIterable<FileCosts>,
  alone: boolean,
  counts: Counts,
): AsyncGenerator<Costed> {
  const saidBefore = new Set<string>();
  let money: { readonly currency: string; readonly file: string } | undefined;

  /** A fault of an included file is reported once, not for every batch. */
  const fresh = (name: string, diagnostics: readonly Diagnostic[]): Diagnostic[] =>
    diagnostics.filter(({ code, message, spans: [span] }) => {
      if (alone || span === undefined || span.file === name) return true;
      const key = JSON.stringify([code, message, span.file, span.line, span.column]);
      return !saidBefore.has(key) && saidBefore.add(key) !== undefined;
    });
  /** A batch in another currency than the first has no place in the table. */
  const otherMoney = (name: string, currency: string | null): Diagnostic[] => {
    if (currency === null) return [];
    money ??= { currency, file: name };
    if (money.currency === currency) return [];
    return [
      unplaced(
        error(
          "mixed-currencies",
          [],
          `${name} is in ${currency}, and ${money.file} is in ${money.currency}: amounts of unlike currencies do not go into one table`,
          "run cost once for each currency",
        ),
      ),
    ];
  };

  for await (const { name, leftOut, currency, entry, diagnostics, warned, exceeded } of files) {
    if (leftOut !== undefined) {
      counts[leftOut]++;
      counts.currency ??= currency ?? null;
      continue;
    }
    const mixed = entry === undefined ? [] : otherMoney(name, entry.currency);
    const found = [...diagnostics, ...mixed];
    const bad = hasErrors(found) || entry === undefined;
    if (mixed.length === 0) {
      for (const code of warned) counts.warnings.set(code, (counts.warnings.get(code) ?? 0) + 1);
      counts.missed += exceeded.length;
    }
    counts.shown += found.filter(({ severity }) => severity !== "error").length;
    counts[bad ? "bad" : "costed"]++;
    yield {
      ...(bad || entry === undefined ? {} : { entry }),
      diagnostics: fresh(name, found),
      bad,
      exceeded: alone || bad ? [] : exceeded.map(({ message, code }) => `${name}: ${message} (${code})`),
    };
  }
}
