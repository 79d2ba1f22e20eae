import { toKeepStrength, topUpRecords } from "../../bath/load/top-up-rules.js";
import { type Fault, warning } from "../../fault.js";
import type { Bath, Dilution, Handling } from "../../model/batch.js";
import { atStrength, dilutionInShort } from "../../quantity/dye/dilution.js";
import { duration } from "../../quantity/text/duration.js";
import { madeUpStrength, measuredDilution } from "../../uptake/law/measured-at.js";
import type { UptakeModel } from "../../uptake/law/uptake-model.js";
import { bringTo } from "../../uptake/shade/slower-dip.js";
import type { LoadPlan, LoadResult } from "../run/bath-run.js";

/** The weakest bath that is worth a try. Common practice, no source. */
const weakest = 0.02;

/** A dip under this may be slowed to widen its window. */
const quickSeconds = 60;

/**
 * What dilution would bring a quick dip to a minute. A cooler bath would too, but the dye then goes in less evenly and does
 * not hold as well.
 */
function slowerDip(
  model: UptakeModel,
  dilution: Dilution,
  freshSeconds: number,
  dip: { strength: number; celsius: number },
): string {
  const { seconds, strength } = bringTo(model, freshSeconds, dip);
  return strength !== undefined && strength < dip.strength && strength > weakest
    ? `for a dip of ${duration(seconds)}, dilute to ${dilutionInShort(atStrength(dilution, strength))}`
    : "dilute the bath";
}

/** A bath whose dips take so many times as long as in a fresh one is nearly spent. Common practice, no source. */
const wornFactor = 2;

/** Warnings on the times of a bath's dips: too quick, too narrow for the hand, too long, worn; the first of each kind, or of each shade. */
export function dipFaults(
  bath: Bath,
  handling: Handling,
  model: UptakeModel,
  loads: readonly {
    readonly plan: LoadPlan;
    readonly result: LoadResult;
    readonly window: readonly [number, number | null] | null;
    /** In this bath when fresh. */
    readonly freshSeconds: number;
  }[],
): Fault[] {
  const path = ["baths", bath.index];
  const where = `the bath of "${bath.dye.name}" in tank "${bath.tank.name}"`;
  const faults: Fault[] = [];
  const slower = ({ plan, result }: (typeof loads)[number]): string =>
    bath.dye.mix !== undefined
      ? "dilute the bath: write less of each dye under its mix"
      : slowerDip(model, measuredDilution(bath.dye), plan.freshSeconds, {
          strength: result.strengthDuring * madeUpStrength(bath.dye),
          celsius: bath.dye.celsius,
        });
  const width = ({ window }: (typeof loads)[number]): number =>
    window === null || window[1] === null ? Number.POSITIVE_INFINITY : window[1] - window[0];
  const told = new Set<string>();
  for (const [i, load] of loads.entries()) {
    const { result, plan } = load;
    const { shade } = plan.order;
    // Once a shade: its other loads are alike.
    if (told.has(shade.name)) continue;
    if (result.dipSeconds < handling.shortestSeconds - 1e-9) {
      told.add(shade.name);
      faults.push(
        warning(
          "dip-too-short",
          path,
          `load ${i + 1} of ${where} (shade "${shade.name}") needs ${duration(result.dipSeconds)}, under the shortest dip of ${duration(handling.shortestSeconds)}`,
          slower(load),
        ),
      );
    } else if (width(load) < 2 * handling.timingSeconds) {
      told.add(shade.name);
      faults.push(
        warning(
          "window-too-narrow",
          path,
          `load ${i + 1} of ${where} (shade "${shade.name}") stays within tolerance for ${width(load).toFixed(1)} s only, and a dip is timed to ±${handling.timingSeconds} s`,
          result.dipSeconds < quickSeconds ? slower(load) : "allow a wider tolerance, or time the dip better",
        ),
      );
    }
  }
  const long = loads.findIndex(({ result }) => result.dipSeconds > handling.longestSeconds);
  if (long >= 0)
    faults.push(
      warning(
        "dip-too-long",
        path,
        `from load ${long + 1} on ${where} needs ${duration(loads[long]!.result.dipSeconds)} or more, over the longest dip of ${duration(handling.longestSeconds)}`,
        "strengthen the bath or make it up fresh",
      ),
    );
  const worn = loads.findIndex(({ result, freshSeconds }) => result.dipSeconds > wornFactor * freshSeconds);
  if (worn >= 0 && long < 0) {
    const { result, freshSeconds } = loads[worn]!;
    faults.push(
      warning(
        "bath-nearly-spent",
        path,
        `load ${worn + 1} of ${where} takes ${duration(result.dipSeconds)} at ${(100 * result.strengthDuring).toFixed(0)} % strength, against ${duration(freshSeconds)} in a fresh bath: the bath is nearly spent`,
        topUpRecords[bath.topUp].keepsStrength
          ? "make it up fresh next time"
          : `write ${toKeepStrength} to bring it back, or make it up fresh next time`,
      ),
    );
  }
  return faults;
}
