import { mixedCelsius, type WarmBody } from "../mixing-temperature.js";
import { kwhOf } from "../power.js";
import type { BathHeat } from "./bath-heat.js";

/**
 * A bath's temperature, and the account of its heat. Written in place: the life of a bath is ten thousand loads.
 *
 * η heaterKwh + agitationKwh = bathKwh + partsKwh + topUpKwh + lostKwh. Liquor that leaves takes its heat along and has no
 * term, nor has water that evaporates beyond its latent heat, which is part of the loss.
 */
export interface HeatState {
  celsius: number;
  /** Liquor, measured hot; evaporation takes it down. */
  volumeL: number;
  /** Heat capacity of the parts that are in the bath [J/K], 0 while there are none. */
  partsJPerK: number;
  seconds: number;
  /** From the mains. */
  heaterKwh: number;
  agitationKwh: number;
  /** Through surface and walls. */
  lostKwh: number;
  /** Σ C dT of the liquor. */
  bathKwh: number;
  /** Σ m c_p (T - temperature at which they went in). */
  partsKwh: number;
  /** Σ m c (T of the mixture - temperature of what was poured in). */
  topUpKwh: number;
  /** Hot litres. */
  evaporatedL: number;
}

/** A bath at a temperature, its account empty. */
export const heatState = (celsius: number, volumeL: number): HeatState => ({
  celsius,
  volumeL,
  partsJPerK: 0,
  seconds: 0,
  heaterKwh: 0,
  agitationKwh: 0,
  lostKwh: 0,
  bathKwh: 0,
  partsKwh: 0,
  topUpKwh: 0,
  evaporatedL: 0,
});

/** The state as it is now, to be gone on from in another way. */
export const copyOfHeat = (state: HeatState): HeatState => ({
  celsius: state.celsius,
  volumeL: state.volumeL,
  partsJPerK: state.partsJPerK,
  seconds: state.seconds,
  heaterKwh: state.heaterKwh,
  agitationKwh: state.agitationKwh,
  lostKwh: state.lostKwh,
  bathKwh: state.bathKwh,
  partsKwh: state.partsKwh,
  topUpKwh: state.topUpKwh,
  evaporatedL: state.evaporatedL,
});

/** With less liquor than 1 mL a bath is dry, and its heat is not followed any further. */
export const isDry = ({ volumeL }: Pick<HeatState, "volumeL">): boolean => !(volumeL > 1e-3);

/** What is in the bath already warms or cools to a temperature. */
function bringTo(heat: BathHeat, state: HeatState, celsius: number): void {
  const kelvin = celsius - state.celsius;
  state.bathKwh += kwhOf(state.volumeL * heat.jPerLK * kelvin);
  state.partsKwh += kwhOf(state.partsJPerK * kelvin);
  state.celsius = celsius;
}

/** A heater without a limit brings a bath to its temperature at once. */
export function warmAtOnce(heat: BathHeat, state: HeatState): void {
  const kelvin = heat.celsius - state.celsius;
  if (!(kelvin > 0)) return;
  const jPerK = state.volumeL * heat.jPerLK + state.partsJPerK;
  state.heaterKwh += kwhOf((jPerK * kelvin) / heat.heaterEfficiency);
  bringTo(heat, state, heat.celsius);
}

/** Mixes something into the bath, and gives the heat [kWh] that it takes. */
function mixIn(heat: BathHeat, state: HeatState, added: WarmBody): number {
  const jPerK = state.volumeL * heat.jPerLK + state.partsJPerK;
  bringTo(heat, state, mixedCelsius({ jPerK, celsius: state.celsius }, added));
  return kwhOf(added.jPerK * (state.celsius - added.celsius));
}

/**
 * Parts go in, and bath and parts have one temperature at once. In truth parts take seconds to warm through, and the
 * bath is a little warmer meanwhile.
 * @source chemistry2eCalorimetry
 */
export function immerseParts(heat: BathHeat, state: HeatState, parts: WarmBody): void {
  state.partsKwh += mixIn(heat, state, parts);
  state.partsJPerK += parts.jPerK;
}

/** All parts come out, as warm as the bath. */
export function liftParts(state: HeatState): void {
  state.partsJPerK = 0;
}

/**
 * A top-up goes in, its volume [L] as it is once hot, and two waters of one density mix.
 * @source chemistry2eCalorimetry
 */
export function pourTopUp(
  heat: BathHeat,
  state: HeatState,
  topUp: { readonly volumeL: number; readonly celsius: number },
): void {
  const { volumeL, celsius } = topUp;
  state.topUpKwh += mixIn(heat, state, { jPerK: volumeL * heat.jPerLK, celsius });
  state.volumeL += volumeL;
}
