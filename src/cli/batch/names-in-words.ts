import { listed } from "../../core/quantity/text/listed.js";

/** Most names in a help line, so that it stays readable. Common practice, no source. */
const mostListed = 12;

/** "a, b and c"; of many names the first, and that there are others. */
export const namesInWords = (names: readonly string[]): string =>
  `${listed(names.slice(0, mostListed), "and")}${names.length > mostListed ? ", among others" : ""}`;
