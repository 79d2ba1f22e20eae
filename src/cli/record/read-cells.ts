import { parseColour } from "../../core/colour/screen/parse-colour.js";
import { error, type Fault } from "../../core/fault.js";
import { parseQuantity } from "../../core/quantity/parse/parse-quantity.js";
import { type LocalTime, localTime, parseLocalTime } from "../../log/row/local-time.js";
import type { LogValues } from "../../log/row/log-values.js";
import { usage } from "../usage.js";
import { type CellOption, cellOptions } from "./cells.js";

/** The time on this computer's clock. */
export const localNow = (now: Date): LocalTime =>
  localTime(
    now.getFullYear(),
    now.getMonth() + 1,
    now.getDate(),
    now.getHours(),
    now.getMinutes(),
    now.getSeconds(),
  )!;

function timeCell(typed: string, now: Date): LocalTime | Fault {
  const clock = /^\s*(\d\d?):(\d\d)(?::(\d\d))?\s*$/.exec(typed);
  const time =
    clock === null
      ? parseLocalTime(typed)
      : localTime(
          now.getFullYear(),
          now.getMonth() + 1,
          now.getDate(),
          Number(clock[1]),
          Number(clock[2]),
          Number(clock[3] ?? 0),
        );
  return time ?? usage("--time", `"${typed}" is not a time`, "write 2027-04-16T09:30, or 09:30 of today");
}

/** A dip as the run sheet has it: minutes and seconds. */
const sheetTime = /^\s*(\d{1,3}):([0-5]\d)\s*$/;

const bareNumber = /^\s*-?(?:\d+(?:\.\d*)?|\.\d+)\s*$/;

function quantityCell(option: CellOption & { readonly fills: "quantity" }, typed: string): number | Fault {
  if (option.bare === true && bareNumber.test(typed)) return Number(typed);
  const [, minutes, seconds] = (option.column === "seconds" && sheetTime.exec(typed)) || [];
  if (minutes !== undefined) return 60 * Number(minutes) + Number(seconds);
  const path = [`--${option.name}`];
  const read = parseQuantity(option.kind, typed, { unit: option.unit, path, suggest: [option.unit] });
  if (!read.ok) return read.faults[0]!;
  return read.value.plusMinus === undefined
    ? read.value.value
    : error("half-width-form", path, "no ± is taken here", "write the value alone");
}

/** What was added: a volume of a liquid dye or a mass of a powder. */
function concentrateCells(typed: string): LogValues | Fault {
  const mass = parseQuantity("mass", typed, { path: ["--concentrate"] });
  if (mass.ok) return { concentrateG: mass.value.value };
  const volume = parseQuantity("volume", typed, { unit: "mL", path: ["--concentrate"], suggest: ["mL"] });
  if (volume.ok) return { concentrateMl: volume.value.value };
  const { help: _help, ...fault } = volume.faults[0]!;
  return { ...fault, help: "write 60 mL of a liquid dye, or 12 g of a powder" };
}

function cellsOf(option: CellOption, typed: string, now: Date): LogValues | Fault {
  const flag = `--${option.name}`;
  switch (option.fills) {
    case "time": {
      const time = timeCell(typed, now);
      return "code" in time ? time : { time };
    }
    case "text": {
      const said = typed.trim();
      if (said === "") return usage(flag, "nothing is written", `write ${option.flags}, or leave it out`);
      // A row of the log is one line, so that what a crash left of one can be told.
      return /[\r\n]/.test(said)
        ? usage(flag, "the text has several lines", "write it on one line")
        : { [option.column]: said };
    }
    case "number":
      return /^\s*\d+\s*$/.test(typed)
        ? { [option.column]: Number(typed) }
        : usage(flag, `"${typed}" is not a count`, "write a whole number such as 24");
    case "quantity": {
      const value = quantityCell(option, typed);
      return typeof value === "number" ? { [option.column]: value } : value;
    }
    case "concentrate":
      return concentrateCells(typed);
    case "colour": {
      const colour = parseColour(typed);
      if (!colour.ok) return { ...colour.faults[0]!, path: [flag] };
      if (colour.value.kind !== "lab")
        return usage(flag, "a reading is CIELAB, not a screen colour", "write L,a,b: 73.1,33.4,16.0");
      const [L, a, b] = colour.value.lab;
      return { L, a, b };
    }
  }
}

/** The cells that options fill, and every fault of them. */
export function readCells(
  typed: (option: string) => string | undefined,
  now: Date,
): { readonly values: LogValues; readonly faults: readonly Fault[] } {
  let values: LogValues = {};
  const faults: Fault[] = [];
  for (const option of cellOptions) {
    const text = typed(option.name);
    if (text === undefined) continue;
    const cells = cellsOf(option, text, now);
    if ("code" in cells) faults.push(cells as Fault);
    else values = { ...values, ...cells };
  }
  return { values, faults };
}
