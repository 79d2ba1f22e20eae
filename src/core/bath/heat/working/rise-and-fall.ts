import { advance } from "./advance.js";
import { type BathHeat, bathLossW, type HeatPhase } from "./bath-heat.js";
import { type HeatState, isDry, warmAtOnce } from "./heat-state.js";

/** With less to spare a bath does not get there in any time that counts [W]. */
const LEAST_W = 1e-6;

/** Goes on until the bath has a temperature; undefined where it is dry before. */
function goTo(heat: BathHeat, phase: HeatPhase, state: HeatState, celsius: number): number | undefined {
  const start = state.seconds;
  while (state.celsius !== celsius) {
    if (isDry(state)) return undefined;
    advance(heat, phase, state, Number.POSITIVE_INFINITY, celsius);
  }
  return state.seconds - start;
}

/**
 * Heats a bath, lid on, until it has risen to a temperature [°C], and gives the seconds that takes: 0 where it is that
 * warm already. Undefined, and nothing done, where the heater cannot get it there.
 *
 * t = ∫ C dT/(η P - loss(T)). Valid up to the temperature of the thermostat, below boiling. A heater without a limit
 * takes no time and goes on to that temperature.
 * @source shah2014
 */
export function riseTo(heat: BathHeat, state: HeatState, celsius: number): number | undefined {
  const { covered } = heat;
  if (state.celsius >= celsius) return 0;
  if (celsius > heat.celsius) return undefined;
  if (!(covered.heatingW - bathLossW(heat, covered.openM2, celsius) > LEAST_W)) return undefined;
  if (covered.heatingW < Number.POSITIVE_INFINITY) return goTo(heat, covered, state, celsius);
  warmAtOnce(heat, state);
  return 0;
}

/**
 * Lets a bath cool with everything off, lid and balls too, until it has fallen to a temperature [°C], and gives the seconds that
 * takes; water evaporates meanwhile. Undefined, and nothing done, where the room is too warm for it.
 *
 * t = ∫ C dT/loss(T). Nothing is left on the liquor.
 * @source shah2014
 */
export function fallTo(heat: BathHeat, state: HeatState, celsius: number): number | undefined {
  const { cooling } = heat;
  if (state.celsius <= celsius) return 0;
  if (!(bathLossW(heat, cooling.openM2, celsius) > LEAST_W)) return undefined;
  return goTo(heat, cooling, state, celsius);
}
