import { done, error, failed } from "../../core/fault.js";
import { firstYear, isInYears, lastYear } from "../../core/quantity/days.js";
import { magnitudeFault } from "../../core/quantity/magnitude.js";
import { numberFault, ungrouped } from "../../core/quantity/parse/number-text.js";
import { leaf, type Meaning, notA } from "./leaf.js";

/** A character that moves the cursor or colours a terminal; line ends and tabs are white space. */
const isControl = (character: string): boolean => /\p{Cc}/u.test(character) && !/\s/.test(character);

/** Characters of a text: no control characters but line ends and tabs. */
const printable = "[^\\u0000-\\u0008\\u000e-\\u001f\\u007f-\\u009f]*";
const textPattern = `^(?=[\\s\\S]*\\S)${printable}$`;

/** A text, or a number as a name; line ends and tabs in it become single spaces. */
export const text = (meaning: Meaning) =>
  leaf<string>(
    { type: ["string", "number"], pattern: textPattern, errorMessage: example(meaning) },
    meaning,
    (input) => {
      if (typeof input === "string" && [...input].some(isControl))
        return failed(
          error(
            "control-character",
            [],
            "the text contains a control character",
            "write letters, digits and signs only",
          ),
        );
      return (typeof input === "string" && input.trim() !== "") || typeof input === "number"
        ? done(
            String(input)
              .trim()
              .replace(/ *[^\S ]\s*/g, " "),
          )
        : failed(
            error(
              "wrong-type",
              [],
              notA("a text", typeof input === "string" ? undefined : input),
              example(meaning),
            ),
          );
    },
  );

const example = (meaning: Meaning): string => `write a text such as ${meaning.examples?.[0] ?? "name"}`;

/** The limits of a number. */
export interface Range {
  readonly above?: number;
  readonly from?: number;
  readonly to?: number;
}

const within = (value: number, { above, from, to }: Range): boolean =>
  value > (above ?? Number.NEGATIVE_INFINITY) && value >= (from ?? value) && value <= (to ?? value);

/** "above 0 and up to 50" */
const rangeSaid = ({ above, from, to }: Range): string =>
  [
    ...(above === undefined ? [] : [`above ${above}`]),
    ...(from === undefined ? [] : [`from ${from}`]),
    ...(to === undefined ? [] : [`up to ${to}`]),
  ].join(" and ");

/** A number without a unit, within a range. */
export const number = (meaning: Meaning, range: Range) => {
  const help = `write a number ${rangeSaid(range)}, such as ${meaning.examples?.[0] ?? 1}`;
  const { above: exclusiveMinimum, from: minimum, to: maximum } = range;
  const rules = { exclusiveMinimum, minimum, maximum };
  return leaf<number>({ type: "number", ...rules, errorMessage: help }, meaning, (input) => {
    const comma = typeof input === "string" ? numberFault(input, []) : undefined;
    if (comma?.code === "decimal-comma") return failed(comma);
    if (typeof input !== "number" || !Number.isFinite(input))
      return failed(error("wrong-type", [], notA("a plain number", input), help));
    const size = magnitudeFault(input, [], help);
    if (size !== undefined) return failed(size);
    return within(input, range)
      ? done(input)
      : failed(error("out-of-range", [], `${input} is out of range`, help));
  });
};

/** What to write in place of a text that begins with a whole number, such as "1,200 pcs". */
function countHelp(input: unknown): string | undefined {
  const number =
    typeof input === "string" ? /^\s*\d[\d.,'’_ \u00a0\u202f]*/.exec(input)?.[0].trim() : undefined;
  if (number === undefined) return undefined;
  const whole = ungrouped(number) ?? ungrouped(number.replaceAll(".", ","));
  if (whole !== undefined) return `do not separate thousands: write ${whole}`;
  return /^\d+$/.test(number) ? `write the number alone: ${Number(number)}` : undefined;
}

/** A count of things: a whole number from `least`, up to `most` if there is a limit. */
export const count = (meaning: Meaning, { least = 1, most }: { least?: number; most?: number } = {}) => {
  const range = most === undefined ? `from ${least}` : `from ${least} to ${most}`;
  const help = `write a whole number${most === undefined ? "" : ` ${range},`} such as ${meaning.examples?.[0] ?? 12}`;
  const rules = { type: "integer", minimum: least, ...(most === undefined ? {} : { maximum: most }) };
  return leaf<number>({ ...rules, errorMessage: help }, meaning, (input) =>
    typeof input === "number" && Number.isSafeInteger(input) && input >= least && input <= (most ?? input)
      ? done(input)
      : failed(
          error(
            typeof input === "number" ? "out-of-range" : "wrong-type",
            [],
            typeof input === "number"
              ? `this is ${input}, not a whole number ${range}`
              : notA(`a whole number ${range}`, input),
            countHelp(input) ?? help,
          ),
        ),
  );
};

const daysIn = (year: number, month: number): number =>
  month === 2
    ? year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
      ? 29
      : 28
    : [4, 6, 9, 11].includes(month)
      ? 30
      : 31;

const dateForm = {
  type: "string",
  pattern: "^\\s*(?:19|2\\d)\\d\\d-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])\\s*$",
  errorMessage: "write year, month and day, such as 2027-04-16",
};

const outsideYears = `the year is not from ${firstYear} to ${lastYear}`;

/** A calendar day, ISO 8601. */
export const date = (meaning: Meaning) =>
  leaf<string>(dateForm, meaning, (input) => {
    const parts = typeof input === "string" ? /^(\d{4})-(\d\d)-(\d\d)$/.exec(input.trim()) : null;
    const [year, month, day] =
      parts === null ? [0, 0, 0] : [Number(parts[1]), Number(parts[2]), Number(parts[3])];
    if (parts === null) return failed(error("date", [], "this is not a date", dateForm.errorMessage));
    if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month))
      return failed(error("date", [], "this day does not exist", dateForm.errorMessage));
    if (!isInYears(parts[0])) return failed(error("date", [], outsideYears, dateForm.errorMessage));
    return done(parts[0]);
  });

const timeForm = {
  type: "string",
  pattern: "^\\s*(?:[01]?\\d|2[0-3]):[0-5]\\d\\s*$",
  errorMessage: "write hours and minutes, such as 08:00 or 13:30",
};

/** A time of day; the value is in minutes after midnight. */
export const timeOfDay = (meaning: Meaning) =>
  leaf<number>(timeForm, meaning, (input) => {
    const parts = typeof input === "string" ? /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(input.trim()) : null;
    return parts === null
      ? failed(error("time-of-day", [], "this is not a time of day", timeForm.errorMessage))
      : done(Number(parts[1]) * 60 + Number(parts[2]));
  });
