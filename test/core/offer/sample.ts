import type { Base, Batch, Dye, Part } from "../../../src/core/model/batch.js";
import type { OfferWish } from "../../../src/core/offer/offer-model.js";
import { batch, deep, hook, light, tray } from "../plan/sample.js";

export const white: Base = { name: "white", lab: [92.1, -0.6, -2.3] };
export const grey: Base = { name: "grey", lab: [38.4, 0.1, -0.9] };

const { ratePerSecond: _, ...unrated } = batch.dyes[0]!;

/** The sample's dye with colours. */
export const coral: Dye = {
  ...unrated,
  law: "auto",
  base: white,
  shelfLifeDays: 73,
  swatches: (
    [
      [15, 80.2, 21.7, 9.8],
      [30, 73.5, 33, 15.9],
      [60, 65.9, 44.6, 23],
      [180, 55.2, 55.9, 31.8],
    ] as const
  ).map(([seconds, ...lab]) => ({ seconds, colour: { kind: "lab", lab } })),
};

const priced = (part: Part, onWhite: number, onGrey: number): Part => ({
  ...part,
  blank: new Map([
    ["white", onWhite],
    ["grey", onGrey],
  ]),
});

/** The sample batch with colours, two bases and prices. */
export const shop: Batch = {
  ...batch,
  bases: [white, grey],
  dyes: [coral],
  parts: [priced(hook, 1.84, 1.62), priced(tray, 4.1, 3.8)],
  shades: [light, deep].map((shade) => ({ ...shade, dye: coral })),
  baths: batch.baths.map((bath) => ({ ...bath, dye: coral, everyDays: 7 })),
  orders: [],
  yield: 0.97,
  pricing: { overhead: 0.1, fees: 0.04, margin: 0.45, tax: 0.2, ending: 0.9 },
};

export const wish: OfferWish = {
  quantities: [1, 10, 50],
  listQuantity: 10,
  tolerance: 1.5,
  hoursPerWeek: 40,
  jug: 0,
};
