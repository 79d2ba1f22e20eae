import { shortNumber } from "../../core/quantity/text/short-number.js";
import type { UptakeFit } from "../../core/uptake/fit/fit-uptake.js";
import { uptakeLaws } from "../../core/uptake/law/laws.js";
import type { Cell, Column, Table } from "../table.js";
import { timeSaid, withError } from "./digits.js";
import { type FitFacts, noteOn, readingsSaid } from "./facts.js";

const limits = { "still-rising": "rises on and on", "already-level": "level from the start" } as const;

/** The constants of the law with their standard errors. */
export function constantsTable(facts: FitFacts): Table {
  const { fits, table } = facts;
  const { seconds, name } = table.timeUnit;
  const { parameters, standardErrors, halfTime, law } = fits;
  const { plateau, rate } = parameters!;
  const longest = table.points.reduce((most, point) => Math.max(most, point.seconds), 0);
  const row = (what: string, value: number, error: number | undefined, unit: string): Cell[] => {
    const said = withError(value, error);
    return [what, said.value, said.error, unit];
  };
  const ofPlateau = uptakeLaws[law].plateau ? "plateau" : `${readingsSaid(facts)} after ${timeSaid(longest)}`;
  const unit = uptakeLaws[law].plateau ? readingsSaid(facts) : "";
  const rows =
    halfTime === undefined
      ? []
      : [
          row("rate", rate * seconds, standardErrors?.rate && standardErrors.rate * seconds, `1/${name}`),
          row(
            "half time",
            halfTime / seconds,
            standardErrors?.rate && (halfTime / seconds) * (standardErrors.rate / rate),
            name,
          ),
        ];
  return {
    columns: [
      { key: "what", title: "constant" },
      { key: "value", title: "value", align: "right", tone: "strong" },
      { key: "error", title: "standard error", align: "right" },
      { key: "unit", title: "unit" },
    ],
    rows: [row(ofPlateau, plateau, standardErrors?.plateau, unit), ...rows],
  };
}

/** The laws side by side, for people. */
export function lawsTable({ fits, table }: FitFacts): Table {
  const { seconds, name } = table.timeUnit;
  const to = (digits: number) => (value: number) => value.toPrecision(digits);
  return {
    columns: [
      { key: "law", title: "law" },
      { key: "plateau", title: "plateau", show: to(4), align: "right" },
      { key: "rate", title: "rate", unit: `1/${name}`, show: to(4) },
      { key: "half", title: "half time", unit: name, show: to(3) },
      { key: "sum", title: "sum of squares", show: to(3) },
      { key: "aicc", title: "AICc", show: (value) => value.toFixed(1) },
    ],
    rows: fits.perLaw.map((fit) => [
      fit.law === fits.law ? `${fit.law} *` : fit.law,
      fit.limit === undefined ? plateauOf(fit) : limits[fit.limit],
      fit.parameters === undefined || !uptakeLaws[fit.law].plateau ? null : fit.parameters.rate * seconds,
      fit.halfTime === undefined ? null : fit.halfTime / seconds,
      fit.residualSum,
      fit.aicc ?? null,
    ]),
  };
}

/** "none" for a law without one. */
const plateauOf = ({ law, parameters }: UptakeFit): Cell =>
  uptakeLaws[law].plateau && parameters !== undefined ? parameters.plateau : "none";

/** One row a law, for a spreadsheet. */
export function fitRows({ fits, table }: FitFacts): Table {
  const { seconds, name } = table.timeUnit;
  const number = (key: string): Column => ({ key, title: key, digits: (value) => shortNumber(value, 8) });
  const text = (key: string): Column => ({ key, title: key });
  const finite = (value: number | undefined, times = 1): Cell =>
    value === undefined || !Number.isFinite(value) ? null : value * times;
  return {
    columns: [
      text("law"),
      text("chosen"),
      number("plateau"),
      number("plateau_standard_error"),
      number(`rate_per_${name}`),
      number(`rate_standard_error_per_${name}`),
      number(`half_time_${name}`),
      number("residual_sum"),
      number("aicc"),
      text("note"),
    ],
    rows: fits.perLaw.map((fit) => [
      fit.law,
      fit.law === fits.law ? "yes" : "no",
      finite(fit.parameters?.plateau),
      finite(fit.standardErrors?.plateau),
      finite(fit.parameters?.rate, seconds),
      finite(fit.standardErrors?.rate, seconds),
      finite(fit.halfTime, 1 / seconds),
      fit.residualSum,
      finite(fit.aicc),
      fit.limit === undefined ? (noteOn(fit.law) ?? null) : limits[fit.limit],
    ]),
  };
}
