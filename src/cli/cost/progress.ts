import type { Io } from "../io.js";
import type { OutputOptions } from "../output/output-options.js";

/** Shows how far a long run is, on one line that goes away again. */
export interface Progress {
  readonly at: (count: number) => void;
  /** Removes the line, before anything else is printed. */
  readonly clear: () => void;
}

const silent: Progress = { at: () => {}, clear: () => {} };

/** Milliseconds between two signs of life. */
const every = 200;

/** Progress over some files: on a terminal only, where no rows run over it and the user allows it. */
export function progressOf(
  total: number,
  { quiet, out }: Pick<OutputOptions, "quiet" | "out">,
  io: Io,
): Progress {
  if (!io.errIsTerminal || quiet || total < 2 || (io.outIsTerminal && out === undefined)) return silent;
  let last = io.now().getTime();
  let shown = false;
  return {
    at: (count) => {
      const now = io.now().getTime();
      if (now - last < every) return;
      last = now;
      shown = true;
      io.err(`\r${count} of ${total} files`);
    },
    clear: () => {
      if (shown) io.err("\r\u001b[K");
      shown = false;
    },
  };
}
