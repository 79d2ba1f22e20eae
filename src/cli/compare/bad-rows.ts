import { error, type Fault } from "../../core/fault.js";
import { counted } from "../../core/quantity/text/counted.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { unplaced } from "../command.js";
import { mostShown } from "../csv/most-shown.js";

/** The faults of each bad row in one, with what to write instead. */
export function faultByRow(faults: readonly Fault[]): Fault[] {
  const rows = new Map<unknown, Fault[]>();
  for (const fault of faults) {
    const [, row] = fault.path;
    const found = rows.get(row);
    if (found === undefined) rows.set(row, [fault]);
    else found.push(fault);
  }
  return [...rows.values()].map(([first, ...more]) => {
    const { help, ...fault } = first!;
    const others = more.length === 0 ? "" : ` (and ${more.length} more in this row)`;
    return { ...fault, message: `${fault.message}${help === undefined ? "" : `; ${help}`}${others}` };
  });
}

/** How many bad rows are not shown, where there are any. */
export function notShown(file: string, unread: number): readonly Diagnostic[] {
  const more = unread - mostShown;
  if (more <= 0) return [];
  const said = `${counted(more, "more row")} ${more === 1 ? "is" : "are"} not shown`;
  return [{ ...unplaced(error("pairs-more", [file], said)), oneLine: true }];
}
