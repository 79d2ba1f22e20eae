import { visible } from "../diagnostics/visible.js";
import { version } from "./version.js";

/** What to say when dipwright itself is at fault. The stack only where DIPWRIGHT_DEBUG is set. */
export function defect(thrown: unknown, env: Readonly<Record<string, string | undefined>>): string {
  const what = thrown instanceof Error ? thrown.message : String(thrown);
  const stack = env.DIPWRIGHT_DEBUG && thrown instanceof Error ? `${thrown.stack}\n` : "";
  return `${stack}defect: dipwright ${version} failed through a fault of its own: ${visible(what)}
  help: report it where you got dipwright from, with this message, the command line and the
        files it read; run again with DIPWRIGHT_DEBUG=1 for the place in the program
`;
}
