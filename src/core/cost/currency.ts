/** Currencies whose minor unit is not a hundredth: the decimals of their minor unit. */
const DECIMALS: ReadonlyMap<string, number> = new Map([
  ..."BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"
    .split(" ")
    .map((code) => [code, 0] as const),
  ..."BHD IQD JOD KWD LYD OMR TND".split(" ").map((code) => [code, 3] as const),
  ..."CLF UYW".split(" ").map((code) => [code, 4] as const),
]);

/**
 * Decimals of a currency's minor unit; 2 for a code that is not in the list of exceptions.
 *
 * The list is from memory.
 * @source iso4217 list one
 * @example
 * minorDigits("EUR") // => 2
 * minorDigits("JPY") // => 0
 * minorDigits("KWD") // => 3
 */
export const minorDigits = (currency: string): number => DECIMALS.get(currency) ?? 2;
