import { done, error, type Fault, failed, isError, type Outcome, warning } from "../../core/fault.js";
import { type ColumnName, columnNames, columnOf, type NumberRange, neededColumns } from "./columns.js";
import { anyEvent, type EventName, type LogEvent, logEvents, parseEvent, writtenEvents } from "./events.js";
import { settleCounts } from "./inspect-loads.js";
import type { Inspection, LogRow } from "./log-row.js";
import type { LogValues } from "./log-values.js";

const either = (names: readonly string[]): string => names.join(", ").replace(/, (?=[^,]*$)/, " or ");

const inRange = (value: number, { above, from, to, whole }: NumberRange): boolean =>
  !(above !== undefined && value <= above) &&
  !(from !== undefined && value < from) &&
  !(to !== undefined && value > to) &&
  !(whole === true && !Number.isInteger(value));

function rangeInWords({ above, from, to, whole }: NumberRange): string {
  const number = whole === true ? "a whole number" : "a number";
  if (above !== undefined) return `${number} above ${above}`;
  return to === undefined ? `${number} of ${from} or more` : `${number} from ${from} to ${to}`;
}

/** Numbers that no bath or colorimeter shows. */
const rangeFaults = (values: LogValues): Fault[] =>
  columnNames.flatMap((name) => {
    const { range } = columnOf(name);
    const value = values[name];
    return range === undefined || typeof value !== "number" || inRange(value, range)
      ? []
      : [error("log-range", [name], `${value} is out of range`, `write ${rangeInWords(range)}`)];
  });

const filled = (values: LogValues, names: readonly ColumnName[]): ColumnName[] =>
  names.filter((name) => values[name] !== undefined);

/** What the event needs and the row lacks. */
function lacking(event: EventName, values: LogValues): Fault[] {
  const { needs }: LogEvent = logEvents[event];
  const faults = needs
    .filter((names) => filled(values, names).length === 0)
    .map((names) =>
      error(
        "log-needs",
        [names[0]!],
        `a ${event === "bare" ? "bare part" : `${event} row`} needs ${either(names)}`,
      ),
    );
  const reading = filled(values, ["L", "a", "b"]);
  if (reading.length > 0 && reading.length < 3) {
    const missing = (["L", "a", "b"] as const).filter((name) => values[name] === undefined);
    faults.push(error("log-needs", [missing[0]!], "a colour needs L, a and b"));
  }
  return faults;
}

/** Cells that say nothing in a row of this event. */
function unused(event: EventName, values: LogValues): Fault[] {
  const { needs, takes }: LogEvent = logEvents[event];
  const known = new Set([...anyEvent, ...needs.flat(), ...takes]);
  return filled(values, columnNames)
    .filter((name) => !known.has(name))
    .map((name) =>
      warning(
        "log-unused",
        [name],
        `${name} is not used in a ${event} row`,
        "leave it out, or change the event",
      ),
    );
}

/** The row without the cells that its event does not use, L, a and b as one colour. */
function rowOf(event: EventName, values: LogValues, unusedNames: ReadonlySet<unknown>): LogRow {
  const { L, a, b, seconds, ...others } = values;
  const kept = Object.entries(others).filter(
    ([name, value]) => value !== undefined && !unusedNames.has(name) && name !== "event",
  );
  // `lacking` found nothing: all that this event's row must have is there.
  return {
    ...Object.fromEntries(kept),
    event,
    ...(L === undefined || unusedNames.has("L") ? {} : { lab: [L, a, b] }),
    ...(seconds === undefined || event !== "load" ? {} : { seconds }),
  } as unknown as LogRow;
}

/**
 * One event from the cells that are filled in. A fault's path is the column at fault; whoever read the cells knows how
 * to fill it in.
 */
export function checkRow(values: LogValues): Outcome<LogRow> {
  const missing = neededColumns.filter((name) => values[name] === undefined);
  const written = values.event === undefined ? undefined : parseEvent(values.event);
  const faults: Fault[] = missing.map((name) => error("log-needs", [name], `a row needs its ${name}`));
  if (values.event !== undefined && written === undefined)
    faults.push(
      error("log-event", ["event"], `"${values.event}" is not an event`, `write ${either(writtenEvents)}`),
    );
  faults.push(...rangeFaults(values));
  if (written === undefined) return failed(...faults);
  const bare = values.seconds === 0 && (written === "load" || written === "measured");
  const event = bare ? "bare" : written;
  faults.push(...lacking(event, values));
  if (values.concentrateMl !== undefined && values.concentrateG !== undefined)
    faults.push(
      error(
        "log-two-amounts",
        ["concentrateG"],
        "a dye is a liquid or a powder, not both",
        "give concentrateMl or concentrateG",
      ),
    );
  const idle = unused(event, values);
  if (faults.some(isError)) return failed(...faults, ...idle);
  const row = rowOf(event, values, new Set(idle.flatMap(({ path }) => path)));
  if (row.event !== "load") return done(row, idle);
  const settled = settleCounts(row.parts, row satisfies Inspection);
  return settled.ok ? done({ ...row, ...settled.value }, idle) : failed(...settled.faults, ...idle);
}
