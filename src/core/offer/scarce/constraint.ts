import { scarceHours } from "../../cost/price/scarce-hours.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { Batch } from "../../model/batch.js";
import { freshBath } from "../list/offered-orders.js";
import type { PricedItem } from "../list/price-list.js";
import type { Constraint, OfferWish, PriceRow, ResourceUse } from "../offer-model.js";
import { mixOf } from "../pays/colour-pays.js";

interface Demanded {
  readonly row: PriceRow;
  readonly tank: string;
  /** Good parts a month, or of one batch of each. */
  readonly parts: number;
}

const minutesKeys = {
  hands: "handsOnMinutes",
  tank: "tankMinutes",
  dryer: "dryerMinutes",
} as const;

const weeksPerMonth = 365 / 12 / 7;

/**
 * Which of hands, tanks and dryer is used most, all working the same hours, and what one more hour of it brings: dyed
 * parts at their list prices, in batches of the list quantity, as many of each colour as the sales say.
 */
export function constraintOf(
  batch: Batch,
  items: readonly PricedItem[],
  { listQuantity, salesPerYear, hoursPerWeek }: OfferWish,
): Constraint | null {
  const demanded: Demanded[] = batch.dyes.flatMap((dye) => {
    const own = items.filter(
      ({ item, row }) =>
        item.shade?.dye === dye && row.quantity === listQuantity && row.profitPerPart !== null,
    );
    const weights = mixOf(batch, own);
    const all = exactSumOf(weights, (weight) => weight);
    const tank = freshBath(batch, dye)?.tank.name ?? "";
    return own.map(({ row }, i) => ({
      row,
      tank,
      parts: salesPerYear === undefined ? listQuantity : (salesPerYear / 12) * (weights[i]! / all),
    }));
  });
  if (demanded.length === 0) return null;
  const hoursOf = (of: (one: Demanded) => number): number =>
    exactSumOf(demanded, (one) => (one.parts * of(one)) / 60);
  const dryer = batch.dryers[0];
  const uses: ResourceUse[] = [
    { resource: "hands", name: "hands", hours: hoursOf(({ row }) => row.handsOnMinutes) },
    ...[...new Set(demanded.map(({ tank }) => tank))].map(
      (name): ResourceUse => ({
        resource: "tank",
        name,
        hours: hoursOf((one) => (one.tank === name ? one.row.tankMinutes : 0)),
      }),
    ),
    ...(dryer === undefined
      ? []
      : [
          {
            resource: "dryer" as const,
            name: dryer.name,
            hours: hoursOf(({ row }) => row.dryerMinutes),
          },
        ]),
  ];
  const most = uses.reduce((busiest, use) => (use.hours > busiest.hours ? use : busiest));
  const minutesKey = minutesKeys[most.resource];
  const minutesOf = ({ row, tank }: Demanded): number =>
    most.resource === "tank" && tank !== most.name ? 0 : row[minutesKey];
  const using = demanded.filter((one) => minutesOf(one) > 0);
  const hoursThere = hoursPerWeek * weeksPerMonth;
  const best = scarceHours(
    using.map((one) => ({
      contribution: one.row.profitPerPart!,
      hours: minutesOf(one) / 60,
      ...(salesPerYear === undefined ? {} : { demand: one.parts }),
    })),
    hoursThere,
  )!;
  return {
    ...most,
    uses,
    hoursThere,
    used: salesPerYear === undefined ? null : most.hours / hoursThere,
    nextHour: best.nextHour,
    ranked: demanded
      .map(({ row }) => row)
      .sort((a, b) => b.profitPerPart! / b[minutesKey] - a.profitPerPart! / a[minutesKey])
      .map(({ part, shade, base, profitPerHour, profitPerTankHour }) => ({
        part,
        shade,
        base,
        profitPerHour: profitPerHour!,
        profitPerTankHour: profitPerTankHour!,
      })),
  };
}
