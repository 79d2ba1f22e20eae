import { tellApart } from "../../core/uptake/fit/compare-laws.js";
import type { UptakeFit } from "../../core/uptake/fit/fit-uptake.js";
import { type FitFacts, noteOn } from "./facts.js";

const known = (value: number | undefined, times = 1): number | null =>
  value === undefined || !Number.isFinite(value) ? null : value * times;

/** A law in the file's unit of time, and in seconds beside it. */
function inUnits(
  { law, parameters, standardErrors, halfTime, residualSum, aicc, limit }: UptakeFit,
  unitS: number,
) {
  const rateError = standardErrors?.rate;
  return {
    law,
    parameters:
      parameters === undefined
        ? null
        : { plateau: parameters.plateau, rate: parameters.rate * unitS, ratePerSecond: parameters.rate },
    standardErrors:
      standardErrors === undefined
        ? null
        : {
            plateau: known(standardErrors.plateau),
            rate: known(rateError, unitS),
            ratePerSecond: known(rateError),
            halfTime:
              halfTime === undefined || rateError === undefined
                ? null
                : known((halfTime / unitS) * (rateError / parameters!.rate)),
          },
    halfTime: known(halfTime, 1 / unitS),
    halfTimeSeconds: known(halfTime),
    residualSum,
    aicc: known(aicc),
    limit: limit ?? null,
    ...(noteOn(law) === undefined ? {} : { note: noteOn(law) }),
  };
}

/** A fit as JSON has it: rate per unit of the file's time column, half time in that unit. */
export function fitData({ name, table, fits, warnings }: FitFacts): Readonly<Record<string, unknown>> {
  const unit = table.timeUnit;
  return {
    file: name,
    points: fits.points,
    timeColumn: table.timeColumn,
    readingColumn: table.uptakeColumn,
    timeUnit: unit.name,
    secondsPerTimeUnit: unit.seconds,
    units: { plateau: table.uptakeColumn, rate: `1/${unit.name}`, halfTime: unit.name },
    ...inUnits(fits, unit.seconds),
    bestLaw: fits.bestLaw,
    toldApart: tellApart(fits),
    perLaw: fits.perLaw.map((fit) => inUnits(fit, unit.seconds)),
    warnings: warnings.map(({ code, message, help, spans: [span] }) => ({
      code,
      message,
      ...(help === undefined ? {} : { help }),
      ...(span === undefined ? {} : { line: span.line }),
    })),
  };
}
