import type { Batch } from "../../core/model/batch.js";
import { counted } from "../../core/quantity/text/counted.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Report } from "../report.js";

/** A file that was read and what is wrong with it; no batch where that is too much. */
export interface CheckedFile {
  readonly name: string;
  readonly batch?: Batch;
  readonly diagnostics: readonly Diagnostic[];
}

function verdict({ batch, diagnostics }: CheckedFile): string {
  const of = (wanted: Diagnostic["severity"]): number =>
    diagnostics.filter(({ severity }) => severity === wanted).length;
  const found = [
    ...(of("error") > 0 ? [counted(of("error"), "error")] : []),
    ...(of("warning") > 0 ? [counted(of("warning"), "warning")] : []),
  ];
  const holds =
    batch === undefined
      ? []
      : [`${counted(batch.baths.length, "bath")}, ${counted(batch.orders.length, "order")}`];
  return [...holds, found.length === 0 ? "nothing is wrong" : found.join(" and ")].join(": ");
}

const number = (key: string) => ({ key, title: key, digits: String });
const text = (key: string) => ({ key, title: key });

/** What is wrong with batch files: one row a fault. `told`: people have read the faults elsewhere. */
export function checkReport(files: readonly CheckedFile[], told: boolean): Report {
  const table = {
    columns: [
      text("file"),
      number("line"),
      number("column"),
      text("severity"),
      text("code"),
      text("message"),
      text("help"),
    ],
    rows: files.flatMap(({ name, diagnostics }) =>
      diagnostics.map(({ severity, code, message, help, spans: [span] }) => [
        span?.file ?? name,
        span?.line ?? null,
        span?.column ?? null,
        severity,
        code,
        message,
        help ?? null,
      ]),
    ),
  };
  return {
    name: "check",
    data: {
      files: files.map(({ name, batch, diagnostics }) => ({ name, good: batch !== undefined, diagnostics })),
    },
    rows: table,
    blocks: [
      { kind: "list", items: files.map((file) => `${file.name}: ${verdict(file)}`) },
      ...(told || table.rows.length === 0 ? [] : [{ kind: "table", table } as const]),
    ],
  };
}
