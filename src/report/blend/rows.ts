import { figureOfDye } from "../../core/quantity/dye/dye-figures.js";
import type { RecipeDye } from "../../core/recipe/blend/described.js";
import type { Cell, Column, Table } from "../table.js";
import { decimals, trimmed } from "../words/digits.js";
import type { BlendFacts } from "./facts.js";

const places = (count: number) => (value: number) => decimals(value, count);
const number = (key: string, count: number): Column => ({ key, title: key, digits: places(count) });
const text = (key: string): Column => ({ key, title: key });

const amountIn = (dye: RecipeDye, key: "concentrateMl" | "powderG"): Cell =>
  key in dye ? figureOfDye(dye, "amount") : null;

/** A row for each dye of each recipe. */
export function blendRows({ blend, currency, base }: BlendFacts): Table {
  return {
    columns: [
      text("recipe"),
      text("group"),
      text("base"),
      text("dye"),
      { key: "strength_pct", title: "strength", digits: places(2) },
      number("concentrate_mL", 2),
      number("powder_g", 2),
      number("water_mL", 0),
      number("jar_concentrate_mL", 2),
      number("jar_powder_g", 2),
      number("jar_water_mL", 1),
      { key: "dip_s", title: "dip", digits: (value) => trimmed(value, 1) },
      { key: "bath_C", title: "bath", digits: (value) => trimmed(value, 1) },
      ...["L", "a", "b"].map((key) => number(key, 2)),
      number("delta_E00", 2),
      number("delta_E00_A", 2),
      number("delta_E00_F11", 2),
      number("doubt95_E00", 2),
      number("change_per_2_percent_E00", 2),
      number(`cost_per_L_${currency ?? "money"}`, 3),
    ],
    rows: blend.recipes.flatMap((recipe, n) =>
      recipe.dyes.map((dye, i) => [
        n + 1,
        recipe.group + 1,
        base,
        dye.dye,
        100 * dye.strength,
        amountIn(dye, "concentrateMl"),
        amountIn(dye, "powderG"),
        recipe.waterMl,
        amountIn(recipe.jar.dyes[i]!, "concentrateMl"),
        amountIn(recipe.jar.dyes[i]!, "powderG"),
        recipe.jar.waterMl,
        recipe.seconds,
        recipe.celsius,
        ...recipe.lab,
        recipe.deltaE00,
        recipe.deltaE00ByIlluminant?.A ?? null,
        recipe.deltaE00ByIlluminant?.F11 ?? null,
        recipe.doubt95,
        recipe.changePer2Percent[i]!,
        recipe.costPerL,
      ]),
    ),
  };
}
