import type { LoadLimit } from "../../core/bath/load/load-size.js";
import type { Cell, Column, Table } from "../table.js";
import { mark } from "../words/assumed.js";
import { significant, trimmed } from "../words/digits.js";
import type { MeasuredFile } from "./measured-file.js";

const limits: Record<LoadLimit, string> = {
  perLoad: "the part's own limit",
  freeboard: "freeboard",
  liquorRatio: "liquor ratio",
  packing: "room to move",
  least: "least level",
};

/** How a file is named to people. */
export const fileSaid = ({ file: name }: Pick<MeasuredFile, "file">): string =>
  name === "-" ? "stdin" : name;

/** Three digits that matter, as a drawing or a small balance gives them. */
const short = (value: number): string => significant(value, 3);

/** A figure that cannot be trusted is marked. */
const doubtful = (value: number, trusted: boolean): Cell => (trusted ? value : `${short(value)} ?`);

const measure = (key: string, title: string, unit: string): Column => ({
  key,
  title,
  unit,
  digits: short,
  align: "right",
});

const file: Column = { key: "file", title: "file", tone: "strong" };

/** The same for people: to the digits that matter. */
export const measureTable = (files: readonly MeasuredFile[]): Table => ({
  columns: [
    file,
    { key: "closed", title: "closed" },
    measure("area", "area", "cm2"),
    measure("volume", "volume", "cm3"),
    measure("mass", "mass", "g"),
    { key: "box", title: "box", unit: "mm" },
  ],
  rows: files.map((one) => [
    fileSaid(one),
    one.model.closed ? "yes" : "no",
    doubtful(one.model.areaCm2, one.model.areaTrusted),
    doubtful(one.model.volumeCm3, one.model.volumeTrusted),
    doubtful(one.model.massG, one.model.volumeTrusted),
    one.model.boxMm.map((side) => trimmed(side, 1)).join(" x "),
  ]),
});

/** What a tank makes of the parts. */
export const tankTable = (files: readonly MeasuredFile[]): Table => ({
  columns: [
    file,
    { key: "load", title: "parts a load", align: "right" },
    { key: "bound", title: "bound by" },
    {
      key: "carried",
      title: `carries out${mark(files[0]?.inTank?.restsOnAssumed ?? [])}`,
      unit: "mL",
      digits: short,
    },
  ],
  rows: files.flatMap((one) =>
    one.inTank === undefined
      ? []
      : [
          [
            fileSaid(one),
            one.inTank.partsPerLoad ?? "?",
            one.inTank.boundBy === null ? "no volume to trust" : limits[one.inTank.boundBy],
            one.inTank.carriedOutMl ?? "?",
          ],
        ],
  ),
});
