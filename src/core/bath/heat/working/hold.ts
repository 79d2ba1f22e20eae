import { advance } from "./advance.js";
import type { BathHeat, HeatPhase } from "./bath-heat.js";
import type { HeatState } from "./heat-state.js";

/**
 * A bath passes so many seconds under its thermostat: at T_set the heater gives what is missing, below it all it has,
 * above it nothing. Agitation may carry the bath over T_set.
 * @source shah2014
 */
export function hold(heat: BathHeat, phase: HeatPhase, state: HeatState, seconds: number): void {
  let left = seconds;
  while (left > 0) left -= advance(heat, phase, state, left, heat.celsius);
}
