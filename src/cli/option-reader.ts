import { done, error, type Fault, failed, type Outcome } from "../core/fault.js";
import type { Dilution } from "../core/model/batch.js";
import { dilutionOf } from "../core/quantity/dye/dilution.js";
import type { KindName } from "../core/quantity/kinds.js";
import { parseDilution } from "../core/quantity/parse/parse-dilution.js";
import { type ParseOptions, parseQuantity } from "../core/quantity/parse/parse-quantity.js";

/** Reads options one by one and keeps every fault, so that one run reports them all. */
export interface OptionReader {
  readonly faults: Fault[];
  readonly quantity: (
    option: string,
    kind: KindName,
    check?: Bounds,
    units?: ParseOptions,
  ) => number | undefined;
  readonly dilution: (option: string) => Dilution | undefined;
  readonly stock: (option: string) => number | undefined;
  readonly ratio: (option: string) => number | undefined;
}

/** What a value must keep to; `above` is excluded, the others included. */
export interface Bounds {
  readonly above?: number;
  readonly from?: number;
  readonly to?: number;
  /** Said when it does not. */
  readonly must: string;
}

const within = (value: number, { above, from, to }: Bounds): boolean =>
  (above === undefined || value > above) &&
  (from === undefined || value >= from) &&
  (to === undefined || value <= to);

const noHalfWidth = <T extends { readonly plusMinus?: number }>(
  read: Outcome<T>,
  option: string,
): Outcome<T> =>
  read.ok && read.value.plusMinus !== undefined
    ? failed(error("half-width-form", [option], "no ± is taken here", "write the value alone"))
    : read;

/** A reader over what was typed, by option name without the dashes. */
export function optionReader(typed: (option: string) => string | undefined): OptionReader {
  const faults: Fault[] = [];
  const take = <T>(outcome: Outcome<T>): T | undefined => {
    faults.push(...outcome.faults);
    return outcome.ok ? outcome.value : undefined;
  };
  const quantity: OptionReader["quantity"] = (option, kind, bounds, units) => {
    const text = typed(option);
    if (text === undefined) return undefined;
    const read = take(
      noHalfWidth(parseQuantity(kind, text, { ...units, path: [`--${option}`] }), `--${option}`),
    );
    if (read === undefined) return undefined;
    if (bounds === undefined || within(read.value, bounds)) return read.value;
    faults.push(error("range", [`--${option}`], `"${text}" is out of range`, bounds.must));
    return undefined;
  };
  return {
    faults,
    quantity,
    dilution: (option) => {
      const text = typed(option);
      if (text === undefined) return undefined;
      const read = take(noHalfWidth(parseDilution(text, [`--${option}`]), `--${option}`));
      if (read === undefined) return undefined;
      return dilutionOf(read.kind, read.value);
    },
    stock: (option) => {
      const must = { above: 0, must: "a stock solution holds some dye: write 10 g/L or 1 %" };
      if (!/(%|percent)\s*$/.test(typed(option) ?? "")) return quantity(option, "massPerVolume", must);
      const share = quantity(option, "percent", must);
      return share === undefined ? undefined : share * 1000;
    },
    ratio: (option) => {
      const must = { above: 0, must: "there must be some liquor: write 1:20 or 20 L/kg" };
      const text = typed(option) ?? "";
      const parts = /^\s*(\d+(?:\.\d+)?)\s*:\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
      if (parts === null) return quantity(option, "volumePerMass", must);
      const ratio = Number(parts[2]) / Number(parts[1]);
      if (Number.isFinite(ratio) && ratio > 0) return ratio;
      faults.push(error("range", [`--${option}`], `"${text}" is out of range`, must.must));
      return undefined;
    },
  };
}

/** The value, or every fault so far. */
export const settled = <T>(reader: OptionReader, value: T | undefined): Outcome<T> =>
  reader.faults.length > 0 || value === undefined ? failed(...reader.faults) : done(value);
