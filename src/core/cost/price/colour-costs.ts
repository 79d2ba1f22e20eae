import { mapped } from "../../mapped.js";
import { exactSum, exactSumOf } from "../../maths/exact-sum.js";
import type { Batch } from "../../model/batch.js";
import { dyeCost } from "../dye-cost.js";
import { type BathUse, type CostItem, contentItems, loadItems, runningItems, setUpItems } from "../items.js";
import type { CostLine } from "../line/cost-lines.js";
import { breakEven, type ColourFixedCosts } from "./break-even.js";

/** What a colour costs whatever its quantity, what each part of it costs more, and how many pay for it. */
export interface ColourCosts {
  readonly dye: string;
  /** Good parts of this batch. */
  readonly parts: number;
  readonly fixed: ColourFixedCosts;
  /** Of a good part, dye of the make-up not counted. */
  readonly variablePerPart: number;
  /** Mean over the parts of the price with its ending, less tax; null without pricing. */
  readonly netPrice: number | null;
  /** Good parts from which the colour pays; null without pricing or where no quantity does. */
  readonly breakEvenParts: number | null;
}

/** A bath with the dye it is made up with when fresh, and the dye that top-ups add; mL or g. */
export interface ColourUse extends BathUse {
  readonly freshDye: number;
  readonly topUpDye: number;
  /** The same of each dye of a mix. */
  readonly freshDyeEach?: readonly number[] | undefined;
  readonly topUpDyeEach?: readonly number[] | undefined;
}

/** What is known of an order once it is priced. */
interface Sold {
  readonly order: number;
  readonly quantity: number;
  readonly price?: number;
}

const paid = (items: readonly CostItem[]): number => exactSumOf(items, ({ amount }) => amount);

/** What one bath costs before its first part, whole: each item is in one of the four, whichever line it is on. */
function fixedOf(use: ColourUse): ColourFixedCosts {
  const setUp = setUpItems(use);
  const content = contentItems({
    ...use,
    fresh: true,
    life: undefined,
    dyeLeft: use.freshDye,
    dyeLeftEach: use.freshDyeEach,
  });
  const on = (items: readonly CostItem[], line: CostLine): number =>
    paid(items.filter((item) => item.line === line));
  const beside = (items: readonly CostItem[], line: CostLine): number =>
    paid(items.filter((item) => item.line !== line));
  return {
    makeUp: beside(content, "disposal"),
    setUp: beside(setUp, "energy"),
    heating: on(setUp, "energy"),
    disposal: on(content, "disposal"),
  };
}

/**
 * Costs of each dye of a batch as one that offers it sees them: a whole fresh bath, its set-up, heating and
 * disposal are paid before the first part; blanks, hands, rinsing, drying, holding and top-up come with each.
 * `shared`: what each order pays for blanks, drying and per part, by order index.
 */
export function colourCosts(
  batch: Batch,
  uses: readonly ColourUse[],
  shared: readonly number[],
  orders: readonly Sold[],
): ColourCosts[] {
  return mapped([...new Set(mapped(uses, (use) => use.dye))], (dye) => {
    const own = uses.filter((use) => use.dye === dye);
    const sold = batch.orders.flatMap((order) => (order.shade?.dye === dye ? [orders[order.index]!] : []));
    const parts = exactSumOf(sold, (order) => order.quantity);
    const fixed = mapped(own, fixedOf);
    const sum = (of: (costs: ColourFixedCosts) => number): number => exactSumOf(fixed, of);
    const variable = exactSum([
      ...mapped(sold, (order) => shared[order.order - 1]!),
      ...own.flatMap((use) => [
        paid(loadItems(use).filter((item) => item.line !== "dye")),
        paid(runningItems(use)),
        use.topUpDyeEach === undefined
          ? ((dye.price ?? 0) * use.topUpDye) / 1000
          : dyeCost(dye, use.topUpDyeEach),
      ]),
    ]);
    const costs: ColourFixedCosts = {
      makeUp: sum((of) => of.makeUp),
      setUp: sum((of) => of.setUp),
      heating: sum((of) => of.heating),
      disposal: sum((of) => of.disposal),
    };
    const { pricing } = batch;
    // What is left of the price with its ending when the tax is paid.
    const netPrice = pricing
      ? exactSumOf(sold, (order) => ((order.price ?? 0) / (1 + pricing.tax)) * order.quantity) / parts
      : null;
    const pays =
      pricing && netPrice !== null ? breakEven(costs, { netPrice, ...pricing }, variable / parts) : undefined;
    return {
      dye: dye.name,
      parts,
      fixed: costs,
      variablePerPart: variable / parts,
      netPrice,
      breakEvenParts: pays?.parts ?? null,
    };
  });
}
