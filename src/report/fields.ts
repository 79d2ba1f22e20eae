import type { KeyedFigure } from "../core/quantity/dye/dilution.js";
import { type DyeAmount, figureOfDye, kindWith } from "../core/quantity/dye/dye-figures.js";
import { dyeKinds } from "../core/quantity/dye/dye-kinds.js";
import type { Field } from "./row-table.js";
import type { Cell } from "./table.js";
import { digitsCelsius, digitsG, digitsL, digitsMl, trimmed } from "./words/digits.js";

/** A field of text; `key` is its header everywhere. */
export const textField = (key: string, value: Cell): Field => [{ key, title: key }, value];

/** Fields of a number in the unit that ends the header of CSV. */
export const celsiusField = (key: string, value: number): Field => [
  { key: `${key}_C`, title: key, unit: "°C", digits: digitsCelsius },
  value,
];
export const litresField = (key: string, value: number): Field => [
  { key: `${key}_L`, title: key, unit: "L", digits: digitsL },
  value,
];
export const mlField = (key: string, value: number): Field => [
  { key: `${key}_mL`, title: key, unit: "mL", digits: digitsMl },
  value,
];
export const gramsField = (key: string, value: number): Field => [
  { key: `${key}_g`, title: key, unit: "g", digits: digitsG },
  value,
];
/** A fraction as per cent, to 0.01 since it is an input as often as a result. */
export const percentField = (key: string, fraction: number): Field => [
  { key: `${key}_percent`, title: key, unit: "%", digits: (value) => trimmed(value, 2) },
  fraction * 100,
];
export const gramsPerLField = (key: string, value: number): Field => [
  { key: `${key}_g_per_L`, title: key, unit: "g/L", digits: (n) => trimmed(n, 2) },
  value,
];
export const litresPerKgField = (key: string, value: number): Field => [
  { key: `${key}_L_per_kg`, title: key, unit: "L/kg", digits: (n) => trimmed(n, 2) },
  value,
];

const amountFields = { mL: mlField, g: gramsField } as const;

/** An amount of dye under the name of its unit. */
export const dyeField = (dye: DyeAmount): Field => {
  const { unit, what } = dyeKinds[kindWith(dye, "amount")];
  return amountFields[unit](what, figureOfDye(dye, "amount"));
};

/** The dilution of a bath that was made up. */
export const dilutionField = (made: KeyedFigure): Field =>
  "fraction" in made ? percentField("dye", made.fraction) : gramsPerLField("dye", made.gramsPerL);
