import type { CsvRow } from "../../core/csv/csv-format.js";
import { type CsvHeader, csvHeader } from "../../core/csv/csv-header.js";
import { error, type Fault, failed, type Outcome } from "../../core/fault.js";
import { columnNames, neededColumns } from "../row/columns.js";

/** Columns that the log knows by another spelling: they would be passed over in silence. */
const misspelt = ({ names, row }: CsvHeader): Fault[] =>
  names.flatMap((name) => {
    const known = columnNames.find(
      (column) => column.toLowerCase() === name.toLowerCase().replace(/[\s_-]/g, ""),
    );
    return known === undefined || known === name || names.includes(known)
      ? []
      : [
          error(
            "log-column",
            ["row", row, name],
            `row ${row}: there is no column ${name}`,
            `write ${known}; small and capital letters matter`,
          ),
        ];
  });

/** The columns of a log, which must have those that every row needs. */
export function readHeader(first: CsvRow): Outcome<CsvHeader> {
  const named = csvHeader(first);
  const wrong = named.ok ? misspelt(named.value) : [];
  return wrong.length > 0 ? failed(...wrong) : csvHeader(first, neededColumns);
}
