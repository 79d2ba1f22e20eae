import { ownUnit } from "../../core/quantity/convert.js";
import { type KindName, kindOf, kinds } from "../../core/quantity/kinds.js";
import { parseDilution } from "../../core/quantity/parse/parse-dilution.js";
import { type Measure, measureIn, parseMeasure } from "../../core/quantity/parse/parse-measure.js";
import type { Cell, Column } from "../table.js";

/** A key that varies. */
export interface VariedKey {
  readonly key: string;
  /** What the key is made of, as written. */
  readonly names: readonly string[];
  readonly values: readonly string[];
}

/** The column of a varied key in a table for spreadsheets, and the cell of each value. */
export interface KeyColumn {
  readonly column: Column;
  readonly cells: ReadonlyMap<string, Cell>;
}

/** Numbers of the values that are quantities, all in one unit. */
interface Numbers {
  readonly unit: string;
  readonly of: ReadonlyMap<string, number>;
}

const plainNumber = /^\s*[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?\s*$/i;

/** Text that a spreadsheet takes for a time or a date: 1:9, 1/9, 1-9, 1.2.3. */
const timeOrDate = /^\s*\d+(?:(?:[:/-]\d+)+|(?:\.\d+){2,})\s*$/;

/** Free of the last bits of arithmetic. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/** Each value that can be read, and what it reads as. */
function readEach<T>(
  values: readonly string[],
  read: (text: string) => T | undefined,
): ReadonlyMap<string, T> {
  return new Map(
    values.flatMap((text) => {
      const value = read(text);
      return value === undefined ? [] : [[text, value] as const];
    }),
  );
}

/** Values of one kind: in the unit that they are written in, or in the kind's own where they have several. */
function quantities(name: KindName, values: readonly string[]): Numbers {
  const kind = kindOf(name);
  const measures = readEach(values, (text) => {
    const measure = parseMeasure(kind, text, [], String);
    return measure.ok ? measure.value : undefined;
  });
  const symbolOf = ({ terms }: Measure): string =>
    terms.length === 1 ? terms[0]!.unit.symbol : kind.canonical;
  const symbols = new Set([...measures.values()].map(symbolOf));
  const [unit = kind.canonical] = symbols.size === 1 ? symbols : [];
  const own = ownUnit(kind, unit);
  return { unit, of: new Map([...measures].map(([text, measure]) => [text, tidy(measureIn(measure, own))])) };
}

/** Dilutions as the dye's share of the bath, powders in g/L. */
function dilutions(values: readonly string[]): Numbers[] {
  const read = readEach(values, (text) => {
    const dilution = parseDilution(text);
    return dilution.ok && dilution.value.plusMinus === undefined ? dilution.value : undefined;
  });
  const among = (wanted: "liquid" | "powder", factor: number): ReadonlyMap<string, number> =>
    new Map(
      [...read].flatMap(([text, { kind, value }]) =>
        kind === wanted ? [[text, tidy(value * factor)] as const] : [],
      ),
    );
  return [
    { unit: "%", of: among("liquid", 100) },
    { unit: "g/L", of: among("powder", 1) },
  ];
}

/** What most of the values can be read as. */
function numbersOf({ names, values }: VariedKey): Numbers {
  const plain = {
    unit: "",
    of: readEach(values, (text) => (plainNumber.test(text) ? Number(text) : undefined)),
  };
  const read =
    names.at(-1) === "dilution"
      ? dilutions(values)
      : (Object.keys(kinds) as KindName[]).map((kind) => quantities(kind, values));
  return [plain, ...read].reduce((most, one) => (one.of.size > most.of.size ? one : most));
}

/** A unit at the end of a column's name: "_mL_per_dm2", "_C", "_percent". */
const unitInName = (unit: string): string =>
  unit === ""
    ? ""
    : `_${unit.replace("%", "percent").replace("°", "").replace(/^\//, "per_").replace("/", "_per_").replaceAll(" ", "_")}`;

/**
 * The values of a key for a spreadsheet: numbers, their unit in the name of the column, where they are quantities or
 * dilutions, so that a chart can use them. Others stay text, behind an apostrophe where it would become a time or a date.
 */
export function keyColumn(varied: VariedKey): KeyColumn {
  const { unit, of } = numbersOf(varied);
  // A number without its unit would pass for one in the unit of the column.
  const misread = (text: string): boolean => timeOrDate.test(text) || plainNumber.test(text);
  const cell = (text: string): Cell => of.get(text) ?? (misread(text) ? `'${text}` : text);
  return {
    column: { key: `${varied.key}${unitInName(unit)}`, title: varied.key },
    cells: new Map(varied.values.map((text) => [text, cell(text)])),
  };
}
