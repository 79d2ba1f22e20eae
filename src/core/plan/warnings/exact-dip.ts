import type { BathSetting, LoadResult } from "../../bath/load/work-load.js";
import { strengthDuringDip } from "../../uptake/law/finite-bath.js";

/** A difference of times that a plan tells of, as a share. */
const toldFrom = 0.005;

/**
 * How long a dip takes in the bath as its parts weaken it, where that differs from the plan's time, found at the
 * mean strength, by more than 0.5 %; undefined where it does not. `seconds` is null where no time gives the depth.
 */
export function exactDip(
  { model, timer }: Pick<BathSetting, "model" | "timer">,
  depth: number,
  {
    strengthBefore,
    strengthDuring,
    seconds,
  }: Pick<LoadResult, "strengthBefore" | "strengthDuring" | "seconds">,
  /** Of the bath as made up, relative to the one that the dye was measured in. */
  madeUp: number,
): { readonly seconds: number | null } | undefined {
  const strengthAfter = 2 * strengthDuring - strengthBefore;
  if (strengthBefore === strengthAfter || seconds === 0) return undefined;
  const strength = strengthDuringDip(model, depth, {
    before: strengthBefore * madeUp,
    after: strengthAfter * madeUp,
  });
  const exact = strength === undefined ? undefined : timer(depth, strength / madeUp);
  if (exact === undefined) return { seconds: null };
  return Math.abs(exact / seconds - 1) > toldFrom ? { seconds: exact } : undefined;
}
