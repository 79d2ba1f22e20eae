import { baseUnder } from "../colour/base-under.js";
import { done, error, type Fault, failed, type Outcome, warning } from "../fault.js";
import type { Base, Batch, Dye, Shade } from "../model/batch.js";
import { cautions } from "../plan/advice/cautions.js";
import { ofAnyDay } from "../plan/assumptions/any-day.js";
import type { SharedWork } from "../plan/run/shared-work.js";
import { dyeKinds } from "../quantity/dye/dye-kinds.js";
import { hasCurve } from "../uptake/shade/dye-model.js";
import { type DyeColours, offeredColours } from "./colours/offered-colours.js";
import { priceList } from "./list/price-list.js";
import type { Offer, OfferWish } from "./offer-model.js";
import { colourPays } from "./pays/colour-pays.js";
import { constraintOf } from "./scarce/constraint.js";

/**
 * What to sell: colours along each dye's curve, prices of every part in every shade of the batch at each quantity, when a
 * colour pays, and what holds the shop back. A dye without shades is priced in the colours found for it.
 */
export function offerOf(batch: Batch, wish: OfferWish, shared: SharedWork): Outcome<Offer> {
  const faults: Fault[] = [];
  const found = batch.dyes.flatMap((dye) => coloursOf(batch, dye, wish, shared, faults));
  const colours = found.flatMap((one) => one.colours);
  const shades = [
    ...batch.shades,
    ...batch.dyes.flatMap((dye) =>
      batch.shades.some((shade) => shade.dye === dye) ? [] : asShades(dye, colours, wish.tolerance),
    ),
  ];
  const list = priceList(batch, shades, wish, shared);
  if (list.items.length === 0)
    return failed(
      ...faults,
      ...list.faults,
      error("nothing-to-offer", ["parts"], "no part can be priced", "mend what the warnings name"),
    );
  const used = batch.dyes.filter((dye) => list.items.some(({ item }) => item.shade?.dye === dye));
  for (const dye of used)
    if (!batch.baths.some((bath) => bath.dye === dye))
      faults.push(
        warning(
          "no-bath",
          ["dyes", dye.name],
          `no bath holds dye "${dye.name}": it is priced in tank "${batch.tanks[0]!.name}", without top-ups`,
          `add a bath: - { tank: ..., dye: ${dye.name} }`,
        ),
      );
  return done(
    {
      batch: batch.name,
      currency: batch.currency ?? null,
      wish,
      colours,
      leftOut: found.flatMap((one) => one.leftOut),
      rows: list.items.map(({ row }) => row),
      pays: colourPays(batch, list.items, wish, shared),
      constraint: constraintOf(batch, list.items, wish),
      notCounted: [...new Set(list.items.flatMap(({ kept }) => kept.costs.notCounted))],
      // Rows on another base are marked as estimates themselves.
      assumptions: ofAnyDay(list.items.flatMap(({ kept }) => kept.costs.assumptions)).filter(
        ({ code }) => code !== "estimated-base",
      ),
      cautions: cautions({
        celsius: Math.max(...batch.dyes.map(({ celsius }) => celsius)),
        roomCelsius: batch.room.celsius,
        agitation: false,
        drying: batch.dryers.length > 0,
        powder: used.some(({ dilution }) => dyeKinds[dilution.kind].raisesDust),
        lid: false,
        coolToCelsius: batch.handling.coolToCelsius,
      }),
    },
    [...faults, ...list.faults],
  );
}

/** Colours of one dye on its own base, and on every other base of the batch that has a colour. */
function coloursOf(
  batch: Batch,
  dye: Dye,
  { tolerance }: OfferWish,
  shared: SharedWork,
  faults: Fault[],
): DyeColours[] {
  // A mix is offered in the shades that the batch gives it: no curve of its own is gone along.
  if (dye.mix !== undefined) {
    if (!batch.shades.some((shade) => shade.dye === dye))
      faults.push(
        warning(
          "no-colours",
          ["dyes", dye.name],
          `mix "${dye.name}" has no shades, so it is left out`,
          `add one under shades: { dye: ${dye.name}, time: 60 s }`,
        ),
      );
    return [];
  }
  const fitted = shared.dyes.fit(dye, batch.handling);
  faults.push(...fitted.faults);
  if (!fitted.ok) return [];
  const { model } = fitted.value;
  if (!hasCurve(model)) {
    faults.push(
      warning(
        "no-colours",
        ["dyes", dye.name, "swatches"],
        `dye "${dye.name}" has fewer than two swatches, so its colours are not known`,
        `dipwright swatches --dye ${dye.name} says which to dip`,
      ),
    );
    return [];
  }
  const others: Base[] = batch.bases
    .filter((base) => base.name !== dye.base?.name && base.lab !== undefined)
    .map((base) => baseUnder(base, dye.reading));
  return [undefined, ...others].flatMap((base) => {
    const made = offeredColours(model, batch.handling, tolerance, base);
    faults.push(...made.faults);
    return made.ok ? [made.value] : [];
  });
}

/** The colours found on a dye's own base, as shades that can be ordered. */
const asShades = (dye: Dye, colours: readonly DyeColours["colours"][number][], tolerance: number): Shade[] =>
  colours
    .filter((colour) => colour.dye === dye.name && !colour.estimated)
    .map(({ name, seconds }) => ({ name, dye, target: { kind: "time", seconds }, tolerance }));
