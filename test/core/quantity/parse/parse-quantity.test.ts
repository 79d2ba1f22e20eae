import { expect, test } from "vitest";
import type { KindName } from "../../../../src/core/quantity/kinds.js";
import { type ParseOptions, parseQuantity } from "../../../../src/core/quantity/parse/parse-quantity.js";

const read = (kind: KindName, text: string, options: ParseOptions = {}): unknown => {
  const outcome = parseQuantity(kind, text, options);
  return outcome.ok ? outcome.value : outcome.faults.map((f) => `${f.code}: ${f.message}; ${f.help}`);
};

test.each<[KindName, string, string | undefined, number]>([
  ["volume", "6 L", undefined, 6],
  ["volume", "6l", undefined, 6],
  ["volume", "6.9 cm3", "cm3", 6.9],
  ["volume", "6.9 cm³", "L", 0.0069],
  ["volume", "6.9 cm^3", "mL", 6.9],
  ["volume", "6.9 ml", "cm3", 6.9],
  ["volume", "33 cL", undefined, 0.33],
  ["volume", "0.5 m3", undefined, 500],
  ["volume", ".5 L", undefined, 0.5],
  ["volume", "5e-1 L", undefined, 0.5],
  ["volume", "1 US gal", undefined, 3.785411784],
  ["volume", "1 gal", undefined, 3.785411784],
  ["volume", "128 fl oz", "US gal", 1],
  ["volume", "4 qt", "US gal", 1],
  ["volume", "8 US pints", "US gal", 1],
  ["mass", "2 kg", undefined, 2000],
  ["mass", "16 oz", "lb", 1],
  ["mass", "1 lb 4 oz", "oz", 20],
  ["mass", "250 mg", undefined, 0.25],
  ["area", "41 cm2", undefined, 0.41],
  ["area", "41 cm²", "cm2", 41],
  ["area", "41 sq cm", "cm2", 41],
  ["area", "3.1 m2", undefined, 310],
  ["area", "10 in2", "cm2", 64.516],
  ["length", "12 in", undefined, 30.48],
  ["length", "320 mm", undefined, 32],
  ["time", "1 min 30 s", undefined, 90],
  ["time", "1 h 5 min", "min", 65],
  ["time", "12 d", "d", 12],
  ["time", "1500 h", "h", 1500],
  ["temperature", "80 °C", undefined, 80],
  ["temperature", "80 C", undefined, 80],
  ["temperature", "80°C", undefined, 80],
  ["temperature", "80 º C", undefined, 80],
  ["temperature", "176 °F", undefined, 80],
  ["temperature", "176F", undefined, 80],
  ["temperature", "353.15 K", undefined, 80],
  ["temperature", "-4 °C", undefined, -4],
  ["temperatureDifference", "1 °C", undefined, 1],
  ["temperatureDifference", "1 K", undefined, 1],
  ["temperatureDifference", "1.8 °F", undefined, 1],
  ["temperatureDifference", "2 K", "°F", 3.6],
  ["specificHeat", "1.7 kJ/(kg K)", undefined, 1.7],
  ["specificHeat", "1.7 kJ / (kg·K)", undefined, 1.7],
  ["specificHeat", "1.7 kJ/kg/K", undefined, 1.7],
  ["specificHeat", "1.7 J/(g K)", undefined, 1.7],
  ["specificHeat", "1700 J/(kg K)", undefined, 1.7],
  ["specificHeat", "0 kJ/(kg K)", undefined, 0],
  ["power", "0.4 kW", undefined, 400],
  ["energy", "3.6 MJ", undefined, 1],
  ["energyPerMole", "75 kJ/mol", undefined, 75000],
  ["rate", "0.012 /s", undefined, 0.012],
  ["rate", "0.72 /min", undefined, 0.012],
  ["rate", "0.72 1/min", undefined, 0.012],
  ["rate", "0.72 per min", undefined, 0.012],
  ["percent", "97 %", undefined, 0.97],
  ["percent", "97%", undefined, 0.97],
  ["volumePerArea", "0.03 mL/dm2", undefined, 0.03],
  ["volumePerArea", "3 mL / m²", undefined, 0.03],
  ["volumePerArea", "3 mL per m2", undefined, 0.03],
  ["volumePerArea", "0.0003 mL/cm2", undefined, 0.03],
  ["massPerArea", "0.2 g/m2", undefined, 0.002],
  ["volumePerMass", "20 L/kg", undefined, 20],
  ["pricePerVolume", "38.00 /L", undefined, 38],
  ["pricePerVolume", "4.20 /m3", "/m3", 4.2],
  ["pricePerVolume", "37.85411784 /gal", undefined, 10],
  ["pricePerMass", "90 /kg", undefined, 90],
  ["pricePerEnergy", "0.31 /kWh", undefined, 0.31],
  ["pricePerTime", "34.00 per hour", undefined, 34],
])("a %s of %j read in %s is %d", (kind, text, unit, value) => {
  const outcome = parseQuantity(kind, text, unit === undefined ? {} : { unit });
  expect(outcome.faults).toEqual([]);
  expect(outcome.ok && outcome.value.value).toBeCloseTo(value, 12);
  expect(outcome.ok && outcome.value.plusMinus).toBeUndefined();
});

