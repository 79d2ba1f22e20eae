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
export const check = <T>(look: (value: Partial<T>, report: Report) => void) =>
  z.superRefine<T>(
    (value: unknown, context) => {
      if (typeof value !== "object" || value === null || Array.isArray(value)) return;
      look(value as Partial<T>, (code, path, message, help, part) =>
        context.addIssue({ code: "custom", message, path: [...path], params: { code, help, part } }),
      );
    },
    { when: () => true },
  );
