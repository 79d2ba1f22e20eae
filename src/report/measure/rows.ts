import type { Cell, Column, Table } from "../table.js";
import { restsInCell } from "../words/assumed.js";
import { significant } from "../words/digits.js";
import type { MeasuredFile } from "./measured-file.js";
import { fileSaid } from "./table.js";

interface FileColumn extends Column {
  readonly of: (file: MeasuredFile) => Cell;
}

const text = (key: string, of: FileColumn["of"]): FileColumn => ({ key, title: key, of });
const number = (key: string, of: FileColumn["of"], digits: Column["digits"] = String): FileColumn => ({
  key,
  title: key,
  digits,
  of,
});
const six = (value: number): string => significant(value, 6);
const size = (key: string, of: FileColumn["of"]): FileColumn => number(key, of, six);

const columns: readonly FileColumn[] = [
  text("file", fileSaid),
  text("format", ({ model }) => model.format),
  number("triangles", ({ model }) => model.triangles),
  number("shells", ({ model }) => model.shells),
  text("closed", ({ model }) => (model.closed ? "yes" : "no")),
  size("area_cm2", ({ model }) => model.areaCm2),
  size("volume_cm3", ({ model }) => model.volumeCm3),
  size("mass_g", ({ model }) => model.massG),
  size("box_x_mm", ({ model }) => model.boxMm[0]),
  size("box_y_mm", ({ model }) => model.boxMm[1]),
  size("box_z_mm", ({ model }) => model.boxMm[2]),
  text("warnings", ({ warnings }) => warnings.map(({ message }) => message).join("; ")),
];

const tankColumns: readonly FileColumn[] = [
  text("tank", ({ inTank }) => inTank?.tank ?? null),
  number("parts_per_load", ({ inTank }) => inTank?.partsPerLoad ?? null),
  text("bound_by", ({ inTank }) => inTank?.boundBy ?? null),
  size("carried_out_mL", ({ inTank }) => inTank?.carriedOutMl ?? null),
  text("rests_on_assumed", ({ inTank }) =>
    inTank === undefined ? null : restsInCell(inTank.restsOnAssumed),
  ),
];

/** One row a model file, for spreadsheets. */
export function measureRows(files: readonly MeasuredFile[]): Table {
  const shown = files.some(({ inTank }) => inTank) ? [...columns, ...tankColumns] : columns;
  return { columns: shown, rows: files.map((file) => shown.map(({ of }) => of(file))) };
}
