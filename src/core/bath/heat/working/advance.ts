import { kwhOf } from "../power.js";
import { type BathHeat, bathLossW, type HeatPhase, vapourLPerS } from "./bath-heat.js";
import { type Flow, follow, followTo, lengthTo, type Pace, type StepEnd } from "./flow.js";
import { type HeatState, isDry, warmAtOnce } from "./heat-state.js";

/** Heat given to the liquor [W]: a thermostat gives what is missing at its temperature, all it has below, none above. */
function givenAt(heat: BathHeat, phase: HeatPhase, celsius: number, lossW: number): number {
  const most = phase.heatingW + phase.agitationW;
  if (celsius < heat.celsius) return most;
  if (celsius > heat.celsius) return phase.agitationW;
  return Math.min(most, Math.max(phase.agitationW, lossW));
}

/** Heat and water of so many seconds at one temperature, with as much heat given as lost. */
function stay(heat: BathHeat, phase: HeatPhase, state: HeatState, givenW: number, seconds: number): void {
  const evaporatedL = Math.min(state.volumeL, vapourLPerS(heat, phase.openM2, state.celsius) * seconds);
  state.lostKwh += kwhOf(givenW * seconds);
  enter(heat, phase, state, givenW, seconds, evaporatedL);
}

/** Enters what heater and agitation drew, and the water that is gone. */
function enter(
  heat: BathHeat,
  phase: HeatPhase,
  state: HeatState,
  givenW: number,
  seconds: number,
  evaporatedL: number,
): void {
  state.seconds += seconds;
  state.heaterKwh += kwhOf(((givenW - phase.agitationW) / heat.heaterEfficiency) * seconds);
  state.agitationKwh += kwhOf(phase.agitationW * seconds);
  state.evaporatedL += evaporatedL;
  state.volumeL -= evaporatedL;
}

/**
 * One step of a working bath: C dT/dt = η P + agitation - loss(T), with the parts' heat capacity in C.
 *
 * Goes on for `length` [s] of the clock, which runs at `pace` where one is given, or for the longest step, or until the
 * bath comes to the temperature `stop` [°C], whichever is first, and gives the length done. A bath that the heater holds
 * goes on for any length, exactly. Σ C dT of the liquor is what was given and neither lost nor taken up by the parts.
 * @source shah2014
 */
export function advance(
  heat: BathHeat,
  phase: HeatPhase,
  state: HeatState,
  length: number,
  stop: number,
  pace?: Pace,
): number {
  if (phase.heatingW === Number.POSITIVE_INFINITY) warmAtOnce(heat, state);
  const { openM2 } = phase;
  const { celsius } = state;
  const lossW = bathLossW(heat, openM2, celsius);
  const givenW = givenAt(heat, phase, celsius, lossW);
  if (givenW === lossW || isDry(state)) {
    stay(heat, phase, state, givenW, pace === undefined ? length : length / pace(celsius));
    return length;
  }
  const jPerK = state.volumeL * heat.jPerLK + state.partsJPerK;
  const flow: Flow = { heat, openM2, pace, celsius, givenW, jPerK };
  const end: StepEnd = { celsius, seconds: 0, lostJ: 0, evaporatedL: 0 };
  const longest = Math.min(
    (heat.step.share * jPerK) / phase.lossWPerK,
    (heat.step.kelvin * jPerK) / Math.abs(givenW - lossW),
  );
  const most = Math.min(length, pace === undefined ? longest : longest * pace(celsius));
  let done = Math.min(most, lengthTo(flow, stop));
  if (done < most) done = followTo(flow, stop, done, end);
  if (done >= most) {
    done = most;
    follow(flow, most, end);
    if ((stop - celsius) * (end.celsius - stop) > 0) done = followTo(flow, stop, most, end);
  }
  const partsJ = state.partsJPerK * (end.celsius - celsius);
  state.celsius = end.celsius;
  state.partsKwh += kwhOf(partsJ);
  state.bathKwh += kwhOf(givenW * end.seconds - end.lostJ - partsJ);
  state.lostKwh += kwhOf(end.lostJ);
  enter(heat, phase, state, givenW, end.seconds, end.evaporatedL);
  return done;
}
