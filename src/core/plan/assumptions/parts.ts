import { freePacking } from "../../bath/load/load-size.js";
import { mapped } from "../../mapped.js";
import { type Assumption, assumption } from "../../model/assumption.js";
import { defaults } from "../../model/defaults.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { type AssumedWork, costShareOf } from "./assumed-work.js";

/** The masses that follow from a model of the part and the usual density. */
export function assumedMasses({ batch }: AssumedWork): Assumption[] {
  const unweighed = [...new Set(mapped(batch.orders, ({ part }) => part))].filter(
    ({ massAssumed }) => massAssumed === true,
  );
  if (unweighed.length === 0) return [];
  return [
    assumption(
      "assumed-density",
      unweighed.length === 1 ? ["parts", unweighed[0]!.name, "density"] : ["parts"],
      `the mass of ${mapped(unweighed, ({ name }) => name).join(", ")} is that of the model at ${defaults.part.densityGPerCm3} g/cm3, sintered nylon, which is assumed: weigh one, or write the density of yours`,
    ),
  ];
}

/** What is assumed of how many parts may go into a load, where that binds. */
export function assumedLoadSizes(work: AssumedWork): Assumption[] {
  const { handling } = work.batch;
  const binds = (limit: string): boolean =>
    work.runs.some(({ loads }) => loads.some(({ plan }) => plan.boundBy === limit));
  return [
    ...(handling.assumed.includes("liquorRatio") && binds("liquorRatio")
      ? [
          assumption(
            "assumed-liquor-ratio",
            ["handling", "liquorRatio"],
            `${shortNumber(handling.liquorRatioLPerKg)} L of liquor per kg of parts is assumed, and sets how many go into a load`,
            {
              help: "parts must move freely, so try what your basket allows",
              ...costShareOf(work, "liquorRatio"),
            },
          ),
        ]
      : []),
    ...(binds("packing")
      ? [
          assumption(
            "assumed-packing",
            ["parts"],
            `parts are taken to move freely while their boxes fill at most ${Math.round(100 * freePacking)} % of the liquor: write perLoad for what your basket allows`,
          ),
        ]
      : []),
  ];
}

/** How the parts that miss their shade are dipped again. */
export const secondDips = ({ batch }: AssumedWork): Assumption[] =>
  batch.rework !== undefined && batch.rework > 0 && batch.yield < 1
    ? [
        assumption(
          "second-dip",
          ["rework"],
          `of the parts that miss their shade a second dip saves ${shortNumber(100 * batch.rework)} %: they are in loads of their own behind the first ones of their order, in a full dip each time`,
        ),
      ]
    : [];
