/**
 * ISO 4217 codes of currencies in use, by the number of digits of their minor unit; two where not listed
 * otherwise. A value from memory of the standard's list.
 */
const twoDigits =
  "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD XCG YER ZAR ZMW ZWG";
const noDigits = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF";
const threeDigits = "BHD IQD JOD KWD LYD OMR TND";

/** All codes, in the order of the alphabet. */
export const currencyCodes: readonly string[] = `${twoDigits} ${noDigits} ${threeDigits}`.split(" ").sort();

/**
 * Digits of a currency's minor unit.
 * @example
 * minorDigits("EUR") // => 2
 * minorDigits("JPY") // => 0
 * minorDigits("KWD") // => 3
 */
export const minorDigits = (code: string): number =>
  noDigits.includes(code) ? 0 : threeDigits.includes(code) ? 3 : 2;
