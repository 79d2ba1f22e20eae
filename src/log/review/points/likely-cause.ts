import type { ReviewRun } from "../../../core/quality/review/review-model.js";
import { shortNumber } from "../../../core/quantity/text/short-number.js";
import type { Drift } from "./drift.js";
import type { JudgedLoad } from "./judged-load.js";

type Cause = Pick<ReviewRun, "cause" | "said">;

/** How far means must differ before that is called the cause. Common practice, no source. */
const kelvinMatters = 1;
const strengthMatters = 0.05;
const timeMatters = 0.05;

const meanOr = (values: readonly number[], none: number): number =>
  values.length === 0 ? none : values.reduce((sum, one) => sum + one, 0) / values.length;

const means = (loads: readonly JudgedLoad[], celsius: number) => ({
  celsius: meanOr(
    loads.flatMap(({ row }) => (row.celsius === undefined ? [] : [row.celsius])),
    celsius,
  ),
  time: meanOr(
    loads.map(({ timeRatio }) => timeRatio),
    1,
  ),
  strength: meanOr(
    loads.map(({ strength }) => strength),
    1,
  ),
});

const percent = (value: number): string => `${Math.round(100 * Math.abs(value))} %`;

/** What changed most in the bath or at the clock, so that its loads came out darker (1) or lighter (-1). */
function changed(
  run: ReturnType<typeof means>,
  usual: ReturnType<typeof means>,
  darker: 1 | -1,
): Cause | undefined {
  const kelvin = darker * (run.celsius - usual.celsius);
  const time = darker * (run.time / usual.time - 1);
  const strength = darker * (run.strength / usual.strength - 1);
  const causes: readonly (Cause & { readonly matters: number })[] = [
    {
      matters: kelvin / kelvinMatters,
      cause: "temperature",
      said: `the bath was ${shortNumber(kelvin, 2)} °C ${darker > 0 ? "warmer" : "cooler"} than before`,
    },
    {
      matters: time / timeMatters,
      cause: "time",
      said: `dips were ${percent(time)} ${darker > 0 ? "longer" : "shorter"} than before, compared with what the bath needed`,
    },
    {
      matters: strength / strengthMatters,
      cause: "strength",
      said: `the bath was ${percent(strength)} ${darker > 0 ? "stronger" : "weaker"} than before`,
    },
  ];
  const [{ matters, ...most }] = causes.toSorted((one, other) => other.matters - one.matters) as [
    (typeof causes)[number],
  ];
  return matters >= 1 ? most : undefined;
}

/** A lot of powder or dye that begins with a load. */
function newLot(before: JudgedLoad | undefined, first: JudgedLoad): string | undefined {
  for (const [name, key] of [
    ["powder", "powderLot"],
    ["dye", "dyeLot"],
  ] as const) {
    const [old, its] = [before?.row[key], first.row[key]];
    if (its !== undefined && old !== undefined && its !== old) return `${name} lot ${its} begins there`;
  }
  return undefined;
}

/** Why a run of loads differs from those that the limits rest on, as far as the rows show it. */
export function likelyCause(
  loads: readonly JudgedLoad[],
  { since, last, darker }: Drift,
  { celsius, limitReadings }: { readonly celsius: number; readonly limitReadings: number },
): Cause {
  const usual = loads.slice(0, limitReadings).filter((_, i) => i < since || i > last);
  const [its, before] = [means(loads.slice(since, last + 1), celsius), means(usual, celsius)];
  // Where lightness is in control, a change either way may be the cause.
  const known =
    (darker === false ? undefined : changed(its, before, 1)) ??
    (darker === true ? undefined : changed(its, before, -1));
  const lot = newLot(loads[since - 1], loads[since]!);
  if (known !== undefined) return lot === undefined ? known : { ...known, said: `${known.said}; ${lot} too` };
  return lot === undefined
    ? { cause: "not known", said: "nothing that was logged explains it" }
    : { cause: "new lot", said: lot };
}
