/**
 * ISO 4217 codes of currencies in use, by the number of digits of their minor unit; the others have
 * two. A value from memory of the standard's list.
 */
const twoDigits =
  "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD XCG YER ZAR ZMW ZWG";
const noDigits = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";
const threeDigits = "BHD IQD JOD KWD LYD OMR TND";
const fourDigits = "CLF UYW";

/** All codes, in the order of the alphabet. */
export const currencyCodes: readonly string[] = `${twoDigits} ${noDigits} ${threeDigits} ${fourDigits}`
  .split(" ")
  .sort();

const digitsOf: ReadonlyMap<string, number> = new Map([
  ...noDigits.split(" ").map((code) => [code, 0] as const),
  ...threeDigits.split(" ").map((code) => [code, 3] as const),
  ...fourDigits.split(" ").map((code) => [code, 4] as const),
]);

/**
 * Digits of a currency's minor unit; 2 for a code that is not in the list.
 * @source iso4217 list one
 * @example
 * minorDigits("EUR") // => 2
 * minorDigits("JPY") // => 0
 * minorDigits("KWD") // => 3
 */
export const minorDigits = (code: string): number => digitsOf.get(code) ?? 2;
