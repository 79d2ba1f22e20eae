import { advance } from "./advance.js";
import type { BathHeat } from "./bath-heat.js";
import type { Pace } from "./flow.js";
import type { HeatState } from "./heat-state.js";

/**
 * A dip in a bath whose temperature moves, lid off: it ends when ∫ k(T)/k(T_set) dt reaches the seconds that the depth
 * needs at T_set. Gives the seconds that it takes.
 *
 * `secondsAtSet` [s]; `pace` k(T)/k(T_set) [-], above 0: `dyePace`. The bath is followed on a clock that runs at the dye's
 * pace, on which the end of the dip is known; the wall clock is its integral.
 * @source codata2018 gas constant
 */
export function dip(heat: BathHeat, state: HeatState, secondsAtSet: number, pace: Pace): number {
  const start = state.seconds;
  let left = secondsAtSet;
  while (left > 0) left -= advance(heat, heat.dipping, state, left, heat.celsius, pace);
  return state.seconds - start;
}
