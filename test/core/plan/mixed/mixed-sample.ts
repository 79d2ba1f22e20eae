import type { Base, Batch, Bath, Dye, Mix, Shade, TopUpRule } from "../../../../src/core/model/batch.js";
import { mixDyes } from "../../../../src/core/recipe/mixture/mix-dye.js";
import { dyeModel } from "../../../../src/core/uptake/shade/dye-model.js";
import { batch, bath, dye, handling, hook, order, tank } from "../sample.js";

export const natural: Base = { name: "natural", lab: [94.4, -0.8, 1.2] };

const swatches = (...labs: readonly (readonly [number, number, number])[]): Dye["swatches"] =>
  labs.map((lab, i) => ({ seconds: [15, 30, 60, 180][i]!, colour: { kind: "lab" as const, lab } }));

const { ratePerSecond: _rate, ...unfitted } = dye;
const own: Dye = { ...unfitted, base: natural, law: "auto" };

export const straw: Dye = {
  ...own,
  name: "straw",
  price: 39,
  swatches: swatches([87.8, -2.2, 41.8], [84.5, 2.0, 57.1], [79.6, 7.5, 62.1], [75.1, 11.4, 58.8]),
};
export const rose: Dye = {
  ...own,
  name: "rose",
  price: 46,
  swatches: swatches([80.2, 29.4, -5.4], [72.1, 41.8, -7.4], [65.2, 46.5, -8.3], [58.5, 45.3, -8.0]),
};
export const lagoon: Dye = {
  ...own,
  name: "lagoon",
  price: 58,
  dilution: { kind: "liquid", fraction: 0.125 },
  swatches: swatches([66.4, -24.3, -42.0], [59.8, -16.6, -51.6], [55.3, -8.2, -56.1], [51.2, 1.4, -59.2]),
};

/** A mix of some dyes, each of a strength relative to its own bath, as the batch file's reader makes it. */
export function mixOf(
  parts: readonly (readonly [Dye, number])[],
  trials: Mix["trials"] = [],
): Dye & { readonly mix: Mix } {
  const made = parts.map(([of, strength]) => ({
    dye: of,
    strength,
    dilution: {
      kind: "liquid" as const,
      fraction: strength * (of.dilution as { fraction: number }).fraction,
    },
  }));
  return {
    ...own,
    name: "moss",
    swatches: [],
    dilution: { kind: "liquid", fraction: made.reduce((sum, { dilution }) => sum + dilution.fraction, 0) },
    uptakePerDm2: parts.reduce((sum, [of, strength]) => sum + strength * of.uptakePerDm2, 0),
    mix: { parts: made, trials },
    ...({ price: undefined } as object),
  };
}

export const shadeOf = (of: Dye, seconds: number, tolerance = 1.5): Shade => ({
  name: `of ${seconds} s`,
  dye: of,
  target: { kind: "time", seconds },
  tolerance,
});

/** One bath of a dye and orders for some of its shades. */
export const batchOf = (
  of: Dye,
  shades: readonly Shade[],
  { topUp = "strength", ...change }: Partial<Bath> & { readonly topUp?: TopUpRule } = {},
): Batch => ({
  ...batch,
  bases: [natural],
  dyes: [...(of.mix?.parts.map((part) => part.dye) ?? []), of],
  shades,
  baths: [{ ...bath, tank, dye: of, topUp, ...change }],
  orders: shades.map((shade, i) => ({ ...order(i, hook, shade, 160), base: natural })),
});

/** Dyes as the arithmetic of mixtures takes them. */
export function mixable(dyes: readonly Dye[]) {
  const models = dyes.map((one) => {
    const model = dyeModel(one, handling);
    if (!model.ok) throw new Error(JSON.stringify(model.faults));
    return model.value;
  });
  const made = mixDyes(models, natural);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}
