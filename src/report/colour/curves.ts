import type { ColourReport } from "../../core/colour/colour-report.js";
import { readingSaid } from "../../core/colour/reading.js";
import type { Reading } from "../../core/model/colour.js";
import { textField } from "../fields.js";
import type { Report } from "../report.js";
import type { Column } from "../table.js";
import { decimals } from "../words/digits.js";
import { colourFields } from "./columns.js";
import { whitenessLimits } from "./whiteness-limits.js";

/** A sample of a file of curves. */
export interface CurveReport extends ColourReport {
  readonly name: string;
}

const two = (key: string): Column => ({ key, title: key, digits: (value) => decimals(value, 2) });

/** Every curve of a file, one row a sample. People see a whiteness only where its formula holds. */
export function curvesReport(curves: readonly CurveReport[], reading: Reading): Report {
  const rows = curves.map((curve) => [textField("sample", curve.name), ...colourFields(curve)]);
  return {
    name: "colour-curves",
    data: { reading, samples: curves },
    lines: curves,
    rows: {
      columns: rows[0]?.map(([column]) => column) ?? [],
      rows: rows.map((fields) => fields.map(([, cell]) => cell)),
    },
    blocks: [
      { kind: "heading", level: 1, text: `Colours under ${readingSaid(reading)}` },
      {
        kind: "table",
        table: {
          columns: [
            { key: "sample", title: "sample" },
            { key: "colour", title: "colour", swatch: true },
            ...["L", "a", "b", "C", "h", "whiteness", "yellowness"].map(two),
          ],
          rows: curves.map(({ name, hex, lab, lch, whiteness, whitenessValid, yellowness }) => [
            name,
            hex,
            ...lab,
            lch[1],
            lch[2],
            whitenessValid ? whiteness : null,
            yellowness,
          ]),
        },
      },
      ...(curves.some(({ whiteness }) => whiteness !== null)
        ? [{ kind: "paragraph", text: whitenessLimits } as const]
        : []),
    ],
  };
}
