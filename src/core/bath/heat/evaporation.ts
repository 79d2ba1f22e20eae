import type { Room } from "../../model/batch.js";
import { kelvinAtZeroCelsius } from "../../quantity/kelvin.js";
import { latentHeatKjPerKg, saturationPressureKpa } from "../water.js";

const AIR_KPA = 101.325;
/** Gas constant of dry air [J/(kg K)]. */
const DRY_AIR = 287.042;
/** Molar mass of water over that of dry air. */
const WATER_TO_AIR = 0.621945;
const STEFAN_BOLTZMANN = 5.670374419e-8;

/** Dry air [kg] in a cubic metre of moist air whose vapour has the pressure `vapourKpa`. */
const dryAirKgM3 = (vapourKpa: number, celsius: number): number =>
  ((AIR_KPA - vapourKpa) * 1000) / (DRY_AIR * (celsius + kelvinAtZeroCelsius));

/** Humidity ratio: vapour [kg] per dry air [kg]. */
const humidityRatio = (vapourKpa: number): number => (WATER_TO_AIR * vapourKpa) / (AIR_KPA - vapourKpa);

/**
 * Water that evaporates from a warm, open, undisturbed surface into still air, by natural convection.
 *
 * m = 35 ρw (ρr - ρw)^(1/3) (Ww - Wr) [kg/(m² h)]; ρ = (p - pv)/(287.042 T) density of dry air at the
 * saturated surface (w) and in the room (r) [kg/m³]; W = 0.621945 pv/(p - pv) humidity ratio; p = 101.325 kPa;
 * zero where ρr < ρw, since cool surface air then stays where it is.
 * Valid for water from 7 to 94 °C, where it meets measurements to 18 % on average; undefined at boiling.
 * The constant 35 is from memory.
 * @source shah2014
 * @source buck1996 appendix 1, over water
 * @example
 * evaporationFluxKgM2H(80, { celsius: 20, humidity: 0.5 }) // => 8.739
 * evaporationFluxKgM2H(10, { celsius: 30, humidity: 0.5 }) // => 0
 */
export function evaporationFluxKgM2H(waterCelsius: number, room: Room): number {
  const surfaceKpa = saturationPressureKpa(waterCelsius);
  const roomKpa = room.humidity * saturationPressureKpa(room.celsius);
  const surface = dryAirKgM3(surfaceKpa, waterCelsius);
  const lift = dryAirKgM3(roomKpa, room.celsius) - surface;
  if (lift < 0) return 0;
  return 35 * surface * Math.cbrt(lift) * (humidityRatio(surfaceKpa) - humidityRatio(roomKpa));
}

/**
 * Heat that an open, undisturbed surface of hot liquor gives off to a still room.
 *
 * q = m L/3.6 + 5.5 (T - Ta) + 0.95 σ (T⁴ - Ta⁴) [W/m²]; m evaporation [kg/(m² h)], L latent heat [kJ/kg],
 * 5.5 W/(m² K) convection, 0.95 emissivity of water (both common practice, no source), temperatures of the
 * fourth powers in K. Valid as the evaporation is, from 7 to 94 °C.
 * @source shah2014
 * @source psychrometry
 * @example
 * surfaceLossWPerM2(80, { celsius: 20, humidity: 0.5 }) // => 6383
 */
export function surfaceLossWPerM2(waterCelsius: number, room: Room): number {
  const evaporation = (evaporationFluxKgM2H(waterCelsius, room) * latentHeatKjPerKg(waterCelsius)) / 3.6;
  const convection = 5.5 * (waterCelsius - room.celsius);
  const radiation =
    0.95 *
    STEFAN_BOLTZMANN *
    ((waterCelsius + kelvinAtZeroCelsius) ** 4 - (room.celsius + kelvinAtZeroCelsius) ** 4);
  return evaporation + convection + radiation;
}
