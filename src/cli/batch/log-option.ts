import type { OptionDeclaration } from "../command.js";

/** The log of baths that start from it. */
export const logOption: OptionDeclaration = {
  flags: "--log <file>",
  description: "bath log for baths with start: log; default the log that the file names",
};
