import { kelvinAtZeroCelsius } from "./kelvin.js";
/**
 * One unit of a dimension: `factor / divisor` of the dimension's first unit. Two whole numbers, so that a
 * value such as 6.9 cm3 becomes exactly the double nearest to 0.0069 L.
 */
export interface Unit {
  /** As printed; US measures say so. */
  readonly symbol: string;
  /** Other accepted spellings. */
  readonly also: readonly string[];
  readonly factor: number;
  readonly divisor: number;
  /** Added before scaling; temperatures only. */
  readonly offset?: number;
}

const unit = (symbol: string, also: string, factor: number, divisor = 1, offset?: number): Unit => ({
  symbol,
  also: also === "" ? [] : also.split(","),
  factor,
  divisor,
  ...(offset === undefined ? {} : { offset }),
});

/** Litres. The US gallon is 231 cubic inches of 25.4 mm, exactly 3.785411784 L. */
export const volumes: readonly Unit[] = [
  unit("L", "l,litre,litres,liter,liters", 1),
  unit("mL", "ml,millilitre,millilitres,milliliter,milliliters", 1, 1000),
  unit("cL", "cl", 1, 100),
  unit("dL", "dl", 1, 10),
  unit("m3", "", 1000),
  unit("dm3", "", 1),
  unit("cm3", "cc", 1, 1000),
  unit("mm3", "", 1, 1_000_000),
  unit("US gal", "gal,gallon,gallons,US gallon,US gallons", 3785411784, 1_000_000_000),
  unit("US qt", "qt,quart,quarts,US quart,US quarts", 946352946, 1_000_000_000),
  unit("US pt", "pt,pint,pints,US pint,US pints", 473176473, 1_000_000_000),
  unit(
    "US fl oz",
    "fl oz,fl.oz.,fl. oz.,fl oz.,floz,fluid ounce,fluid ounces",
    295735295625,
    10_000_000_000_000,
  ),
];

/** Grams. The pound is 453.59237 g. */
export const masses: readonly Unit[] = [
  unit("g", "gram,grams", 1),
  unit("kg", "", 1000),
  unit("mg", "", 1, 1000),
  unit("lb", "lbs,pound,pounds", 45359237, 100_000),
  unit("oz", "ounce,ounces", 28349523125, 1_000_000_000),
];

/** Square decimetres. */
export const areas: readonly Unit[] = [
  unit("dm2", "sq dm", 1),
  unit("cm2", "sq cm", 1, 100),
  unit("mm2", "sq mm", 1, 10_000),
  unit("m2", "sq m", 100),
  unit("in2", "sq in", 64516, 1_000_000),
  unit("ft2", "sq ft", 9290304, 1_000_000),
];

/** Centimetres. */
export const lengths: readonly Unit[] = [
  unit("cm", "", 1),
  unit("mm", "", 1, 10),
  unit("m", "", 100),
  unit("dm", "", 10),
  unit("in", 'inch,inches,"', 254, 100),
  unit("ft", "foot,feet", 3048, 100),
];

/** Seconds. */
export const times: readonly Unit[] = [
  unit("s", "sec,secs,second,seconds", 1),
  unit("min", "mins,minute,minutes", 60),
  unit("h", "hr,hrs,hour,hours", 3600),
  unit("d", "day,days", 86400),
];

/** Degrees Celsius. A bare C, F or K is read, as no other temperature has that letter. */
export const temperatures: readonly Unit[] = [
  unit("°C", "C,degC,deg C,º C,ºC,° C,℃", 1),
  unit("°F", "F,degF,deg F,º F,ºF,° F,℉", 5, 9, -32),
  unit("K", "", 1, 1, -kelvinAtZeroCelsius),
];

/** Kelvins, where the step of a scale counts and not its zero: a difference of 9 °F is 5 K. */
export const temperatureDifferences: readonly Unit[] = temperatures.map(({ offset: _, ...unit }) => unit);

/** Watts. */
export const powers: readonly Unit[] = [unit("W", "watt,watts", 1), unit("kW", "", 1000)];

/** Kilowatt hours. */
export const energies: readonly Unit[] = [
  unit("kWh", "kwh", 1),
  unit("Wh", "", 1, 1000),
  unit("kJ", "", 1, 3600),
  unit("MJ", "", 1000, 3600),
];

/** Joules, for energies of activation and heat capacities. */
export const smallEnergies: readonly Unit[] = [unit("J", "", 1), unit("kJ", "", 1000)];

/** Grams by kelvins, under the stroke of a specific heat. */
export const massesByKelvin: readonly Unit[] = [
  unit("(g K)", "(g*K),(g·K),(g °C),g/K,g K,gK", 1),
  unit("(kg K)", "(kg*K),(kg·K),(kg °C),kg/K,kg K,kgK", 1000),
];

/** Amounts of substance. */
export const amounts: readonly Unit[] = [unit("mol", "", 1)];

/** One. */
export const shares: readonly Unit[] = [unit("", "", 1), unit("%", "percent,per cent,pct", 1, 100)];

/** Plain numbers; the key `currency` gives the currency. */
export const money: readonly Unit[] = [unit("", "", 1)];

/** For kinds with nothing before the slash, such as `/s`. */
export const none: readonly Unit[] = [unit("", "1", 1)];
