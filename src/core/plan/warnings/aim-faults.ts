import { type Fault, warning } from "../../fault.js";
import type { DyedOrder } from "../../model/batch.js";
import { dyesOf } from "../../model/dyes-of.js";
import { duration } from "../../quantity/text/duration.js";
import { labText } from "../../quantity/text/lab-text.js";
import type { ShadeAim } from "../../uptake/shade/aim.js";

/** What must be said of a shade whatever the bath: out of reach (exit status 1), beyond the swatches. */
export function aimFaults(
  order: DyedOrder,
  aim: ShadeAim,
): { readonly missed: Fault[]; readonly warnings: Fault[] } {
  const { shade } = order;
  const path = ["shades", shade.name];
  const on = order.base === undefined ? "" : ` on ${order.base.name}`;
  const hasSwatches = dyesOf(shade.dye).some(({ swatches }) => swatches.length > 0);
  const missed =
    aim.reachable || aim.lab === null || aim.deltaE00 === null
      ? []
      : [
          warning(
            "shade-out-of-reach",
            path,
            `shade "${shade.name}"${on} cannot be reached with dye "${shade.dye.name}": the nearest is ${labText(aim.lab)} after ${duration(aim.freshSeconds)} in a fresh bath, ${aim.deltaE00.toFixed(1)} CIEDE2000 away (tolerance ${shade.tolerance})`,
            shade.dye.mix === undefined
              ? "take a colour from its shade curve (dipwright shade), another dye, or a wider tolerance"
              : "write other amounts under its mix (dipwright blend finds them), or a wider tolerance",
          ),
        ];
  const warnings = aim.extrapolated
    ? [
        warning(
          "extrapolated",
          path,
          `shade "${shade.name}" asks for ${duration(aim.freshSeconds)}, ${hasSwatches ? "longer than the longest swatch" : "longer than the longest dip"} of dye "${shade.dye.name}": ${hasSwatches ? "its time and colour are" : "its depth is"} extrapolated`,
          "dip and read a swatch of that time",
        ),
      ]
    : [];
  return { missed, warnings };
}
