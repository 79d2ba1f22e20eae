/** What a number in a column must keep to; `above` is excluded, the others included. */
export interface NumberRange {
  readonly above?: number;
  readonly from?: number;
  readonly to?: number;
  readonly whole?: true;
}

/** A column of the log. */
export interface LogColumn {
  readonly kind: "time" | "text" | "number";
  readonly meaning: string;
  readonly range?: NumberRange;
}

const text = (meaning: string) => ({ kind: "text", meaning }) as const;
const number = (meaning: string, range: NumberRange) => ({ kind: "number", meaning, range }) as const;

/** Every column that the log knows, in the order of a new log; other columns are kept and not looked at. */
export const logColumns = {
  time: {
    kind: "time",
    meaning: "when, by the clock on the wall: 2027-04-16T09:30; empty: planned, not done",
  },
  bath: text("the tank's name"),
  event: text("made-up, load, top-up, dump or measured"),
  dye: text("the dye in the bath"),
  part: text("the part that was dipped"),
  shade: text("the shade that was wanted"),
  base: text("the base that the parts are made of"),
  parts: number("parts in the load, good and rejected", { from: 1, whole: true }),
  seconds: number("the dip as timed, without draining; 0: a bare part", { from: 0, to: 86_400 }),
  celsius: number("the bath just before the parts go in [°C]", { from: 0, to: 100 }),
  volumeL: number("hot level after the event [L]", { above: 0 }),
  concentrateMl: number("liquid dye that was added [mL]", { from: 0 }),
  concentrateG: number("powder dye that was added [g]", { from: 0 }),
  waterMl: number("water that was added, cold [mL]", { from: 0 }),
  L: number("CIELAB of one dried part, under the dye's reading", { from: 0, to: 100 }),
  a: number("the same", { from: -200, to: 200 }),
  b: number("the same", { from: -200, to: 200 }),
  good: number("parts that passed; empty: not inspected", { from: 0, whole: true }),
  rejected: number("parts that failed; empty: not inspected", { from: 0, whole: true }),
  powderLot: text("lot of the powder that the parts are made of"),
  dyeLot: text("lot of the dye"),
  note: text("anything"),
} as const satisfies Record<string, LogColumn>;

export type ColumnName = keyof typeof logColumns;
export const columnNames = Object.keys(logColumns) as readonly ColumnName[];
export const columnOf = (name: ColumnName): LogColumn => logColumns[name];

/** Columns that a log must have; every other one may be left out. */
export const neededColumns = ["time", "bath", "event"] as const satisfies readonly ColumnName[];
