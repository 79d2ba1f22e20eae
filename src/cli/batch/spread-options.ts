import type { OptionDeclaration } from "../command.js";

/** Options of the commands that can draw what is uncertain. */
export const spreadOptions: readonly OptionDeclaration[] = [
  { flags: "--spread", description: "draw all that is uncertain: P10, P50, P90 and what moves the cost" },
  { flags: "--draws <count>", description: "of --spread; default 1000" },
  { flags: "--seed <number>", description: "of --spread; default 1" },
];
