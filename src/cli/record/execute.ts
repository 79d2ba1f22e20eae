import { error, type Fault, isError, type Outcome } from "../../core/fault.js";
import type { PlannedRow } from "../../log/append/planned-rows.js";
import { checkRow } from "../../log/row/check-row.js";
import type { LogRow } from "../../log/row/log-row.js";
import type { LogValues } from "../../log/row/log-values.js";
import { type Execute, type Request, type Result, refused, unplaced } from "../command.js";
import type { Io } from "../io.js";
import { usage } from "../usage.js";
import { appendRows } from "./append-rows.js";
import { cellOptions } from "./cells.js";
import { localNow, readCells } from "./read-cells.js";
import { ofOption } from "./row-faults.js";

/** The name under which commander keeps an option. */
const camelCase = (name: string): string =>
  name.replace(/-(\w)/g, (_dash, letter: string) => letter.toUpperCase());

const typedIn =
  ({ options }: Request) =>
  (name: string): string | undefined =>
    options[camelCase(name)] as string | undefined;

/** In a log that is read an unused cell is a warning; here it is a slip that can be mended at once. */
const strictly = ({ faults }: Outcome<LogRow>): readonly Fault[] =>
  faults.map((fault) => ({ ...ofOption(fault), severity: "error" as const }));

/** Appends one row; what was typed wins over what is planned. */
async function one(path: string, planned: LogValues, request: Request, io: Io): Promise<Result> {
  const now = io.now();
  const cells = readCells(typedIn(request), now);
  const values: LogValues = { time: localNow(now), ...planned, ...cells.values };
  const checked = checkRow(values);
  // A cell that could not be read is not missing.
  if (cells.faults.length > 0)
    return refused(...cells.faults, ...strictly(checked).filter(({ code }) => code !== "log-needs"));
  if (!checked.ok || checked.faults.length > 0) return refused(...strictly(checked));
  return appendRows(path, [{ values, planned, row: checked.value }], request, io);
}

/** Appends the row of a plan that was done now, or all of its rows to be confirmed. */
async function planned(path: string, spec: string, request: Request, io: Io): Promise<Result> {
  const typed = typedIn(request);
  const number = typed("load");
  if (number !== undefined && !/^(0|[1-9]\d{0,4})$/.test(number))
    return refused(usage("--load", `"${number}" is not a load`, "write its number on the run sheet, from 1"));
  const { plannedDay, pickRow, mixNotFollowed } = await import("./from-spec.js");
  const { rows, mixes, diagnostics } = await plannedDay(spec, path, request, io);
  const warned = async (result: Promise<Result>, of: readonly PlannedRow[]): Promise<Result> => {
    const { diagnostics: found = [], ...rest } = await result;
    if (found.some(isError)) return { ...rest, diagnostics: found };
    return { ...rest, diagnostics: [...found, ...mixNotFollowed(of, mixes).map(unplaced)] };
  };
  if (rows === undefined) return { diagnostics };
  const event = typed("event") ?? (number === undefined ? undefined : "load");
  if (event === undefined) {
    const given = cellOptions.find(({ name }) => typed(name) !== undefined);
    return given === undefined
      ? warned(
          appendRows(
            path,
            rows.map(({ values }) => ({ values, planned: values })),
            request,
            io,
          ),
          rows,
        )
      : refused(
          usage(
            `--${given.name}`,
            "all rows of the plan are written",
            "add --load or --event for one of them",
          ),
        );
  }
  const load = number === undefined ? undefined : Number(number);
  const row = pickRow(rows, { event, bath: typed("bath"), load });
  return row.ok ? warned(one(path, row.value.values, request, io), [row.value]) : refused(...row.faults);
}

/** Appends one event to the bath log, or the rows of a plan. */
export const execute: Execute = async (request, io) => {
  const path = request.args[0] ?? "";
  if (path === "" || path === "-")
    return refused(error("usage", ["LOG"], "a log is a file", "write dipwright record baths.csv"));
  const spec = typedIn(request)("from");
  if (spec !== undefined) return planned(path, spec, request, io);
  const idle =
    request.output.set.length > 0 ? "--set" : request.options.load === undefined ? undefined : "--load";
  if (idle !== undefined)
    return refused(usage(idle, "no batch file is read without --from", "add --from FILE, or leave it out"));
  return one(path, {}, request, io);
};
