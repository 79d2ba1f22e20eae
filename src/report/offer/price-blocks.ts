import { undyed } from "../../core/model/undyed.js";
import { type Offer, type PriceRow, workDaysPerWeek } from "../../core/offer/offer-model.js";
import { dyeKinds } from "../../core/quantity/dye/dye-kinds.js";
import { type Block, paragraph } from "../report.js";
import type { Cell, Column, Table } from "../table.js";
import { decimals, significant, trimmed } from "../words/digits.js";
import { moneyDigits } from "../words/money.js";

/** Bases that fit beside each other on a terminal. */
const basesAbreast = 2;

const shadeOf = ({ shade }: PriceRow): string => (shade === undyed ? "undyed" : shade);

const isPriced = (rows: readonly PriceRow[]): boolean => rows.some(({ price }) => price !== null);

/** Pairs of bases, each for a table of its own. */
function basePairs(rows: readonly PriceRow[]): (string | null)[][] {
  const bases = [...new Set(rows.map(({ base }) => base))];
  return Array.from({ length: Math.ceil(bases.length / basesAbreast) }, (_, i) =>
    bases.slice(i * basesAbreast, (i + 1) * basesAbreast),
  );
}

/** One part by colour and quantity, its bases side by side: cost and price with a kept bath, price with a fresh one. */
function pricesOf(
  rows: readonly PriceRow[],
  bases: readonly (string | null)[],
  { wish, currency }: Pick<Offer, "wish" | "currency">,
): Table {
  const digits = moneyDigits(currency);
  const priced = isPriced(rows);
  const columns = bases.flatMap((base): Column[] => {
    const mark = rows.some((row) => row.base === base && row.estimated) ? "*" : "";
    const title = (what: string) => [`${base ?? ""}${base === null ? "" : mark}`, what].join(" ").trim();
    return (priced ? ["cost", "price", "fresh"] : ["cost", "fresh"]).map((what) => ({
      key: title(what),
      title: title(what),
      digits,
    }));
  });
  const own = rows.filter(({ base }) => bases.includes(base));
  const shades = [...new Set(own.map(({ shade }) => shade))];
  return {
    columns: [{ key: "shade", title: "shade" }, { key: "parts", title: "parts" }, ...columns],
    rows: shades.flatMap((shade) =>
      wish.quantities.map((quantity, i): Cell[] => [
        i === 0 ? (shade === undyed ? "undyed" : shade) : "",
        quantity,
        ...bases.flatMap((base) => {
          const row = own.find(
            (one) => one.shade === shade && one.base === base && one.quantity === quantity,
          );
          const { costPerPart = null, price = null, freshBath } = row ?? {};
          return priced
            ? [costPerPart, price, freshBath?.price ?? null]
            : [costPerPart, freshBath?.costPerPart ?? null];
        }),
      ]),
    ),
  };
}

/** Hands and dye of a part, on the base of its dye's swatches, and how many at the list quantity pay for a bath and fit a day. */
const takesOf = (rows: readonly PriceRow[], { quantities, listQuantity }: Offer["wish"]): Table => {
  const own = rows.filter(({ dye, estimated }) => dye !== null && !estimated);
  return {
    columns: [
      { key: "part", title: "part" },
      { key: "shade", title: "shade" },
      ...quantities.map((quantity) => ({
        key: String(quantity),
        title: String(quantity),
        digits: (minutes: number) => decimals(minutes, 1),
      })),
      { key: "dye", title: "dye", align: "right" },
      { key: "pays", title: "pays from" },
      { key: "day", title: "a day" },
    ],
    rows: own
      .filter(({ quantity }) => quantity === listQuantity)
      .map((at) => [
        at.part,
        shadeOf(at),
        ...quantities.map(
          (quantity) =>
            own.find(
              (row) =>
                row.quantity === quantity &&
                row.part === at.part &&
                row.shade === at.shade &&
                row.base === at.base,
            )?.handsOnMinutes ?? null,
        ),
        `${significant(at.dyePerPart, 2)} ${dyeKinds[at.dyeKind!].unit}`,
        at.paysFromParts,
        Math.floor(at.partsPerDay!),
      ]),
  };
};

/** How the prices come about, and who pays for the make-up. */
function explained({ rows, wish }: Offer): string[] {
  const every =
    wish.salesPerYear === undefined
      ? "repeated as often as the batch file says (every:)"
      : `repeated as often as ${trimmed(wish.salesPerYear, 1)} parts a year ask for`;
  return [
    `${isPriced(rows) ? "Cost and price" : "Cost"} of each good part, in a batch of its own of so many parts, with a kept bath. Fresh: the ${isPriced(rows) ? "price" : "cost"} where the bath is made up for this batch alone.`,
    ...(isPriced(rows) ? [] : ["Without pricing: in the batch file there are costs only."]),
    `Who pays for the make-up: with a kept bath the batch, ${every}, pays the share of the bath's life that it uses; with a fresh bath it pays all of it, and its disposal.`,
    ...(rows.some(({ dye, everyDays }) => dye !== null && everyDays === null)
      ? [
          "How often a batch is repeated is not known of every bath: its shelf life is left out of the kept price. Write every: 7 d for the bath, or --sales.",
        ]
      : []),
    ...(rows.some(({ estimated }) => estimated)
      ? ["* The dye's swatches are on another base: the colour here is an estimate."]
      : []),
    ...(rows.some(({ reachable }) => !reachable)
      ? ["Where a dyed part has a cost and no price, its dye does not reach the shade on that base."]
      : []),
  ];
}

/** Prices by quantity with the cost behind them, and what a part takes of hands and dye. */
export function priceBlocks(offer: Offer): Block[] {
  const { rows, wish, currency } = offer;
  const parts = [...new Set(rows.map(({ part }) => part))];
  const costed = rows.some(({ costPerPart }) => costPerPart !== null);
  const priced = isPriced(rows);
  const takes = takesOf(rows, wish);
  return [
    { kind: "heading", level: 2, text: currency === null ? "Price list" : `Price list in ${currency}` },
    ...(costed
      ? [{ kind: "list" as const, items: explained(offer) }]
      : [paragraph("No price of anything is given, so nothing is costed.")]),
    ...(costed ? parts : []).flatMap((part): Block[] => {
      const own = rows.filter((row) => row.part === part);
      return [
        paragraph(`${part}:`),
        ...basePairs(own).map((bases): Block => ({ kind: "table", table: pricesOf(own, bases, offer) })),
      ];
    }),
    ...(takes.rows.length === 0
      ? []
      : [
          {
            kind: "heading" as const,
            level: 2 as const,
            text: "What a part takes: minutes of hands by parts in a batch, and dye",
          },
          { kind: "table" as const, table: takes },
          paragraph(
            `Dye: taken up and dragged out${priced ? `. Pays from: parts that pay for a fresh bath at the price for ${wish.listQuantity}` : ""}. A day: parts that hands, tank and dryer can do in ${trimmed(wish.hoursPerWeek / workDaysPerWeek, 1)} h, in batches of ${wish.listQuantity}.`,
          ),
        ]),
  ];
}
