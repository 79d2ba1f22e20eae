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
/** The forms that a dilution has. */
export const dilutionForms = "write 1:9 (1 part dye + 9 parts water), 10 %, 100 mL/L, or 20 g/L for a powder";

const inRange = (value: number, path: readonly (string | number)[]): Fault | undefined =>
  value >= 1e-6 && value <= 1
    ? undefined
    : error(
        "dilution-range",
        path,
        "the dye must be at least a millionth and at most the whole of the bath",
        dilutionForms,
      );

function asLiquid(
  share: { readonly value: number; readonly plusMinus?: number },
  path: Fault["path"],
): Outcome<ParsedDilution> {
  const fault = inRange(share.value, path);
  return fault === undefined ? done({ kind: "liquid", ...share }) : failed(fault);
}

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
    return failed(error("dilution-form", path, "the text is too long for a dilution", dilutionForms));
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
  if (bare.test(valueText)) return failed(unitMissing(Number(valueText), path));
  if (/[a-z]\s*\/\s*[a-z]/i.test(valueText)) {
    const powder = parseQuantity("massPerVolume", text, { path });
    if (powder.ok)
      return powder.value.value > 0 ? done({ kind: "powder", ...powder.value }) : failed(inRange(0, path)!);
    const liquid = parseQuantity("volumePerVolume", text, { path, unit: "L/L" });
    if (!liquid.ok)
      return failed(
        ...liquid.faults.map((fault) =>
          fault.code.startsWith("unit") ? { ...fault, help: dilutionForms } : fault,
        ),
      );
    return asLiquid(liquid.value, path);
  }
  const form = numberFault(valueText, path);
  if (form !== undefined) return failed(form);
  const share = parseQuantity("percent", text, { path });
  if (!share.ok)
    return failed(error("dilution-form", path, `"${text.trim()}" is not a dilution`, dilutionForms));
  return asLiquid(share.value, path);
}

/** The fault of a dilution without a unit. */
export function unitMissing(number: number, path: Fault["path"] = []): Fault {
  const [shown, percent, mL] = [number, 100 * number, 1000 * number].map(tidyNumber);
  const help =
    number > 0 && number < 1
      ? `write ${percent} % if this is the dye's share of the bath, or ${mL} mL/L`
      : number >= 1 && number <= 100
        ? `write ${shown} %, 1:${shown} or ${shown} mL/L, or ${shown} g/L for a powder`
        : dilutionForms;
  return error("unit-missing", path, "a dilution needs a unit", help);
}
