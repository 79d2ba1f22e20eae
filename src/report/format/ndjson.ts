import { json } from "./json.js";

/**
 * One record as a line of JSON, `schema` first, numbers unrounded. Any number of lines make a report that a
 * script can read as it comes.
 */
export const ndjsonLine = (name: string, record: Readonly<Record<string, unknown>>): string =>
  json(name, record, 0);