test.each<[KindName, string, number, number]>([
  ["volumePerArea", "0.8 mL/dm2 ± 40 %", 0.8, 0.32],
  ["volumePerArea", "0.8 mL/dm2 +- 40%", 0.8, 0.32],
  ["time", "12 s ± 3 s", 12, 3],
  ["time", "12 s +/- 3 s", 12, 3],
  ["time", "12 ± 3 s", 12, 3],
  ["time", "2 min ± 30 s", 120, 30],
  ["temperature", "176 °F ± 9 °F", 80, 5],
  ["temperature", "80 °C ± 2 K", 80, 2],
  ["percent", "97 % ± 1 %", 0.97, 0.01],
  ["pricePerVolume", "38 /L ± 5 %", 38, 1.9],
])("a %s of %j carries its half width", (kind, text, value, plusMinus) => {
  const outcome = parseQuantity(kind, text);
  expect(outcome.faults).toEqual([]);
  expect(outcome.ok && outcome.value.value).toBeCloseTo(value, 12);
  expect(outcome.ok && outcome.value.plusMinus).toBeCloseTo(plusMinus, 12);
});

test.each<[KindName, string, string]>([
  ["volume", "6", "unit-missing: a volume needs a unit; write 6 L or 6000 mL"],
  ["area", "41", "unit-missing: an area needs a unit; write 41 cm2 or 0.41 dm2"],
  ["temperature", "80", "unit-missing: a temperature needs a unit; write 80 °C or 176 °F"],
  ["temperature", "175", "unit-missing: a temperature needs a unit; write 175 °F"],
  ["temperature", "353.15", "unit-missing: a temperature needs a unit; write 353.15 K"],
  ["temperature", "500", "unit-missing: a temperature needs a unit; write 80 °C or 176 °F"],
  ["time", "50", "unit-missing: a time needs a unit; write 50 s"],
  ["amount", "1,000", "decimal-comma: the number contains a comma; do not separate thousands: write 1000"],
  ["volume", "0,250 L", "decimal-comma: the number contains a comma; use a decimal point: write 0.250 L"],
  ["percent", "0.97", "unit-missing: a share needs a % sign; write 97 %"],
  ["percent", "97", "unit-missing: a share needs a % sign; write 97 %"],
  ["pricePerEnergy", "0.31", "unit-missing: a price per energy needs a unit; write 0.31 /kWh"],
  ["volume", "6,5 L", "decimal-comma: the number contains a comma; use a decimal point: write 6.5 L"],
  [
    "volume",
    "1,500 mL",
    "decimal-comma: the number contains a comma; use a decimal point and do not separate thousands: write 1500 mL or 1.500 mL",
  ],
  ["volume", "6 kg", "unit-wrong: 6 kg is a mass, not a volume; write a volume such as 6 L or 6000 mL"],
  [
    "volume",
    "6 oz",
    "unit-wrong: 6 oz is a mass, not a volume; a fluid ounce is written fl oz: write 6 fl oz",
  ],
  ["volume", "6 ML", "unit-unknown: ML is not a known unit; capitals matter in units: write 6 mL"],
  ["volume", "6 buckets", "unit-unknown: buckets is not a known unit; write a volume such as 6 L or 6000 mL"],
  [
    "volume",
    "2 imp gal",
    "unit-unknown: imp gal is an imperial measure, which is not read; an imperial gallon is 4.54609 L, an imperial fluid ounce 28.413 mL: write litres",
  ],
  ["volume", "1/2 gal", "number-form: this is a fraction, not a decimal number; write 0.5 gal"],
  ["volume", "1 1/2 gal", "number-form: this is a fraction, not a decimal number; write 1.5 gal"],
  [
    "time",
    "30-60 s",
    "number-form: this is a range, not one number; write one value, with its half width if that matters: 45 s ± 15 s",
  ],
  ["volume", "-6 L", "negative: a volume cannot be negative; write a volume such as 6 L or 6000 mL"],
  ["volume", "L", 'quantity-form: "L" is not a number with a unit; write a volume such as 6 L or 6000 mL'],
  ["volume", "", "quantity-form: a volume is missing; write a volume such as 6 L or 6000 mL"],
  [
    "volume",
    "6 L 200 mL",
    'quantity-form: "6 L 200 mL" is not a volume: it contains 2 numbers; write a volume such as 6 L or 6000 mL',
  ],
  [
    "time",
    "30 s 1 min",
    'quantity-form: "30 s 1 min" is not a time: it contains 2 numbers; write a time such as 30 s or 0.5 min',
  ],
  ["time", "1:30", 'quantity-form: "1:30" can be read in two ways; write 1 min 30 s, or 1 h 30 min'],
  [
    "time",
    "12 s ± 3",
    "half-width-form: the half width after ± needs a unit or a % sign; write 12 s ± 3 s or ± 3 %",
  ],
  [
    "temperature",
    "80 °C ± 2 %",
    "half-width-form: the half width of a temperature cannot be a share of it; write it in degrees: 80 °C ± 2 °C",
  ],
  [
    "pricePerVolume",
    "38 EUR/L",
    "currency-in-price: the price contains a currency; write 38 /L; only the key currency names the currency",
  ],
  [
    "pricePerVolume",
    "€38/L",
    "currency-in-price: the value begins with a currency sign; write 38 /L; only the key currency names the currency",
  ],
  ["volume", "1e999 L", "number-form: the number is too large; write a volume such as 6 L or 6000 mL"],
])("a %s of %j is refused with what to write instead", (kind, text, expected) => {
  expect(read(kind, text)).toEqual([expected]);
});

test("parseQuantity proposes a temperature in °F where one in °C would be above the highest that is likely", () => {
  const help = (text: string, most: number): string | undefined =>
    parseQuantity("temperature", text, { most }).faults[0]?.help;
  expect(help("68", 50)).toBe("write 68 °F");
  expect(help("158", 200)).toBe("write 158 °C or 158 °F");
  expect(help("700", 200)).toBe("write 80 °C or 176 °F");
});
