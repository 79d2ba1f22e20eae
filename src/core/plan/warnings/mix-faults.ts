import { type Fault, warning } from "../../fault.js";
import { dyeInWords } from "../../quantity/dye/dye-figures.js";
import type { OrderAim } from "../assign/find-aims.js";
import type { BathRun, WorkedLoad } from "../run/bath-run.js";

/** What a bath lacks of each dye of its mix before a load, in words. */
function lacking({ bath, setting }: BathRun, { result }: WorkedLoad): string {
  const pours = bath.dye.mix!.parts.flatMap(({ dye, dilution }, i) => {
    const fresh = (setting.fresh.dyeEach![i]! * result.volumeBeforeL) / setting.fresh.volumeL;
    const missing = fresh * (1 - result.strengthBeforeEach[i]!);
    return missing > 0 ? [`${dyeInWords(dilution.kind, missing)} of ${dye.name}`] : [];
  });
  return pours.length === 0 ? "thin it with water" : `add ${pours.join(" and ")} before it`;
}

/**
 * Warnings on mixed baths whose dyes have worn so unequally that a shade which the recipe gives is left; for the first load
 * of each shade.
 */
export function mixFaults(runs: readonly BathRun[], aims: readonly OrderAim[]): Fault[] {
  return runs.flatMap((run) => {
    const { bath, loads } = run;
    const { mix } = bath.dye;
    if (mix === undefined) return [];
    const told = new Set<string>();
    return loads.flatMap((load, i) => {
      const { plan, result } = load;
      const { shade } = plan.order;
      const off = result.mixedDip!;
      if (off.onShade || told.has(shade.name) || !aims[plan.order.index]!.reachable) return [];
      told.add(shade.name);
      const strengths = mix.parts.map(
        ({ dye }, at) => `${dye.name} ${(100 * result.strengthBeforeEach[at]!).toFixed(0)} %`,
      );
      return [
        warning(
          "mix-off-shade",
          ["baths", bath.index],
          `load ${i + 1} of the bath of "${bath.dye.name}" in tank "${bath.tank.name}" comes no nearer to shade "${shade.name}" than ${off.deltaE00.toFixed(1)} CIEDE2000 (tolerance ${shade.tolerance}): its dyes have worn unequally (${strengths.join(", ")})`,
          `${lacking(run, load)}${bath.topUp === "strength" ? "" : ", or write topUp: strength"}`,
        ),
      ];
    });
  });
}
