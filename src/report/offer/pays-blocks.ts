import type { ColourPays, Constraint, Offer } from "../../core/offer/offer-model.js";
import { type Block, paragraph } from "../report.js";
import { decimals, digitsPercent, trimmed } from "../words/digits.js";
import { money, moneyDigits } from "../words/money.js";

const rowsShown = 10;

const parts = (count: number | null): string => (count === null ? "never" : String(count));

/** When each colour pays, at list prices. */
export function paysBlocks({ pays, wish, currency }: Offer): Block[] {
  if (pays.length === 0) return [];
  const digits = moneyDigits(currency);
  const sales = wish.salesPerYear;
  const untimed = pays.filter(({ shelfLifeKnown }) => !shelfLifeKnown).map(({ dye }) => dye);
  const unpriced = [...new Set(pays.filter(({ tankPrice }) => tankPrice === null).map(({ tank }) => tank))];
  return [
    {
      kind: "heading",
      level: 2,
      text: `When a colour pays, at the prices for ${wish.listQuantity}`,
    },
    {
      kind: "table",
      table: {
        columns: [
          { key: "dye", title: "dye" },
          { key: "bath", title: "bath costs", digits },
          { key: "left", title: "a part leaves", digits },
          { key: "batch", title: "batch", align: "right" },
          { key: "year", title: "year", align: "right" },
          { key: "first", title: "first year", align: "right" },
          ...(sales === undefined ? [] : [{ key: "profit", title: "profit a year", digits }]),
        ],
        rows: pays.map((one) => [
          one.dye,
          one.bathCost,
          one.contributionPerPart,
          parts(one.batchParts),
          parts(one.yearParts),
          parts(one.firstYearParts),
          ...(sales === undefined ? [] : [one.yearProfit]),
        ]),
      },
    },
    {
      kind: "list",
      items: [
        "Batch: good parts that pay for a fresh bath, its set-up, heating and disposal.",
        `Year: good parts a year, in batches of ${wish.listQuantity}, that pay for all set-ups and for ${pays.map(makeUps).join(", ")}.`,
        `First year: the same with a tank of its own${unpriced.length > 0 ? ` (no price is given for ${unpriced.join(", ")}, so it counts as nothing)` : ""} and ${wish.jug > 0 ? `a jug of ${money(wish.jug, currency)}` : "a jug (--jug gives its price; it counts as nothing)"}.`,
        ...(sales === undefined
          ? ["--sales 12/month says what a year of a colour earns."]
          : [`Profit a year: at ${trimmed(sales, 1)} good parts of each colour, after overhead and fees.`]),
        ...(untimed.length > 0
          ? [`No shelf life is given for ${untimed.join(", ")}: one bath a year is assumed.`]
          : []),
      ],
    },
  ];
}

const makeUps = ({ dye, makeUpsPerYear }: ColourPays): string =>
  `${trimmed(makeUpsPerYear, 1)} ${makeUpsPerYear === 1 ? "bath" : "baths"} of ${dye}`;

const called = ({ resource, name }: Pick<Constraint, "resource" | "name">): string =>
  resource === "hands" ? "hands" : `${resource} ${name}`;

/** The resource that is used most, and what an hour of it earns. */
export function constraintBlocks({ constraint, wish, currency }: Offer): Block[] {
  if (constraint === null) return [];
  const { uses, used, hoursThere, nextHour, ranked } = constraint;
  const what = called(constraint);
  const of =
    wish.salesPerYear === undefined
      ? `one batch of ${wish.listQuantity} of each`
      : `a month of sales in batches of ${wish.listQuantity}`;
  const there = `${trimmed(hoursThere, 0)} h a month (${trimmed(wish.hoursPerWeek, 1)} h a week)`;
  const verdict =
    used === null
      ? `If all that is made can be sold, one more hour of ${what} brings ${money(nextHour, currency)}. --sales 12/month says whether the hours suffice.`
      : used > 1
        ? `The sales take ${digitsPercent(used)} % of its ${there}: ${what} cannot do them all, and one more hour brings ${money(nextHour, currency)}.`
        : `The sales take ${digitsPercent(used)} % of its ${there}, so one more hour brings nothing: what is scarce is sales.`;
  return [
    { kind: "heading", level: 2, text: "What holds the shop back" },
    paragraph(
      `Most used, for ${of}, is ${what}: ${uses.map((use) => `${called(use)} ${decimals(use.hours, 1)} h`).join(", ")}. ${verdict}`,
    ),
    {
      kind: "table",
      table: {
        columns: [
          { key: "part", title: "part" },
          { key: "shade", title: "shade" },
          { key: "base", title: "base" },
          { key: "hands", title: "profit per hour of hands", digits: moneyDigits(currency) },
          { key: "tank", title: "per hour of its tank", digits: moneyDigits(currency) },
        ],
        rows: ranked
          .slice(0, rowsShown)
          .map(({ part, shade, base, profitPerHour, profitPerTankHour }) => [
            part,
            shade,
            base,
            profitPerHour,
            profitPerTankHour,
          ]),
      },
    },
    paragraph(
      `${ranked.length > rowsShown ? `The best ${rowsShown} of ${ranked.length}; JSON has them all. ` : ""}Profit is what the price leaves after tax, fees, overhead and all costs, your own hours at their rate among them.`,
    ),
  ];
}
