import { mapped } from "../../core/mapped.js";
import type { JsonRecord } from "../row-report.js";
import type { RowFormat } from "./row-format.js";

/** What names the form of a report in its JSON. */
export const schemaName = (name: string): string => `dipwright/${name}@1`;

/**
 * A report's data as JSON, numbers unrounded, keys in the order given, `schema` first. A number that is not
 * finite is a defect of ours and thrown, since JSON would turn it into null in silence.
 */
export function json(name: string, data: JsonRecord): string {
  const checked = (key: string, value: unknown): unknown => {
    if (typeof value === "number" && !Number.isFinite(value))
      throw new Error(`${name}: ${key} is ${value}, which JSON cannot hold`);
    return value instanceof Map ? Object.fromEntries(value) : value;
  };
  return `${JSON.stringify({ schema: schemaName(name), ...data }, checked, 2)}\n`;
}

/** Throws where data without Maps hold a number that is not finite: faster than looking at each while it is written. */
function onlyFinite(name: string, data: unknown, key = ""): void {
  if (typeof data === "number") {
    if (!Number.isFinite(data)) throw new Error(`${name}: ${key} is ${data}, which JSON cannot hold`);
  } else if (Array.isArray(data)) for (const one of data) onlyFinite(name, one, key);
  else if (typeof data === "object" && data !== null)
    for (const own of Object.keys(data)) onlyFinite(name, (data as Record<string, unknown>)[own], own);
}

/** Data without Maps on one line. */
export function jsonLine(name: string, data: unknown): string {
  onlyFinite(name, data);
  return JSON.stringify(data);
}

/**
 * One JSON object with a line a row. What the report lists after the rows is kept until then as the bytes it will be
 * written in.
 */
export const jsonRows: RowFormat = {
  headed: true,
  besideRows: true,
  open: ({ name, head, list, records, also }) => {
    const kept: Uint8Array[] = [];
    let count = 0;
    const utf8 = new TextEncoder();
    const fields = (record: JsonRecord): string[] =>
      Object.entries(record).map(([key, value]) => `  ${JSON.stringify(key)}: ${jsonLine(name, value)}`);
    const listed = (line: string, first: boolean): string => `${first ? "\n" : ",\n"}    ${line}`;
    const closed = (length: number): string => `${length === 0 ? "" : "\n  "}]`;
    return {
      head: () => `{\n${fields({ schema: schemaName(name), ...head }).join(",\n")},\n  "${list}": [`,
      rows: (some) => {
        if (also !== undefined) kept.push(utf8.encode(jsonLine(name, also.record(some))));
        return mapped(records(some), (record) => listed(jsonLine(name, record), count++ === 0)).join("");
      },
      *tail(end) {
        const text = new TextDecoder();
        yield closed(count);
        if (also !== undefined) {
          yield `,\n  "${also.list}": [`;
          for (const [i, record] of kept.entries()) yield listed(text.decode(record), i === 0);
          yield closed(kept.length);
        }
        yield `,\n${fields(end).join(",\n")}\n}\n`;
      },
    };
  },
};
