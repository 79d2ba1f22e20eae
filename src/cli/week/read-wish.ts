import { done, type Fault, failed, type Outcome } from "../../core/fault.js";
import { firstYear, isInYears, lastYear } from "../../core/quantity/days.js";
import type { WeekWish } from "../../core/week/week-model.js";
import type { Request } from "../command.js";
import { isDay } from "../is-day.js";
import { optionReader } from "../option-reader.js";
import { usage } from "../usage.js";
import { usualDays, usualHours } from "./usual.js";

/** What the command line asks of a week; the first day is taken from the files where it is not given. */
export type AskedWeek = Omit<WeekWish, "from"> & {
  readonly from?: string;
  /** The day whose run sheet is asked for. */
  readonly sheet?: string;
};

/** Reads the options; every fault of them at once. */
export function readWish(options: Request["options"]): Outcome<AskedWeek> {
  const faults: Fault[] = [];
  const typed = (option: string): string | undefined =>
    options[option.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase())] as string | undefined;
  const [from, sheet] = ["from", "sheet"].map((option) => {
    const day = typed(option);
    if (day !== undefined && !(isDay(day) && isInYears(day)))
      faults.push(
        usage(
          `--${option}`,
          `"${day}" is not a day${isDay(day) ? ` of the years ${firstYear} to ${lastYear}` : ""}`,
          "write year, month and day, such as 2027-04-12",
        ),
      );
    return day;
  });
  if (sheet !== undefined && typed("rows") !== undefined)
    faults.push(usage("--rows", "a run sheet has rows of its own", "leave out --rows or --sheet"));
  const people = typed("people") ?? "1";
  if (people !== "1" && people !== "2")
    faults.push(usage("--people", `"${people}" is neither 1 nor 2`, "write 1 or 2"));
  const days = typed("days") ?? usualDays;
  const weekdays = weekdaysOf(days);
  if (weekdays.length === 0)
    faults.push(usage("--days", `"${days}" does not name days of the week`, "write mon-fri, or mon,wed,fri"));
  const reader = optionReader(typed);
  const bounds = { above: 0, to: 24 * 3600, must: "a day has up to 24 h: write 8 h" };
  const seconds = reader.quantity("hours-a-day", "time", bounds, { suggest: ["h"] });
  faults.push(...reader.faults);
  if (faults.length > 0) return failed(...faults);
  return done({
    people: people === "2" ? 2 : 1,
    weekdays,
    dayMinutes: seconds === undefined ? 60 * usualHours : seconds / 60,
    dayAssumed: seconds === undefined,
    ...(from === undefined ? {} : { from }),
    ...(sheet === undefined ? {} : { sheet }),
  });
}

const fullNames = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

/** Days of "mon-fri" or "mon,wed", 1 for Monday; none where a name is not known. */
function weekdaysOf(text: string): number[] {
  const dayOf = (name: string): number => {
    const written = name.trim().toLowerCase();
    return written.length < 3 ? 0 : fullNames.findIndex((one) => one.startsWith(written)) + 1;
  };
  const found = text.split(",").flatMap((one) => {
    const [first, last, ...more] = one.split("-").map(dayOf) as [number, ...number[]];
    if (more.length > 0) return [0];
    if (last === undefined) return [first];
    if (first === 0 || last === 0) return [0];
    // From friday to monday goes over the week's end.
    return Array.from({ length: ((last - first + 7) % 7) + 1 }, (_, i) => ((first - 1 + i) % 7) + 1);
  });
  return found.includes(0) ? [] : [...new Set(found)].sort((a, b) => a - b);
}
