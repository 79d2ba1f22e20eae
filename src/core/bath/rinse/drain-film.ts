import { kelvinAtZeroCelsius } from "../../quantity/kelvin.js";
import { waterDensityKgM3 } from "../water.js";

/** Standard gravity [m/s²], exact by definition. */
const GRAVITY = 9.80665;

/**
 * Viscosity of water [Pa s]: 2.414e-5 × 10^(247.8/(T - 140)), T [K].
 *
 * Constants from memory. Valid from 0 to 100 °C, within 2.5 % of the IAPWS formulation there, 1 % above 40 °C.
 * @source waterTable
 * @example
 * waterViscosityPaS(80) // => 0.000351
 */
export const waterViscosityPaS = (celsius: number): number =>
  2.414e-5 * 10 ** (247.8 / (celsius + kelvinAtZeroCelsius - 140));

/**
 * Liquor that is left on a smooth upright wall after draining [mL/dm²]: mean film (2/3) sqrt(μ z/(ρ g t)).
 *
 * z height of the wall [m], here in dm; t time [s]; μ, ρ of water. Holds once the film drains by its weight, from
 * some seconds on; nothing in it of drops at the lower edge, pockets or a rough surface.
 * @source jeffreys1930
 * @example
 * drainingFilmMlPerDm2({ seconds: 30, heightDm: 1, celsius: 80 }) // => 0.0739
 */
export const drainingFilmMlPerDm2 = (wall: {
  readonly seconds: number;
  readonly heightDm: number;
  readonly celsius: number;
}): number =>
  1e4 *
  (2 / 3) *
  Math.sqrt(
    (waterViscosityPaS(wall.celsius) * (wall.heightDm / 10)) /
      (waterDensityKgM3(wall.celsius) * GRAVITY * wall.seconds),
  );
