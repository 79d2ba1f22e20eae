import { contributionPerPart } from "../../cost/price/break-even.js";
import { mixBreakEven } from "../../cost/price/mix-break-even.js";
import { type ColourYear, yearlyBreakEven, yearlyProfit } from "../../cost/price/yearly-break-even.js";
import { exactSumOf } from "../../maths/exact-sum.js";
import type { Batch, Dye, Pricing } from "../../model/batch.js";
import type { SharedWork } from "../../plan/run/shared-work.js";
import { freshBath, orderOf } from "../list/offered-orders.js";
import { workOneOrder } from "../list/one-order.js";
import type { PricedItem } from "../list/price-list.js";
import type { ColourPays, OfferWish } from "../offer-model.js";

/** How often an item is sold for each of the others of its colour: as the orders of the batch have them, else alike. */
export function mixOf({ orders }: Batch, items: readonly PricedItem[]): number[] {
  const ordered = items.map(({ item: { part, shade, base } }) =>
    exactSumOf(
      orders.filter(
        (order) =>
          order.part === part && order.shade?.name === shade?.name && order.base?.name === base?.name,
      ),
      ({ quantity }) => quantity,
    ),
  );
  return ordered.some((quantity) => quantity > 0) ? ordered : items.map(() => 1);
}

/**
 * When each colour has earned its bath: what an item leaves is its list price less fees and less what each part costs in a
 * batch of the list quantity, bath, set-up and heating left out.
 */
export function colourPays(
  batch: Batch,
  items: readonly PricedItem[],
  wish: OfferWish,
  shared: SharedWork,
): ColourPays[] {
  const { pricing } = batch;
  if (pricing === undefined) return [];
  return batch.dyes.flatMap((dye) => {
    const own = items.filter(
      ({ item, row }) =>
        item.shade?.dye === dye && row.quantity === wish.listQuantity && row.netPrice !== null,
    );
    return own.length === 0 ? [] : [paysOf(batch, pricing, dye, own, wish, shared)];
  });
}

function paysOf(
  batch: Batch,
  pricing: Pricing,
  dye: Dye,
  own: readonly PricedItem[],
  wish: OfferWish,
  shared: SharedWork,
): ColourPays {
  const weights = mixOf(batch, own);
  const sold = exactSumOf(weights, (weight) => weight);
  const { fixed } = own[0]!.fresh.costs.colours[0]!;
  const { makeUp, setUp, heating, disposal } = fixed;
  const contributions = own.map(({ row, fresh }) =>
    contributionPerPart({ netPrice: row.netPrice!, ...pricing }, fresh.costs.colours[0]!.variablePerPart),
  );
  const full = 1 + pricing.overhead;
  const bathCost = makeUp + setUp + heating + disposal;
  const products = weights.map((weight, i) => ({ weight, contribution: contributions[i]! }));
  const bath = freshBath(batch, dye)!;
  const { everyDays: _, ...ageless } = bath;
  const worn = workOneOrder(
    batch,
    orderOf(own[0]!.item, wish.listQuantity, { ...ageless, after: "keep" }),
    shared,
  );
  const year: ColourYear = {
    contribution: exactSumOf(products, (one) => one.weight * one.contribution) / sold,
    perBatch: full * (setUp + heating),
    batch: wish.listQuantity,
    perMakeUp: full * (makeUp + disposal),
    makeUpsByAge: Math.max(1, 365 / (dye.shelfLifeDays ?? 365)),
    partsPerMakeUp: (worn.ok ? worn.value.lifeParts : undefined) ?? Number.POSITIVE_INFINITY,
    once: 0,
  };
  const tankPrice = bath.tank.equipment?.price ?? null;
  const even = mixBreakEven(products, full * bathCost);
  return {
    dye: dye.name,
    tank: bath.tank.name,
    bathCost,
    contributionPerPart: year.contribution,
    batchParts: even === undefined ? null : wholeParts(even.composites * sold),
    mix: own.map(({ row: { part, shade, base, paysFromParts } }, i) => ({
      part,
      shade,
      base,
      weight: weights[i]! / sold,
      batchParts: paysFromParts,
    })),
    makeUpsPerYear: year.makeUpsByAge,
    shelfLifeKnown: dye.shelfLifeDays !== undefined,
    yearParts: yearlyBreakEven(year) ?? null,
    firstYearParts: yearlyBreakEven({ ...year, once: full * ((tankPrice ?? 0) + wish.jug) }) ?? null,
    tankPrice,
    yearProfit: wish.salesPerYear === undefined ? null : yearlyProfit(wish.salesPerYear, year),
  };
}

/** A quotient that arithmetic left a hair above a whole number is that number. */
const wholeParts = (parts: number): number => Math.ceil(parts * (1 - 1e-12));
