/** What a report can be written as. */
export type Format = "text" | "json" | "csv" | "tsv" | "ndjson" | "markdown" | "html" | "svg";

/** Formats of a report without a picture. */
export const tableFormats: readonly Format[] = ["text", "json", "csv", "tsv", "markdown"];

/** Formats of a report with one. */
export const pictureFormats: readonly Format[] = [...tableFormats, "html", "svg"];
