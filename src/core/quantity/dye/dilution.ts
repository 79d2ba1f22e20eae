import type { Dilution } from "../../model/batch.js";
import { type DyeKind, dyeKinds } from "./dye-kinds.js";

/**
 * A dilution of a kind of dye from its figure: volume fraction, or grams per litre.
 * @example
 * dilutionOf("powder", 20) // => { kind: "powder", gramsPerL: 20 }
 */
export const dilutionOf = (kind: DyeKind, figure: number): Dilution =>
  ({ kind, [dyeKinds[kind].dilutionKey]: figure }) as Dilution;

/**
 * The figure of a dilution.
 * @example
 * figureOf({ kind: "liquid", fraction: 0.1 }) // => 0.1
 */
export const figureOf = (dilution: Dilution): number =>
  (dilution as Readonly<Record<string, unknown>>)[dyeKinds[dilution.kind].dilutionKey] as number;

/** The figure of a dilution under its key, as in reports. */
export type KeyedFigure<Kind extends DyeKind = DyeKind> = {
  [K in Kind]: Omit<Extract<Dilution, { readonly kind: K }>, "kind">;
}[Kind];

export function keyedFigure({ kind: _, ...figure }: Dilution): KeyedFigure {
  return figure;
}

/** The dilution of a bath of a strength relative to a fresh one. */
export const atStrength = (fresh: Dilution, strength: number): Dilution =>
  dilutionOf(fresh.kind, figureOf(fresh) * strength);

/** Share of the bath's volume that the dye takes up; powder takes none. */
export const volumeShare = (dilution: Dilution): number =>
  dyeKinds[dilution.kind].takesRoom ? figureOf(dilution) : 0;

/**
 * A dilution in words, so that nobody takes 1:9 for one ninth.
 *
 * Common practice, no source: `d:w` is d volumes of dye with w of water, a fraction of d/(d + w).
 * @example
 * dilutionInWords({ kind: "liquid", fraction: 0.1 }) // => "1 part dye + 9 parts water = 10 % by volume"
 * dilutionInWords({ kind: "liquid", fraction: 2 / 7 }) // => "2 parts dye + 5 parts water = 28.57 % by volume"
 * dilutionInWords({ kind: "liquid", fraction: 0.1234 }) // => "1 part dye + about 7.104 parts water = 12.34 % by volume"
 * dilutionInWords({ kind: "liquid", fraction: 1 }) // => "undiluted dye = 100 % by volume"
 * dilutionInWords({ kind: "powder", gramsPerL: 20 }) // => "20 g of dye in each litre of water, measured cold"
 */
export const dilutionInWords = (dilution: Dilution): string =>
  dyeKinds[dilution.kind].inWords(figureOf(dilution));

/**
 * The same in short, to two digits.
 * @example
 * dilutionInShort({ kind: "liquid", fraction: 0.0714 }) // => "1:13 (7.1 % by volume)"
 * dilutionInShort({ kind: "powder", gramsPerL: 12.34 }) // => "12 g/L"
 */
export const dilutionInShort = (dilution: Dilution): string =>
  dyeKinds[dilution.kind].inShort(figureOf(dilution));
