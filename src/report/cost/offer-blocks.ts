import type { Block } from "../report.js";
import { money } from "../words/money.js";
import type { CostEntry } from "./entry.js";

/** What a colour must sell to pay, and what the same part costs on another base. */
function offers({ batch, colours, orders }: CostEntry, currency: string | null): string[] {
  const amount = (value: number): string => money(value, currency);
  return [
    ...colours.flatMap(({ dye, fixed, variablePerPart, netPrice, breakEvenParts }) => {
      if (netPrice === null) return [];
      const { makeUp, setUp, heating, disposal } = fixed;
      const before = `${batch}: a fresh bath of ${dye} costs ${amount(makeUp + setUp + heating + disposal)} before the first part, and each good part ${amount(variablePerPart)} more`;
      return breakEvenParts === null
        ? [`${before}; at ${amount(netPrice)} before tax, with overhead and fees, no quantity pays for it.`]
        : [
            `${before}; at ${amount(netPrice)} before tax, with overhead and fees, it pays from ${breakEvenParts} parts on.`,
          ];
    }),
    ...orders.flatMap(({ order, part, base, otherBases }) =>
      (otherBases ?? []).flatMap(({ base: other, costPerPart, surcharge }) =>
        surcharge === null
          ? []
          : [
              `${batch} ${order}, ${part}: on ${other} a good part costs ${amount(costPerPart)}; for equal profit the price on ${base} before tax must lie ${amount(Math.abs(surcharge))} ${surcharge < 0 ? "below" : "above"} that on ${other}.`,
            ],
      ),
    ),
  ];
}

/** For one or a few batches only: over many the list would hide the table. */
export const offerBlocks = (entries: readonly CostEntry[], currency: string | null): Block[] => {
  const items = entries.length > 3 ? [] : entries.flatMap((entry) => offers(entry, currency));
  return items.length === 0
    ? []
    : [
        { kind: "heading", level: 2, text: "What must be sold" },
        { kind: "list", items },
      ];
};
