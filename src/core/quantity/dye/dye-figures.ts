import { type DyeKind, dyeKinds, kindsOfDye } from "./dye-kinds.js";

type Keys<Kind extends DyeKind> = (typeof dyeKinds)[Kind]["keys"];

/** Names of dye figures, without the unit. */
export type DyeFigure = keyof Keys<DyeKind>;

/** Figures of one kind of dye under keys that name the unit. */
export type FiguresOf<Kind extends DyeKind, Name extends DyeFigure, Value = number> = {
  readonly [N in Name as Keys<Kind>[N]]: Value;
};

/** Figures of a dye under keys that name the unit: `startMl` or `startG` for `start`. */
export type DyeFigures<Name extends DyeFigure, Value = number> = {
  [Kind in DyeKind]: FiguresOf<Kind, Name, Value>;
}[DyeKind];

/** An amount of dye under a key that names the unit: mL of concentrate or g of powder, measured cold. */
export type DyeAmount = DyeFigures<"amount">;

/**
 * Figures of a kind of dye under keys that name the unit.
 * @example
 * dyeFigures("liquid", { start: 600, left: 580 }) // => { startMl: 600, leftMl: 580 }
 * dyeFigures("powder", { amount: 12.3 }) // => { powderG: 12.3 }
 */
export const dyeFigures = <Name extends DyeFigure, Value>(
  kind: DyeKind,
  figures: Readonly<Record<Name, Value>>,
): DyeFigures<Name, Value> =>
  Object.fromEntries(
    Object.entries(figures).map(([name, figure]) => [dyeKinds[kind].keys[name as Name], figure]),
  ) as DyeFigures<Name, Value>;

/**
 * The kind of dye of some figures.
 * @example
 * kindWith({ concentrateMl: 584 }, "amount") // => "liquid"
 */
export function kindWith(figures: object, name: DyeFigure): DyeKind {
  const kind = kindsOfDye.find((one) => dyeKinds[one].keys[name] in figures);
  if (kind === undefined) throw new Error(`no ${name} of a dye among ${Object.keys(figures).join(", ")}`);
  return kind;
}

/**
 * One of the figures, whatever its unit.
 * @example
 * figureOfDye({ startMl: 600, leftMl: 580 }, "left") // => 580
 */
export const figureOfDye = <Name extends DyeFigure, Figures extends DyeFigures<Name, number | null>>(
  figures: Figures,
  name: Name,
): Figures extends DyeFigures<Name> ? number : number | null =>
  (figures as Readonly<Record<string, unknown>>)[dyeKinds[kindWith(figures, name)].keys[name]] as number;

/**
 * The unit of an amount with its noun.
 * @example
 * dyeUnitInWords("liquid") // => "mL of concentrate"
 */
export const dyeUnitInWords = (kind: DyeKind): string => `${dyeKinds[kind].unit} of ${dyeKinds[kind].what}`;

/**
 * An amount in a message.
 * @example
 * dyeInWords("liquid", 583.7) // => "584 mL of concentrate"
 * dyeInWords("powder", 12.34) // => "12.3 g of powder"
 */
export const dyeInWords = (kind: DyeKind, amount: number): string =>
  `${amount.toFixed(dyeKinds[kind].decimals)} ${dyeUnitInWords(kind)}`;
