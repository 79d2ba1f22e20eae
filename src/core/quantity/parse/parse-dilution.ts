import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import { numberFault, numberPattern, tidyNumber } from "./number-text.js";
import { parseQuantity, splitPlusMinus } from "./parse-quantity.js";

/** Dye in water, as read: a volume fraction for a liquid, grams per litre for a powder. */
export type ParsedDilution =
  | { readonly kind: "liquid"; readonly value: number; readonly plusMinus?: number }
  | { readonly kind: "powder"; readonly value: number; readonly plusMinus?: number };

const ratio = new RegExp(`^\\s*(${numberPattern})\\s*:\\s*(${numberPattern})\\s*$`);
const stroke = new RegExp(`^\\s*(${numberPattern})\\s*(?:/|in|to)\\s*(${numberPattern})\\s*$`);
const dashed = new RegExp(`^\\s*(${numberPattern})\\s*[-–—]\\s*(${numberPattern})\\s*$`);
const bare = new RegExp(`^\\s*${numberPattern}\\s*$`);
const forms = "write 1:9 (1 part dye + 9 parts water), 10 %, 100 mL/L, or 20 g/L for a powder";

const inRange = (value: number, path: readonly (string | number)[]): Fault | undefined =>
  value >= 1e-6 && value <= 1
    ? undefined
    : error(
        "dilution-range",
        path,
        "the dye must be at least a millionth and at most the whole of the bath",
        forms,
      );

/**
 * Reads a dilution: "1:9" (dye : water by volume), "10 %", "100 mL/L", or "20 g/L" for a powder.
 * @example
 * parseDilution("1:9").value // => {"kind": "liquid", "value": 0.1}
 * parseDilution("100 mL/L").value // => {"kind": "liquid", "value": 0.1}
 * parseDilution("20 g/L").value // => {"kind": "powder", "value": 20}
 */
export function parseDilution(
  text: string,
  path: readonly (string | number)[] = [],
): Outcome<ParsedDilution> {
  if (text.length > 100)
    return failed(error("dilution-form", path, "the text is too long for a dilution", forms));
  const [valueText, halfText] = splitPlusMinus(text);
  const parts = ratio.exec(valueText);
  if (parts !== null) {
    const [dye, water] = [Number(parts[1]), Number(parts[2])];
    const value = dye / (dye + water);
    const fault = inRange(value, path);
    if (fault !== undefined) return failed(fault);
    if (halfText === undefined) return done({ kind: "liquid", value });
    const half = parseQuantity("percent", halfText, { path });
    return half.ok ? done({ kind: "liquid", value, plusMinus: value * half.value.value }) : half;
  }
  const among = stroke.exec(valueText);
  if (among !== null) {
    const [dye, whole] = [Number(among[1]), Number(among[2])];
    return failed(
      error(
        "dilution-form",
        path,
        `"${text.trim()}" can be read in two ways`,
        `write ${dye}:${tidyNumber(whole - dye)} if ${whole} parts of bath hold ${dye} of dye, or ${dye}:${whole} if ${whole} parts of water are added`,
      ),
    );
  }
  const dash = dashed.exec(valueText);
  if (dash !== null)
    return failed(
      error(
        "dilution-form",
        path,
        "the dilution contains a dash",
        `put a colon between dye and water: write ${dash[1]}:${dash[2]} (${dash[1]} of dye + ${dash[2]} of water)`,
      ),
    );
  if (bare.test(valueText))
    return failed(error("unit-missing", path, "a dilution needs a unit", dilutionHelp(Number(valueText))));
  if (/[a-z]\s*\/\s*[a-z]/i.test(valueText)) {
    const powder = parseQuantity("massPerVolume", text, { path });
    if (powder.ok)
      return powder.value.value > 0 ? done({ kind: "powder", ...powder.value }) : failed(inRange(0, path)!);
    const liquid = parseQuantity("volumePerVolume", text, { path, unit: "L/L" });
    if (!liquid.ok)
      return failed(
        ...liquid.faults.map((fault) => (fault.code.startsWith("unit") ? { ...fault, help: forms } : fault)),
      );
    const fault = inRange(liquid.value.value, path);
    return fault === undefined ? done({ kind: "liquid", ...liquid.value }) : failed(fault);
  }
  const form = numberFault(valueText, path);
  if (form !== undefined) return failed(form);
  const share = parseQuantity("percent", text, { path });
  if (!share.ok) return failed(error("dilution-form", path, `"${text.trim()}" is not a dilution`, forms));
  const fault = inRange(share.value.value, path);
  return fault === undefined ? done({ kind: "liquid", ...share.value }) : failed(fault);
}

/** What to write in place of a dilution without a unit. */
export const dilutionHelp = (number: number): string =>
  number > 0 && number < 1
    ? `write ${tidyNumber(number * 100)} % if this is the dye's share of the bath, or ${tidyNumber(number * 1000)} mL/L`
    : number >= 1 && number <= 100
      ? `write ${tidyNumber(number)} % or 1:${tidyNumber(number)}, or ${tidyNumber(number)} g/L for a powder`
      : forms;
