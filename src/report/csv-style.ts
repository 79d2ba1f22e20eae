/** How a table is written for a spreadsheet. */
export interface CsvStyle {
  readonly delimiter: string;
  readonly decimal: "." | ",";
  /** Start with a byte order mark, which some spreadsheets need to read UTF-8. */
  readonly bom: boolean;
}
