import type { CsvStyle } from "../csv-style.js";
import type { DrawPlot } from "../plot/draw-plot.js";
import type { Block, Report } from "../report.js";
import type { Paint } from "./paint.js";
import type { RowFormat } from "./row-format.js";
import { text } from "./text.js";

/** How a report is laid out, as far as its format has a choice. */
export interface Layout {
  readonly csv: CsvStyle;
  /** Width of text [columns]. */
  readonly columns: number;
  readonly paint: Paint;
}

/** What a report can be written as, and what writes it; writers are loaded when they are used. */
export interface Format {
  /** Endings of file names that ask for this format. */
  readonly endings: readonly string[];
  /** What only some reports have, and this format shows. */
  readonly needs: "lines" | "picture" | null;
  /** Who chooses what separates cells; null where nothing does. */
  readonly delimiter: "user" | "format" | null;
  /** People read it, so that control characters are shown as escapes; data keep them. */
  readonly forPeople: boolean;
  /** Columns can be chosen; others have keys or a picture. */
  readonly hasColumns: boolean;
  readonly whole: (report: Report, layout: Layout) => Promise<string>;
  /** Writes rows as they come; null where all rows are laid out together. */
  readonly rows: (() => Promise<RowFormat>) | null;
}

/** The writer of plots as text, loaded only where there is one. */
const drawer = async (blocks: readonly Block[]): Promise<DrawPlot | undefined> =>
  blocks.some(({ kind }) => kind === "plot") ? (await import("../plot/text-plot.js")).textPlot : undefined;

const separated = {
  needs: null,
  forPeople: false,
  hasColumns: true,
  whole: async ({ rows }: Report, { csv }: Layout) => (await import("./csv.js")).csv(rows, csv),
  rows: async () => (await import("./csv.js")).csvRows,
} as const;

/** Every format, in the order of the help. */
export const formats = {
  text: {
    endings: ["txt"],
    needs: null,
    delimiter: null,
    forPeople: true,
    hasColumns: true,
    whole: async ({ blocks }, { columns, paint }) => text(blocks, columns, paint, await drawer(blocks)),
    rows: null,
  },
  json: {
    endings: ["json"],
    needs: null,
    delimiter: null,
    forPeople: false,
    hasColumns: false,
    whole: async ({ name, data }) => (await import("./json.js")).json(name, data),
    rows: async () => (await import("./json.js")).jsonRows,
  },
  csv: { ...separated, endings: ["csv"], delimiter: "user" },
  tsv: { ...separated, endings: ["tsv"], delimiter: "format" },
  markdown: {
    endings: ["md", "markdown"],
    needs: null,
    delimiter: null,
    forPeople: true,
    hasColumns: true,
    whole: async ({ blocks }) => (await import("./markdown.js")).markdown(blocks, await drawer(blocks)),
    rows: null,
  },
  ndjson: {
    endings: ["ndjson", "jsonl"],
    needs: "lines",
    delimiter: null,
    forPeople: false,
    hasColumns: false,
    whole: async ({ name, lines }) => (await import("./ndjson.js")).ndjson(name, lines!),
    rows: async () => (await import("./ndjson.js")).ndjsonRows,
  },
  html: {
    endings: ["html", "htm"],
    needs: "picture",
    delimiter: null,
    forPeople: true,
    hasColumns: true,
    whole: async ({ blocks, picture }) => (await import("./html.js")).html(blocks, picture!),
    rows: null,
  },
  svg: {
    endings: ["svg"],
    needs: "picture",
    delimiter: null,
    forPeople: true,
    hasColumns: false,
    whole: async ({ picture }) => (await import("../plot/svg-plot.js")).svgPicture(picture!),
    rows: null,
  },
} as const satisfies Record<string, Format>;

export type FormatName = keyof typeof formats;

/** The format of that name, all of its fields visible. */
export const formatOf = (name: FormatName): Format => formats[name];

/** Formats of a report that has so much beside tables, lines or a picture. */
export const formatsOf = (...has: readonly Format["needs"][]): readonly FormatName[] =>
  (Object.keys(formats) as FormatName[]).filter((name) => {
    const { needs } = formatOf(name);
    return needs === null || has.includes(needs);
  });
