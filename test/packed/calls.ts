import { streams } from "./inputs.js";

/** A way to call a command: what it reads, and its arguments after the name. */
export interface Call {
  readonly reads: string;
  readonly args: readonly string[];
  readonly stdin?: Uint8Array;
  /** Formats of the command that this call cannot give. */
  readonly not?: readonly string[];
}

/** A command over one batch file, in each form that such a file can have. */
const batchForms = (...options: readonly string[]): readonly Call[] => [
  { reads: "YAML", args: ["restock.yaml", ...options] },
  { reads: "JSON", args: ["day.json", ...options] },
  { reads: "YAML, STL, 3MF, CSV", args: ["models.yaml", ...options] },
  { reads: "standard input", args: ["-", ...options], stdin: streams.batch },
];

const dip = ["--bath", "six", "--event", "load", "--part", "clip", "--parts", "42", "--seconds", "30"];

/** Every command with every kind of input that it reads. */
export const calls: { readonly [command: string]: readonly Call[] } = {
  plan: [...batchForms(), { reads: "YAML, a mixed bath", args: ["mixing.yaml"] }],
  bath: [...batchForms(), { reads: "YAML, a mixed bath", args: ["mixing.yaml"] }],
  cost: [
    ...batchForms(),
    { reads: "a folder", args: ["week"] },
    { reads: "a pattern", args: ["week/*.yaml"] },
    { reads: "YAML, a mixed bath", args: ["mixing.yaml"] },
    { reads: "YAML and an earlier report", args: ["restock.yaml", "--against", "earlier.json"] },
    { reads: "YAML, drawn", args: ["restock.yaml", "--spread", "--draws", "20"] },
  ],
  offer: [
    ...batchForms("--quantities", "5"),
    { reads: "YAML and sales", args: ["restock.yaml", "--quantities", "1,20", "--sales", "12/month"] },
  ],
  week: [
    ...batchForms("--from", "2027-04-12"),
    { reads: "a folder", args: ["week"] },
    { reads: "a pattern", args: ["week/*.yaml", "--people", "2"] },
    { reads: "several YAML files", args: ["shop.yaml", "fair.yaml", "--from", "2027-04-12"] },
  ],
  shade: [
    { reads: "YAML", args: ["restock.yaml", "--dye", "teal"] },
    { reads: "YAML, a card", args: ["restock.yaml", "--target", "teal-mid", "--grid"], not: ["html", "svg"] },
    { reads: "JSON", args: ["day.json", "--dye", "teal"] },
    { reads: "YAML, STL, 3MF, CSV", args: ["models.yaml", "--target", "rust-light"] },
    { reads: "standard input", args: ["-", "--dye", "teal"], stdin: streams.batch },
  ],
  swatches: [
    { reads: "YAML", args: ["restock.yaml", "--dye", "teal"] },
    { reads: "JSON", args: ["day.json", "--dye", "teal"] },
    { reads: "YAML, CSV", args: ["restock.yaml", "--dye", "teal", "--from", "swatches.csv"] },
    { reads: "standard input", args: ["-", "--dye", "teal"], stdin: streams.batch },
  ],
  blend: [
    { reads: "YAML", args: ["mixing.yaml", "--target", "moss", "--tank", "six"] },
    {
      reads: "YAML, a trial",
      args: [
        "mixing.yaml",
        "--target",
        "moss",
        "--trial",
        "straw 38 mL, lagoon 9 mL, water 450 mL: 60,-20,20",
      ],
    },
    { reads: "JSON", args: ["day.json", "--target", "brick-light", "--dyes", "brick"] },
    { reads: "YAML, STL, 3MF, CSV", args: ["models.yaml", "--target", "rust-light"] },
    {
      reads: "standard input",
      args: ["-", "--target", "brick-light", "--dyes", "brick"],
      stdin: streams.batch,
    },
  ],
  rework: [
    { reads: "YAML", args: ["mixing.yaml", "--from", "72,38,-6", "--shade", "rose-deep"] },
    { reads: "JSON", args: ["day.json", "--from", "58,32,9"] },
    { reads: "YAML, STL, 3MF, CSV", args: ["models.yaml", "--from", "grey"] },
    { reads: "standard input", args: ["-", "--from", "58,32,9"], stdin: streams.batch },
  ],
  sweep: batchForms("--vary", "orders.0.quantity=10,20"),
  check: batchForms(),
  new: [{ reads: "nothing", args: ["spring"] }],
  record: [
    { reads: "nothing", args: ["new.csv", ...dip] },
    { reads: "CSV", args: ["baths.csv", ...dip] },
    { reads: "YAML", args: ["today.csv", "--from", "restock.yaml"] },
  ],
  review: [
    { reads: "YAML, a log", args: ["restock.yaml", "--log", "days.csv"] },
    {
      reads: "YAML, a log, one lot",
      args: ["restock.yaml", "--log", "days.csv", "--lot", "P-17"],
      not: ["html", "svg"],
    },
    { reads: "standard input", args: ["-", "--log", "days.csv"], stdin: streams.batch },
  ],
  mix: [{ reads: "nothing", args: ["--volume", "6L", "--dilution", "1:9", "--temperature", "80C"] }],
  measure: [
    { reads: "STL", args: ["tile.stl"] },
    { reads: "text STL", args: ["tile-text.stl"] },
    { reads: "3MF", args: ["tile.3mf"] },
    { reads: "standard input", args: ["-"], stdin: streams.model },
    { reads: "3MF, YAML", args: ["tile.3mf", "--spec", "restock.yaml", "--tank", "six"] },
  ],
  compare: [
    { reads: "nothing", args: ["50,10,20", "tomato"], not: ["ndjson"] },
    { reads: "YAML", args: ["brick-light", "56,34,10", "--spec", "restock.yaml"], not: ["ndjson"] },
    {
      reads: "YAML, several readings",
      args: ["56,34,10", "56.4,34.2,9.9", "brick-light", "--spec", "restock.yaml"],
      not: ["ndjson"],
    },
    { reads: "CSV", args: ["--pairs", "pairs.csv"] },
    { reads: "standard input", args: ["--pairs", "-"], stdin: streams.pairs },
  ],
  fit: [
    { reads: "CSV", args: ["readings.csv"] },
    { reads: "standard input", args: ["-"], stdin: streams.readings },
  ],
  colour: [
    { reads: "nothing", args: ["#d9603b"], not: ["ndjson"] },
    { reads: "YAML", args: ["brick-light", "--spec", "restock.yaml"], not: ["ndjson"] },
    { reads: "CSV", args: ["--reflectance", "curves/rust-60s.csv"] },
    { reads: "standard input", args: ["--reflectance", "-"], stdin: streams.curve },
  ],
  keys: [
    { reads: "nothing", args: [] },
    { reads: "nothing, a word", args: ["swatches"] },
  ],
  schema: [{ reads: "nothing", args: [] }],
};
