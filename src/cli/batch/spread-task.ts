import { usualDraws } from "../../core/cost/spread/usual-draws.js";
import { done, type Fault, failed, type Outcome } from "../../core/fault.js";
import type { Request } from "../command.js";
import { usage } from "../usage.js";

/** How a spread is drawn. */
export interface SpreadTask {
  readonly draws: number;
  readonly seed: number;
}

/** Most draws, so that a slip of the finger does not run for hours. */
const mostDraws = 100_000;
/** Fewer than these tell nothing of a tenth. */
const leastDraws = 10;

const whole = (text: string | undefined): number | undefined =>
  text === undefined ? undefined : /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN;

/** Reads --spread, --draws and --seed; nothing without the first. */
export function spreadTask({ options }: Pick<Request, "options">): Outcome<SpreadTask | undefined> {
  const faults: Fault[] = [];
  const asked = options.spread === true;
  const draws = whole(options.draws as string | undefined);
  const seed = whole(options.seed as string | undefined);
  for (const [name, given] of Object.entries({ draws, seed }))
    if (given !== undefined && !asked)
      faults.push(usage(`--${name}`, "nothing is drawn without --spread", "add --spread"));
  if (draws !== undefined && !(draws >= leastDraws && draws <= mostDraws))
    faults.push(
      usage("--draws", `"${options.draws}" is not a count of draws`, `write ${leastDraws} to ${mostDraws}`),
    );
  if (seed !== undefined && !(seed <= 0xffffffff))
    faults.push(
      usage("--seed", `"${options.seed}" is not a seed`, "write a whole number from 0 to 4294967295"),
    );
  if (faults.length > 0) return failed(...faults);
  return done(asked ? { draws: draws ?? usualDraws.draws, seed: seed ?? usualDraws.seed } : undefined);
}
