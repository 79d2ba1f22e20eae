import type { KindName } from "../../core/quantity/kinds.js";
import type { NumericColumn, TextColumn } from "../../log/row/log-values.js";
import type { OptionDeclaration } from "../command.js";

interface Declared extends OptionDeclaration {
  /** Long name, without dashes. */
  readonly name: string;
}

/** An option that fills cells. */
export type CellOption = Declared &
  (
    | { readonly fills: "time" | "colour" | "concentrate" }
    | { readonly fills: "text"; readonly column: TextColumn }
    | { readonly fills: "number"; readonly column: NumericColumn }
    | {
        readonly fills: "quantity";
        readonly column: NumericColumn;
        readonly kind: KindName;
        readonly unit: string;
        /** The option's name says the unit of a bare number. */
        readonly bare?: true;
      }
  );

const text = (name: string, column: TextColumn, argument: string, description: string): CellOption => ({
  name,
  flags: `--${name} <${argument}>`,
  description,
  fills: "text",
  column,
});
const count = (column: NumericColumn, description: string): CellOption => ({
  name: column,
  flags: `--${column} <count>`,
  description,
  fills: "number",
  column,
});
const quantity = (
  name: string,
  column: NumericColumn,
  [kind, unit]: readonly [KindName, string],
  description: string,
  bare = false,
): CellOption => ({
  name,
  flags: `--${name} <${kind === "volume" ? "volume" : kind}>`,
  description,
  fills: "quantity",
  column,
  kind,
  unit,
  ...(bare ? { bare } : {}),
});

/** Every option that fills cells of the row, in the order of the help. */
export const cellOptions: readonly CellOption[] = [
  {
    name: "time",
    flags: "--time <time>",
    description: "2027-04-16T09:30, or 09:30 of today; default now",
    fills: "time",
  },
  text("bath", "bath", "tank", "the tank's name"),
  {
    ...text("event", "event", "name", "what happened"),
    choices: ["made-up", "load", "top-up", "dump", "measured"],
  },
  text("dye", "dye", "name", "dye of a bath that is made up"),
  text("part", "part", "name", "part that was dipped"),
  text("shade", "shade", "name", "shade that was wanted"),
  text("base", "base", "name", "base of the parts"),
  count("parts", "parts in the load"),
  quantity(
    "seconds",
    "seconds",
    ["time", "s"],
    "the dip as timed, without draining: 31, 1:05 or '1 min 5 s'",
    true,
  ),
  quantity(
    "celsius",
    "celsius",
    ["temperature", "°C"],
    "bath just before the parts go in: 79.5 or '175 F'",
    true,
  ),
  quantity("volume", "volumeL", ["volume", "L"], "hot level after the event: 5.6L"),
  {
    name: "concentrate",
    flags: "--concentrate <amount>",
    description: "dye that was added: 60mL, or 12g of a powder",
    fills: "concentrate",
  },
  quantity("water", "waterMl", ["volume", "mL"], "water that was added, cold: 140mL"),
  {
    name: "lab",
    flags: "--lab <L,a,b>",
    description: "colour of one dried part, under the dye's reading",
    fills: "colour",
  },
  count("good", "parts that passed"),
  count("rejected", "parts that failed"),
  text("powder-lot", "powderLot", "lot", "lot of the powder that the parts are made of"),
  text("dye-lot", "dyeLot", "lot", "lot of the dye"),
  text("note", "note", "text", "anything, on one line"),
];

const nameFor = (column: string): string => {
  if (["L", "a", "b"].includes(column)) return "lab";
  return column === "time" ? "time" : "concentrate";
};

const optionFor = (column: string): CellOption =>
  cellOptions.find((option) => "column" in option && option.column === column) ??
  cellOptions.find(({ name }) => name === nameFor(column))!;

/** The option that fills a column. */
export const optionOf = (column: string): string => `--${optionFor(column).name}`;

/** The option that fills a column, and what it takes: "--bath, the tank's name". */
export function optionSaid(column: string): string {
  const { name, description, choices } = optionFor(column);
  return `--${name}, ${choices === undefined ? description : `one of ${choices.join(", ")}`}`;
}
