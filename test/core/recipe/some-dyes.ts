import { type MixDye, mixDyes } from "../../../src/core/recipe/mixture/mix-dye.js";
import { dyeModel } from "../../../src/core/uptake/shade/dye-model.js";
import { handling } from "../plan/sample.js";
import { seeded } from "../uptake/shade/invented-dyes.js";
import { asWritten, palette, type ReadBy } from "./competing-dyes.js";

/** Invented dyes as their owner knows them. */
export function someDyes(seed: number, count: number, by: ReadBy = "colorimeter"): readonly MixDye[] {
  const random = seeded(seed);
  const models = asWritten(palette(random, count), by, random).map((dye) => {
    const model = dyeModel(dye, handling);
    if (!model.ok) throw new Error(JSON.stringify(model.faults));
    return model.value;
  });
  const dyes = mixDyes(models, undefined);
  if (!dyes.ok) throw new Error(JSON.stringify(dyes.faults));
  return dyes.value;
}
