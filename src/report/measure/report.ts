import type { Fault } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import { rangeInWords } from "../../core/quantity/text/range-in-words.js";
import { type Block, paragraph, type Report } from "../report.js";
import { mark } from "../words/assumed.js";
import { trimmed } from "../words/digits.js";
import { ended, sentence } from "../words/sentence.js";
import type { MeasuredFile } from "./measured-file.js";
import { measureRows } from "./rows.js";
import { fileSaid, measureTable, tankTable } from "./table.js";

/** What the masses rest on. */
export interface Material {
  readonly densityGPerCm3: number;
  readonly densityAssumed: boolean;
}

const massNote = ({ densityGPerCm3, densityAssumed }: Material): Block =>
  paragraph(
    densityAssumed
      ? `Mass at ${densityGPerCm3} g/cm3, sintered nylon, assumed: weigh one part, or give --density.`
      : `Mass at ${trimmed(densityGPerCm3, 4)} g/cm3.`,
  );

function tankBlocks(files: readonly MeasuredFile[]): Block[] {
  const inTank = files[0]?.inTank;
  if (inTank === undefined) return [];
  const assumed = inTank.restsOnAssumed.length > 0;
  const dragOut = `${trimmed(inTank.dragOutMlPerDm2, 3)} mL/dm2`;
  return [
    { kind: "heading", level: 1, text: `In tank ${inTank.tank}` },
    { kind: "table", table: tankTable(files) },
    paragraph(
      assumed
        ? `${mark(inTank.restsOnAssumed)} rests on an assumed drag-out of ${dragOut}, ${rangeInWords(defaults.handling.dragOutMlPerDm2.factor)}: weigh ten parts wet and dry for your own figure.`
        : `Drag-out ${dragOut}.`,
    ),
  ];
}

const warningText = (file: string, { message, help }: Fault): string =>
  [ended(`${file}: ${message}`), ...(help === undefined ? [] : [sentence(help)])].join(" ");

/** Parts measured from their model files, one row a file. */
export function measureReport(files: readonly MeasuredFile[], material: Material): Report {
  const wrong = files.flatMap(({ file, warnings }) =>
    warnings.map((fault) => warningText(fileSaid({ file }), fault)),
  );
  return {
    name: "measure",
    data: {
      ...material,
      files: files.map(({ file, model, warnings, inTank }) => ({
        file,
        ...model,
        warnings: warnings.map(({ code, message, help }) => ({ code, message, help: help ?? null })),
        ...(inTank === undefined ? {} : { inTank }),
      })),
    },
    rows: measureRows(files),
    blocks: [
      { kind: "heading", level: 1, text: "Parts from model files" },
      { kind: "table", table: measureTable(files) },
      massNote(material),
      ...tankBlocks(files),
      ...(wrong.length === 0
        ? []
        : [
            { kind: "heading" as const, level: 1 as const, text: "What is wrong with the models" },
            { kind: "list" as const, items: wrong },
          ]),
    ],
  };
}
