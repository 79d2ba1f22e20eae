import { mapped } from "../../mapped.js";
import type { Dye } from "../../model/batch.js";
import { type DyeFigure, dyeFigures } from "../../quantity/dye/dye-figures.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import type { MixFigures } from "../plan-model.js";

/** Figures of each dye of a mix under keys that name the unit; nothing for a single dye. */
export const mixFigures = <Name extends DyeFigure>(
  { mix }: Dye,
  figures: Readonly<Record<Name, readonly number[]>>,
): MixFigures<Name> =>
  mix === undefined
    ? {}
    : {
        mix: mapped(mix.parts, ({ dye, dilution }, i) => ({
          dye: dye.name,
          ...dyeFigures(
            dilution.kind,
            Object.fromEntries(
              Object.entries<readonly number[]>(figures).map(([name, each]) => [name, each[i]!]),
            ) as Record<Name, number>,
          ),
        })),
      };

/** "straw 76.8 mL/L, rose 38.4 mL/L". */
export const mixInWords = ({ parts }: NonNullable<Dye["mix"]>): string =>
  mapped(parts, ({ dye, dilution }) =>
    dilution.kind === "liquid"
      ? `${dye.name} ${shortNumber(1000 * dilution.fraction, 3)} mL/L`
      : `${dye.name} ${shortNumber(dilution.gramsPerL, 3)} g/L`,
  ).join(", ");
