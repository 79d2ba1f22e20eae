import { baseUnder } from "../../colour/base-under.js";
import type { Base, Batch, Bath, Dye, Order, Part, Shade } from "../../model/batch.js";
import type { OfferedOrder } from "./one-order.js";

/** Bases that a part is made of: those that its blank has a price for, else that of the dye's swatches, or the first. */
function basesOf({ blank }: Part, { bases }: Batch, dye: Dye | undefined): (Base | undefined)[] {
  if (blank === undefined || typeof blank === "number") return [dye === undefined ? bases[0] : dye.base];
  return bases.flatMap((base) => {
    if (!blank.has(base.name)) return [];
    // The dye has its base under its own reading.
    if (base.name === dye?.base?.name) return [dye.base];
    return [dye === undefined ? base : baseUnder(base, dye.reading)];
  });
}

/** The bath that a dye is offered from: as in the batch, but fresh, and in the first tank where it has none. */
export function freshBath({ baths, tanks }: Batch, dye: Dye): Bath | undefined {
  const [tank] = tanks;
  const own = baths.find((bath) => bath.dye === dye);
  if (own === undefined)
    return tank && { index: 0, tank, dye, start: { kind: "fresh" }, topUp: "none", after: "keep" };
  const { trial: _, ...untried } = own;
  return { ...untried, start: { kind: "fresh" } };
}

/** The bath with an order of that size as often as the sales ask for, or as often as the batch says. */
export const keptBath = (bath: Bath, quantity: number, salesPerYear: number | undefined): Bath => ({
  ...bath,
  after: "keep",
  ...(salesPerYear === undefined ? {} : { everyDays: (365 * quantity) / salesPerYear }),
});

/** A part, a colour and a base that are offered together; no shade: undyed. */
export interface OfferedItem {
  readonly part: Part;
  readonly shade?: Shade;
  readonly base?: Base;
}

/** Every part in every colour on each of its bases, and undyed. */
export const offeredItems = (batch: Batch, shades: readonly Shade[]): OfferedItem[] =>
  batch.parts.flatMap((part) =>
    [undefined, ...shades].flatMap((shade) =>
      basesOf(part, batch, shade?.dye).map((base) => ({
        part,
        ...(shade === undefined ? {} : { shade }),
        ...(base === undefined ? {} : { base }),
      })),
    ),
  );

/** An item as an order of so many good parts, dyed in a bath. */
export function orderOf(item: OfferedItem, quantity: number, bath: Bath | undefined): OfferedOrder {
  const order: Order = { index: 0, ...item, quantity };
  return { order, ...(bath === undefined ? {} : { bath }) };
}
