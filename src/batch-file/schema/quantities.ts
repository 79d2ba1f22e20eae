import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { AssumedFigure } from "../../core/model/defaults.js";
import type { KindName } from "../../core/quantity/kinds.js";
import { kindOf } from "../../core/quantity/kinds.js";
import { exampleOf, type ParseOptions, parseQuantity } from "../../core/quantity/parse/parse-quantity.js";
import type { Quantity } from "../../core/quantity/quantity.js";
import { formatQuantity } from "../../core/quantity/text/format-quantity.js";
import { rangeInWords } from "../../core/quantity/text/range-in-words.js";
import { leaf, type Meaning, notA } from "./leaf.js";

/** A quantity of the spec; `assumed` if the user did not give it. */
export interface Amount extends Quantity {
  readonly assumed?: boolean;
  /** Of a quantity that is known to a factor: 95 % of what it may be lies between `value / factor` and `value * factor`. */
  readonly factor?: number;
  /** Of a quantity found from evidence: the share of the assumed variance that is left, and the 95 % interval. */
  readonly assumedShare?: number;
  readonly interval95?: readonly [number, number];
}

export interface Limits extends ParseOptions {
  /** Above 0. */
  readonly positive?: boolean;
  readonly least?: number;
  readonly most?: number;
  /** The limits in words: "between 0 % and 100 %". */
  readonly limits?: string;
}

/** Reads a quantity and checks its limits. */
export function readQuantity(kind: KindName, limits: Limits, input: unknown): Outcome<Quantity> {
  const what = kindOf(kind).what;
  if (typeof input !== "string" && typeof input !== "number")
    return failed(
      error("wrong-type", [], notA(what, input), `write ${what} such as ${exampleOf(kind, limits.suggest)}`),
    );
  const outcome = parseQuantity(kind, String(input), limits);
  if (!outcome.ok) return outcome;
  const { value } = outcome.value;
  const low = limits.positive === true && value <= 0;
  if (low || value < (limits.least ?? value) || value > (limits.most ?? value))
    return failed(
      error(
        "out-of-range",
        [],
        `${String(input).trim()} is out of range`,
        limits.limits === undefined
          ? `write ${what} above 0, such as ${exampleOf(kind, limits.suggest)}`
          : `write ${what} ${limits.limits}`,
      ),
    );
  return outcome;
}

/** A value as a file writes it. */
export const written = (
  kind: KindName,
  value: number,
  units?: { readonly from?: string; readonly to?: string },
): string => formatQuantity(kind, { value }, units);

/** A fraction as a file writes it. */
export const percent = (fraction: number): string => written("percent", fraction, { to: "%" });

/** An assumed figure with its range, for the table of keys. */
export const assumedText = (kind: KindName, { value, factor }: AssumedFigure): string =>
  `${written(kind, value)}, ${rangeInWords(factor)}, assumed`;

/** What to write for a quantity, where an editor marks another text. */
export function quantityForm(
  kind: KindName,
  { positive, limits, suggest }: Pick<Limits, "positive" | "limits" | "suggest">,
): string {
  const range = limits ?? (positive === true ? "above 0" : undefined);
  return `write ${[kindOf(kind).what, range].filter(Boolean).join(" ")}, such as ${exampleOf(kind, suggest)}`;
}

/** A quantity with its unit in the file. */
export const quantity = (kind: KindName, meaning: Meaning, limits: Limits = {}) =>
  leaf<Amount>({ type: "string", reads: [{ kind, limits }] }, meaning, (input) =>
    readQuantity(kind, limits, input),
  );

/** The temperature of a liquor: that of liquid water. */
export const liquorTemperature = (meaning: Meaning) =>
  quantity("temperature", meaning, { least: 0, most: 100, limits: "between 0 °C and 100 °C" });

/** A share of 0 to 100 %. */
export const share = (meaning: Meaning, limits: Limits = {}) =>
  quantity("percent", meaning, { least: 0, most: 1, limits: "between 0 % and 100 %", ...limits });

/** Money, without its currency. */
export const money = (meaning: Meaning) =>
  leaf<Amount>(
    { type: ["number", "string"], minimum: 0, reads: [{ kind: "amount", limits: {} }] },
    { examples: [1.84], ...meaning },
    (input) => readQuantity("amount", {}, input),
  );

/** A hundred years: more can only be a slip, and no calendar has the days that would follow [d]. */
const mostDays = 36_525;

/** A time by the calendar; the value is in days. */
export const days = (meaning: Meaning, { positive = false }: Pick<Limits, "positive"> = {}) =>
  quantity("time", meaning, {
    unit: "d",
    suggest: ["d", "h"],
    positive,
    most: mostDays,
    limits: `${positive ? "above 0 d and " : ""}up to ${mostDays} d`,
  });

/** How long it takes until what is ordered is there. */
export const leadTime = () =>
  days({ description: "time from order to delivery: week says by when to order", examples: ["7 d"] });

/** A quantity of one kind for a liquid dye and of another for a powder. */
export interface LiquidOrPowder extends Amount {
  readonly of: "liquid" | "powder";
}

/** Reads the quantity of a liquid or of a powder; its unit says which. */
export const liquidOrPowder = (
  liquid: { kind: KindName; limits: Limits },
  powder: { kind: KindName; limits: Limits },
  forms: string,
  meaning: Meaning,
) =>
  leaf<LiquidOrPowder>({ type: "string", reads: [liquid, powder], errorMessage: forms }, meaning, (input) => {
    const first = readQuantity(liquid.kind, liquid.limits, input);
    if (first.ok) return done({ ...first.value, of: "liquid" });
    const second = readQuantity(powder.kind, powder.limits, input);
    if (second.ok) return done({ ...second.value, of: "powder" });
    const better =
      second.faults[0]?.code.startsWith("unit") || second.faults[0]?.code === "wrong-type" ? first : second;
    return failed(
      ...better.faults.map((f) =>
        f.code.startsWith("unit-") || f.code === "wrong-type" || f.code === "quantity-form"
          ? { ...f, help: forms }
          : f,
      ),
    );
  });
