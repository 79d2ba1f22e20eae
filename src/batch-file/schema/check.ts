import * as z from "zod";
import type { Told } from "./leaf.js";

/** Reports a fault at a key below the map that is checked. */
export type Report = (
  code: string,
  path: readonly (string | number)[],
  message: string,
  help: string,
  part?: Told["part"],
) => void;

/**
 * A check over a whole map that runs even if some of its values have faults (those are undefined then), so that one run
 * reports all faults.
 */
export function check<T>(look: (value: Partial<T>, report: Report) => void) {
  const made = z.check<T>((payload) => {
    const value = payload.value as unknown;
    if (typeof value !== "object" || value === null || Array.isArray(value)) return;
    look(value as Partial<T>, (code, path, message, help, part) => {
      payload.issues.push({
        code: "custom",
        message,
        path: [...path],
        input: payload.value,
        continue: true,
        params: { code, help, part },
      });
    });
  });
  made._zod.def.when = () => true;
  return made;
}
