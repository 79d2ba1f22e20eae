import { halfWidth95 } from "../../core/maths/sampling/half-width-95.js";
import type { Dye, Handling } from "../../core/model/batch.js";
import type { Estimated } from "../../core/quality/estimates/estimate.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { inYaml } from "../../core/quantity/text/in-yaml.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { exponentRange, within } from "../../core/uptake/swatches/bath-response.js";
import { factorDigits, type LearnedDye } from "./learn-dye.js";

const plusMinus = ({ value, standardError }: Estimated): string =>
  `± ${Math.max(1, Math.round((100 * halfWidth95 * standardError) / value))} %`;

/** YAML with all that the log tells, told values with ±; empty where it teaches nothing. */
export function pasteOf(
  learned: readonly { readonly dye: Dye; readonly learned: LearnedDye }[],
  handling: Pick<Handling, "dragOutMlPerDm2">,
): string {
  const lines = learned.flatMap(({ dye, learned: { estimates, toUse, teaches } }) => {
    if (!teaches) return [];
    const { figures } = estimates;
    const { timeFactor, uptakePerDm2, strengthExponent, activationEnergyJPerMol } = figures;
    const factor = (dye.timeFactor ?? 1) * toUse.timeFactor;
    const { unit } = dyeKinds[dye.dilution.kind];
    const own = [
      ...(toUse.timeFactor !== 1
        ? [`    timeFactor: ${shortNumber(factor, factorDigits)} # ${plusMinus(timeFactor)}, from the log`]
        : []),
      ...(uptakePerDm2.told
        ? [`    uptake: ${shortNumber(uptakePerDm2.value, 3)} ${unit}/dm2 ${plusMinus(uptakePerDm2)}`]
        : []),
      ...(toUse.strengthExponent !== undefined
        ? [
            `    strengthExponent: ${shortNumber(within(toUse.strengthExponent, exponentRange), 3)} # ${strengthExponent.told ? plusMinus(strengthExponent) : "goes with this uptake, and only with it"}`,
          ]
        : []),
      ...(activationEnergyJPerMol.told
        ? [
            `    activationEnergy: ${shortNumber(activationEnergyJPerMol.value / 1000, 3)} kJ/mol ${plusMinus(activationEnergyJPerMol)}`,
          ]
        : []),
    ];
    return own.length === 0 ? [] : [`  ${inYaml(dye.name)}:`, ...own];
  });
  const told = learned
    .map(({ learned: { estimates } }) => estimates.figures.dragOutMlPerDm2)
    .filter((one) => one.told);
  const best = told.sort((one, other) => one.standardError - other.standardError)[0];
  return [
    ...(lines.length > 0 ? ["dyes:", ...lines] : []),
    ...(best !== undefined && best.value !== handling.dragOutMlPerDm2
      ? ["handling:", `  dragOut: ${shortNumber(best.value, 3)} mL/dm2 ${plusMinus(best)}`]
      : []),
  ]
    .map((line) => `${line}\n`)
    .join("");
}
