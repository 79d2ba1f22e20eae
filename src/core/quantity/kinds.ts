import * as u from "./units.js";

/** A dimension that a quantity can have. */
export interface Kind {
  /** "a volume" */
  readonly what: string;
  readonly units: readonly u.Unit[];
  /** Units after the slash: `mL/dm2`. */
  readonly per?: readonly u.Unit[];
  /** Unit of a value that is read without `unit`. */
  readonly canonical: string;
  /** Units that a message proposes. */
  readonly suggest: readonly string[];
  /** A likely number in the first of these, for messages. */
  readonly example: number;
  /** Terms add up: "1 min 30 s". */
  readonly sums?: boolean;
  readonly negative?: boolean;
}

export const kinds = {
  volume: { what: "a volume", units: u.volumes, canonical: "L", suggest: ["L", "mL"], example: 6 },
  mass: { what: "a mass", units: u.masses, canonical: "g", suggest: ["g", "kg"], example: 6, sums: true },
  area: { what: "an area", units: u.areas, canonical: "dm2", suggest: ["cm2", "dm2"], example: 40 },
  length: { what: "a length", units: u.lengths, canonical: "cm", suggest: ["cm", "mm"], example: 30 },
  time: { what: "a time", units: u.times, canonical: "s", suggest: ["s", "min"], example: 30, sums: true },
  temperature: {
    what: "a temperature",
    units: u.temperatures,
    canonical: "°C",
    suggest: ["°C", "°F"],
    example: 80,
    negative: true,
  },
  temperatureDifference: {
    what: "a temperature difference",
    units: u.temperatureDifferences,
    canonical: "K",
    suggest: ["°C", "K"],
    example: 1,
  },
  power: { what: "a power", units: u.powers, canonical: "W", suggest: ["W", "kW"], example: 400 },
  energy: { what: "an energy", units: u.energies, canonical: "kWh", suggest: ["kWh", "MJ"], example: 2 },
  energyPerMole: {
    what: "an energy per mole",
    units: u.smallEnergies,
    per: u.amounts,
    canonical: "J/mol",
    suggest: ["kJ/mol"],
    example: 75,
  },
  specificHeat: {
    what: "a specific heat",
    units: u.smallEnergies,
    per: u.massesByKelvin,
    canonical: "kJ/(kg K)",
    suggest: ["kJ/(kg K)", "J/(g K)"],
    example: 1.7,
  },
  rate: {
    what: "a rate",
    units: u.none,
    per: u.times,
    canonical: "/s",
    suggest: ["/s", "/min"],
    example: 0.012,
  },
  percent: { what: "a share", units: u.shares, canonical: "", suggest: ["%"], example: 10 },
  volumePerArea: {
    what: "a volume per area",
    units: u.volumes,
    per: u.areas,
    canonical: "mL/dm2",
    suggest: ["mL/dm2", "mL/m2"],
    example: 0.8,
  },
  massPerArea: {
    what: "a mass per area",
    units: u.masses,
    per: u.areas,
    canonical: "g/dm2",
    suggest: ["g/dm2", "g/m2"],
    example: 0.006,
  },
  volumePerMass: {
    what: "a liquor ratio",
    units: u.volumes,
    per: u.masses,
    canonical: "L/kg",
    suggest: ["L/kg"],
    example: 20,
  },
  areaPerVolume: {
    what: "an area per volume",
    units: u.areas,
    per: u.volumes,
    canonical: "dm2/mL",
    suggest: ["m2/L"],
    example: 12,
  },
  areaPerMass: {
    what: "an area per mass",
    units: u.areas,
    per: u.masses,
    canonical: "dm2/g",
    suggest: ["m2/g", "dm2/kg"],
    example: 0.5,
  },
  massPerMass: {
    what: "a mass per mass",
    units: u.masses,
    per: u.masses,
    canonical: "g/g",
    suggest: ["kg/g"],
    example: 2,
  },
  volumePerVolume: {
    what: "a volume per volume",
    units: u.volumes,
    per: u.volumes,
    canonical: "mL/L",
    suggest: ["mL/L"],
    example: 100,
  },
  massPerVolume: {
    what: "a mass per volume",
    units: u.masses,
    per: u.volumes,
    canonical: "g/L",
    suggest: ["g/L"],
    example: 20,
  },
  density: {
    what: "a density",
    units: u.masses,
    per: u.volumes,
    canonical: "g/cm3",
    suggest: ["g/cm3", "kg/m3"],
    example: 0.93,
  },
  amount: { what: "an amount of money", units: u.money, canonical: "", suggest: [""], example: 1.84 },
  pricePerVolume: {
    what: "a price per volume",
    units: u.none,
    per: u.volumes,
    canonical: "/L",
    suggest: ["/L"],
    example: 38,
  },
  pricePerMass: {
    what: "a price per mass",
    units: u.none,
    per: u.masses,
    canonical: "/kg",
    suggest: ["/kg"],
    example: 90,
  },
  pricePerEnergy: {
    what: "a price per energy",
    units: u.none,
    per: u.energies,
    canonical: "/kWh",
    suggest: ["/kWh"],
    example: 0.31,
  },
  pricePerTime: {
    what: "a price per time",
    units: u.none,
    per: u.times,
    canonical: "/h",
    suggest: ["/h"],
    example: 34,
  },
} as const satisfies Record<string, Kind>;

export type KindName = keyof typeof kinds;

/** The kind of a name, typed with its optional keys. */
export const kindOf = (name: KindName): Kind => kinds[name];
