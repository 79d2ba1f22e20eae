import { coloured, type Paint, plain, trueColoured } from "../../report/format/paint.js";
import type { Io } from "../io.js";
import type { OutputOptions } from "./output-options.js";
import { wantsColour, wantsTrueColour } from "./wants-colour.js";

/** How a result is coloured: a file not at all, a terminal as it can and the user allows. */
export function paintFor({ out, colour }: Pick<OutputOptions, "out" | "colour">, io: Io): Paint {
  if (out !== undefined) return plain;
  const facts = { env: io.env, isTerminal: io.outIsTerminal, refused: !colour };
  if (wantsTrueColour(facts)) return trueColoured;
  return wantsColour(facts) ? coloured : plain;
}
