import { madeUpStrength } from "../../uptake/law/measured-at.js";
import { slowing } from "../../uptake/law/slowing.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";
import type { TrialAdvice } from "../plan-model.js";
import type { BathRun } from "../run/bath-run.js";

/**
 * The first load whose time may leave its window for what is not known of the strength exponent (1 to 2), and that has
 * others behind it; null where a trial was dipped already, the exponent is known, or no window is that narrow.
 */
export function trialAdvice(
  { bath, loads, untried }: BathRun,
  aims: readonly ShadeAim[],
): TrialAdvice | null {
  if (bath.trial !== undefined || bath.dye.mix !== undefined || untried.strengthExponent !== undefined)
    return null;
  const worth = loads.findIndex(({ plan, result }, i) => {
    const { freshWindow } = aims[plan.order.index]!;
    if (freshWindow === null || i === loads.length - 1) return false;
    const strength = result.strengthDuring * madeUpStrength(bath.dye);
    const now = slowing(untried, plan.freshSeconds, strength);
    // Where the exponent is 1 or 2, the time of the plan gives the colour of these fresh times.
    const fresh = [1, 2].map((p) => (plan.freshSeconds * now) / strength ** -p);
    return fresh.some((t) => t < freshWindow[0] || (freshWindow[1] !== null && t > freshWindow[1]));
  });
  return worth < 0 ? null : { load: worth + 1, seconds: loads[worth]!.result.setSeconds };
}
