import { integrate } from "../../maths/quadrature.js";
import type { Room, Tank } from "../../model/batch.js";
import { waterDensityKgM3 } from "../water.js";
import { evaporationFluxKgM2H } from "./evaporation.js";
import { coverFactor, type LosingTank, type Phase, tankLossW } from "./heat-loss.js";

/** What heating up depends on; a tank without a heater has 0 W. */
export type HeatedTank = LosingTank & Pick<Tank, "volumeL" | "heaterEfficiency" | "heaterW">;

/** Time and mains energy to heat up; or the temperature where the heater stops short, the power it would take, and what a lid would do. */
export type HeatUp =
  | { readonly reached: true; readonly minutes: number; readonly kWh: number }
  | {
      readonly reached: false;
      readonly celsius: number;
      /** A heater must have more than this. */
      readonly neededW: number;
      /** Absent where the tank has a lid already. */
      readonly withLid?:
        | { readonly reached: true; readonly minutes: number }
        | { readonly reached: false; readonly celsius: number };
    };

/** Specific heat of water, its mean from 20 to 80 °C [kJ/(kg K)]. */
const WATER_KJ_PER_KG_K = 4.186;
/** Here the search for the reachable temperature ends: open water boils. */
const NEAR_BOILING = 99.9;

/**
 * Heat to warm a mass without losses: m c ΔT [kJ], c = 4.186 kJ/(kg K) where none is given.
 *
 * c of water is within 0.8 % of that from 0 to 100 °C.
 * @source openStaxPhysics table 14.1
 * @example
 * sensibleHeatKj(0.25, 60) // => 62.8
 */
export const sensibleHeatKj = (massKg: number, kelvin: number, kjPerKgK = WATER_KJ_PER_KG_K): number =>
  massKg * kjPerKgK * kelvin;

const netW = (tank: HeatedTank, celsius: number, room: Room): number =>
  (tank.heaterW ?? 0) * tank.heaterEfficiency - tankLossW(tank, celsius, room, "heating");

/** Losses grow with temperature, so bisection finds the one place where they eat the heater. */
function reachableCelsius(tank: HeatedTank, room: Room): number {
  let low = room.celsius;
  let high = NEAR_BOILING;
  if (netW(tank, high, room) > 0) return high;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (netW(tank, middle, room) > 0) low = middle;
    else high = middle;
  }
  return low;
}

function minutesTo(tank: HeatedTank, celsius: number, room: Room, fromCelsius: number): number {
  if (celsius <= fromCelsius) return 0;
  if (celsius > NEAR_BOILING) return Number.POSITIVE_INFINITY;
  if (!(netW(tank, celsius, room) > 0 && netW(tank, fromCelsius, room) > 0)) return Number.POSITIVE_INFINITY;
  const massKg = (tank.volumeL * waterDensityKgM3(celsius)) / 1000;
  const joulePerKelvin = sensibleHeatKj(massKg, 1) * 1000;
  return (joulePerKelvin * integrate((t) => 1 / netW(tank, t, room), fromCelsius, celsius)) / 60;
}

/**
 * Time and energy to heat a bath up, lid on, from the room's temperature or another, or where its heater stops short.
 *
 * t = ∫ m c dT/(η P - loss(T)); m working volume times density at the end [kg], c = 4.186 kJ/(kg K), η P heat
 * given to the liquor [W]; energy = P t. The tank's own mass is neglected. Valid to below boiling.
 * @source shah2014
 * @example
 * heatUp({ volumeL: 6, surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid", heaterW: 400, heaterEfficiency: 0.9 }, 80, { celsius: 20, humidity: 0.5 }).minutes // => 91.652
 * heatUp({ volumeL: 6, surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "none", heaterW: 400, heaterEfficiency: 0.9 }, 80, { celsius: 20, humidity: 0.5 }).celsius // => 75.939
 */
export function heatUp(
  tank: HeatedTank,
  celsius: number,
  room: Room,
  fromCelsius: number = room.celsius,
): HeatUp {
  const minutes = minutesTo(tank, celsius, room, fromCelsius);
  if (Number.isFinite(minutes))
    return { reached: true, minutes, kWh: (((tank.heaterW ?? 0) / 1000) * minutes) / 60 };
  const short = {
    reached: false,
    celsius: reachableCelsius(tank, room),
    neededW: tankLossW(tank, celsius, room, "heating") / tank.heaterEfficiency,
  } as const;
  if (tank.cover === "lid") return short;
  const lidded = { ...tank, cover: "lid" } as const;
  const lidMinutes = minutesTo(lidded, celsius, room, fromCelsius);
  const withLid = Number.isFinite(lidMinutes)
    ? ({ reached: true, minutes: lidMinutes } as const)
    : ({ reached: false, celsius: reachableCelsius(lidded, room) } as const);
  return { ...short, withLid };
}

/**
 * Mains power that keeps a bath at its temperature while parts are dipped, lid off: loss/η [W].
 * @source shah2014
 * @example
 * holdingPowerW({ surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid", heaterEfficiency: 0.9 }, 80, { celsius: 20, humidity: 0.5 }) // => 463.16
 */
export const holdingPowerW = (
  tank: LosingTank & Pick<Tank, "heaterEfficiency">,
  celsius: number,
  room: Room,
): number => tankLossW(tank, celsius, room, "dipping") / tank.heaterEfficiency;

/**
 * Water that a tank loses to the air [kg/h], as covered in that phase.
 * @source shah2014
 * @example
 * evaporationKgPerH({ surfaceCm2: 450, cover: "lid" }, 80, { celsius: 20, humidity: 0.5 }, "dipping") // => 0.393
 */
export const evaporationKgPerH = (
  tank: Pick<Tank, "surfaceCm2" | "cover">,
  waterCelsius: number,
  room: Room,
  phase: Phase,
): number =>
  evaporationFluxKgM2H(waterCelsius, room) * (tank.surfaceCm2 / 1e4) * coverFactor(tank.cover, phase);
