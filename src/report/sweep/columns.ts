import { largest } from "../../core/maths/extent.js";
import type { PlanResults } from "../../core/plan/results/plan-results.js";
import { dyeKinds, kindsOfDye } from "../../core/quantity/dye/dye-kinds.js";
import { duration } from "../../core/quantity/text/duration.js";
import type { Cell, Column } from "../table.js";
import { restsInCell } from "../words/assumed.js";
import { decimals } from "../words/digits.js";
import { moneyDigits } from "../words/money.js";

/** A column of results. `brief`: among those that people are shown unasked. */
export interface ResultColumn extends Column {
  readonly brief?: boolean;
  readonly of: (results: PlanResults) => Cell;
}

const number = (
  key: string,
  title: string,
  places: number,
  of: ResultColumn["of"],
  more: Partial<ResultColumn> = {},
): ResultColumn => ({ key, title, digits: (value) => decimals(value, places), of, ...more });

const brief = { brief: true } as const;
const upTo = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

/** The columns of results of some combinations: as many orders and baths as the largest of them has. */
export function resultColumns(all: readonly PlanResults[], currency: string | null): ResultColumn[] {
  const most = (of: (results: PlanResults) => number): number => largest(all.map(of), 0);
  const unit = currency === null ? "" : `_${currency}`;
  const money = (key: string, title: string, of: ResultColumn["of"], more: Partial<ResultColumn> = {}) => ({
    key: `${key}${unit}`,
    title: `${title}${currency === null ? "" : ` ${currency}`}`,
    digits: moneyDigits(currency),
    of,
    ...more,
  });
  const priced = all.some(({ cost }) => cost !== null);
  const orders = upTo(most(({ orderCostPerPart }) => orderCostPerPart.length));
  const baths = upTo(most((results) => results.baths.length));
  return [
    ...(priced
      ? [
          money("cost", "cost", ({ cost }) => cost, brief),
          money("cost_per_part", "a part", ({ costPerPart }) => costPerPart, brief),
          ...orders.map((i) =>
            money(
              `order_${i + 1}_cost_per_part`,
              `order ${i + 1} a part`,
              (r) => r.orderCostPerPart[i] ?? null,
            ),
          ),
        ]
      : []),
    number("minutes", "min", 1, ({ minutes }) => minutes, brief),
    number("operator_minutes", "hands min", 1, ({ operatorMinutes }) => operatorMinutes, brief),
    number("loads", "loads", 0, ({ loads }) => loads, brief),
    number("energy_kWh", "kWh", 3, ({ kWh }) => kWh, { ...brief, show: (value) => value.toFixed(2) }),
    ...kindsOfDye.flatMap((kind) => {
      const { keys, unit, tableDecimals } = dyeKinds[kind];
      return all.some((results) => results[keys.used] !== null)
        ? [number(`dye_used_${unit}`, `dye ${unit}`, tableDecimals, (r) => r[keys.used], brief)]
        : [];
    }),
    ...baths.flatMap((i) => [
      number(
        `bath_${i + 1}_life_loads`,
        `bath ${i + 1} lasts loads`,
        0,
        (r) => r.baths[i]?.lifeLoads ?? null,
        brief,
      ),
      number(
        `bath_${i + 1}_life_parts`,
        `bath ${i + 1} lasts parts`,
        0,
        (r) => r.baths[i]?.lifeParts ?? null,
      ),
    ]),
    number("shortest_dip_s", "shortest dip", 1, (r) => r.shortestDipSeconds, { ...brief, show: duration }),
    number("longest_dip_s", "longest dip", 1, (r) => r.longestDipSeconds, { ...brief, show: duration }),
    number("delta_E00", "dE00", 2, ({ largestDeltaE00 }) => largestDeltaE00),
    number("warnings", "warnings", 0, ({ warnings }) => warnings, brief),
    {
      key: "rests_on_assumed",
      title: "rests on assumed",
      of: ({ restsOnAssumed }) => restsInCell(restsOnAssumed),
    },
  ];
}
