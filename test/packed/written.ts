import { parse } from "csv-parse/sync";
import { SaxesParser } from "saxes";
import type { FormatName } from "../../src/report/format/formats.js";

const table = (text: string, delimiter: string): void => {
  const rows: string[][] = parse(text, { delimiter });
  if (rows.length === 0) throw new Error("the table has no head");
};

function words(text: string): void {
  if (text.trim() === "") throw new Error("nothing was written");
  const odd = /undefined|NaN|\[object |\bnull\b/.exec(text);
  if (odd !== null) throw new Error(`the text contains ${odd[0]}`);
}

function picture(text: string): void {
  const parser = new SaxesParser();
  parser.on("error", (cause) => {
    throw cause;
  });
  parser.write(text).close();
  if (!text.startsWith("<svg")) throw new Error("the text does not start with <svg");
}

function page(text: string): void {
  if (!/^<!doctype html>/i.test(text) || !text.trimEnd().endsWith("</html>"))
    throw new Error("the text is not a whole page");
}

/** Reads what was written in a format; throws where it is not of that format. */
export const readBack: { readonly [F in FormatName]: (text: string) => void } = {
  text: words,
  markdown: words,
  json: (text) => void JSON.parse(text),
  ndjson: (text) =>
    text
      .trimEnd()
      .split("\n")
      .forEach((line) => void JSON.parse(line)),
  csv: (text) => table(text, ","),
  tsv: (text) => table(text, "\t"),
  svg: picture,
  html: page,
};
