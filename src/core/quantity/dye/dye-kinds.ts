import type { Dilution } from "../../model/batch.js";
import { shortNumber } from "../text/short-number.js";
import { ratioInWords } from "./ratio-in-words.js";

export type DyeKind = Dilution["kind"];

/** What the batch file gives in a unit that depends on the kind of dye. */
type DyeKey = "dilution" | "price" | "stock" | "uptake" | "evidence";

/** What reports tell of a dye under a key that says its unit. */
type DyeFigure =
  | "amount"
  | "start"
  | "added"
  | "takenUp"
  | "draggedOut"
  | "left"
  | "perPart"
  | "perDm2"
  | "used"
  | "rinsed";

/**
 * Everything specific to a kind of dye. Its figure is the one number of its dilution: a volume fraction, or grams per
 * litre of cold liquor.
 */
interface DyeRecord {
  /** The unit of its amounts. */
  readonly unit: "mL" | "g";
  /** The noun after an amount, "584 mL of concentrate", and the noun alone. */
  readonly what: string;
  readonly called: string;
  /** The key of its figure in a dilution. */
  readonly dilutionKey: "fraction" | "gramsPerL";
  /** Keys of its amounts in reports: poured or weighed in, in the balance of a bath, for each part and dm2, in all. */
  readonly keys: Readonly<Record<DyeFigure, string>>;
  /** Decimals of an amount in messages, and in tables for spreadsheets. */
  readonly decimals: number;
  readonly tableDecimals: number;
  /** Whether it takes up room in the bath, in place of water. */
  readonly takesRoom: boolean;
  readonly raisesDust: boolean;
  /** Dye [mL or g] in a cold fill [L]. */
  readonly inFill: (figure: number, coldL: number) => number;
  /** The dilution in full, and in short. */
  readonly inWords: (figure: number) => string;
  readonly inShort: (figure: number) => string;
  /** How a dye of this kind gets into a bath, in messages. */
  readonly treated: string;
  /** The unit that its price is for, and the thousandth of it that an amount is counted in. */
  readonly priced: { readonly unit: "/L" | "/kg"; readonly per: string; readonly thousandth: string };
  /** What the batch file gives of such a dye, each with an example. */
  readonly given: Readonly<Record<DyeKey, readonly [what: string, example: string]>>;
}

/** The kinds of dye: a liquid concentrate that is poured in, and a powder that is weighed in. */
export const dyeKinds = {
  liquid: {
    unit: "mL",
    what: "concentrate",
    called: "concentrate",
    dilutionKey: "fraction",
    keys: {
      amount: "concentrateMl",
      start: "startMl",
      added: "addedMl",
      takenUp: "takenUpMl",
      draggedOut: "draggedOutMl",
      left: "leftMl",
      perPart: "concentrateMlPerPart",
      perDm2: "concentrateMlPerDm2",
      used: "dyeUsedMl",
      rinsed: "dyeMl",
    },
    decimals: 0,
    tableDecimals: 1,
    takesRoom: true,
    raisesDust: false,
    inFill: (fraction, coldL) => fraction * (coldL * 1000),
    inWords: ratioInWords,
    inShort: (fraction) =>
      `1:${shortNumber((1 - fraction) / fraction, 2)} (${shortNumber(100 * fraction, 2)} % by volume)`,
    treated: "diluted by volume",
    priced: { unit: "/L", per: "litre", thousandth: "millilitre" },
    given: {
      dilution: ["a dilution by volume", "1:9"],
      price: ["a price per volume", "46.00 /L"],
      stock: ["a volume", "1.5 L"],
      uptake: ["a volume per area", "0.03 mL/dm2"],
      evidence: ["volumes of the liquid", "1 L or 12 m2/L"],
    },
  },
  powder: {
    unit: "g",
    what: "powder",
    called: "powder dye",
    dilutionKey: "gramsPerL",
    keys: {
      amount: "powderG",
      start: "startG",
      added: "addedG",
      takenUp: "takenUpG",
      draggedOut: "draggedOutG",
      left: "leftG",
      perPart: "powderGPerPart",
      perDm2: "powderGPerDm2",
      used: "dyeUsedG",
      rinsed: "dyeG",
    },
    decimals: 1,
    tableDecimals: 2,
    takesRoom: false,
    raisesDust: true,
    inFill: (gramsPerL, coldL) => gramsPerL * coldL,
    inWords: (gramsPerL) => `${shortNumber(gramsPerL)} g of dye in each litre of water, measured cold`,
    inShort: (gramsPerL) => `${shortNumber(gramsPerL, 2)} g/L`,
    treated: "weighed in",
    priced: { unit: "/kg", per: "kilogram", thousandth: "gram" },
    given: {
      dilution: ["a dilution", "20 g/L"],
      price: ["a price per mass", "90.00 /kg"],
      stock: ["a mass", "500 g"],
      uptake: ["a mass per area", "0.006 g/dm2"],
      evidence: ["masses of the powder", "250 g or 0.5 m2/g"],
    },
  },
} as const satisfies Readonly<Record<DyeKind, DyeRecord>>;

export const kindsOfDye = Object.keys(dyeKinds) as readonly DyeKind[];
