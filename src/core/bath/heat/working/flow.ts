import { type BathHeat, bathLossW, vapourLPerS } from "./bath-heat.js";

/** How fast a clock runs at a temperature [°C], against seconds. */
export type Pace = (celsius: number) => number;

/** A bath at the start of a step, what is given to it, and the clock that it is followed on. */
export interface Flow {
  readonly heat: BathHeat;
  readonly openM2: number;
  /** Absent: the clock on the wall. */
  readonly pace: Pace | undefined;
  readonly celsius: number;
  /** Heater and agitation, as heat in the liquor. */
  readonly givenW: number;
  /** Of liquor and parts. */
  readonly jPerK: number;
}

/** Where a step ends, and what passed in it. */
export interface StepEnd {
  celsius: number;
  seconds: number;
  lostJ: number;
  evaporatedL: number;
}

/** Seconds that pass while the clock goes on by one. */
const secondsOf = (pace: Pace | undefined, celsius: number): number =>
  pace === undefined ? 1 : 1 / pace(celsius);

/**
 * A step of a length on the clock: the classical fourth-order Runge-Kutta method for temperature, seconds, heat lost and
 * water evaporated together.
 *
 * dT/dx = (given - loss(T))/(C k(T)): x length on the clock, k its pace, C heat capacity [J/K] of parts and what liquor is
 * left.
 * @source hairer1993 section II.1
 */
export function follow(flow: Flow, length: number, end: StepEnd): void {
  const { heat, openM2, pace, celsius: t1, givenW, jPerK } = flow;
  const half = length / 2;
  const seconds1 = secondsOf(pace, t1);
  const lost1 = seconds1 * bathLossW(heat, openM2, t1);
  const vapour1 = seconds1 * vapourLPerS(heat, openM2, t1);
  const slope1 = (givenW * seconds1 - lost1) / jPerK;

  const t2 = t1 + half * slope1;
  const seconds2 = secondsOf(pace, t2);
  const lost2 = seconds2 * bathLossW(heat, openM2, t2);
  const vapour2 = seconds2 * vapourLPerS(heat, openM2, t2);
  const slope2 = (givenW * seconds2 - lost2) / (jPerK - half * vapour1 * heat.jPerLK);

  const t3 = t1 + half * slope2;
  const seconds3 = secondsOf(pace, t3);
  const lost3 = seconds3 * bathLossW(heat, openM2, t3);
  const vapour3 = seconds3 * vapourLPerS(heat, openM2, t3);
  const slope3 = (givenW * seconds3 - lost3) / (jPerK - half * vapour2 * heat.jPerLK);

  const t4 = t1 + length * slope3;
  const seconds4 = secondsOf(pace, t4);
  const lost4 = seconds4 * bathLossW(heat, openM2, t4);
  const vapour4 = seconds4 * vapourLPerS(heat, openM2, t4);
  const slope4 = (givenW * seconds4 - lost4) / (jPerK - length * vapour3 * heat.jPerLK);

  const sixth = length / 6;
  end.celsius = t1 + sixth * (slope1 + 2 * slope2 + 2 * slope3 + slope4);
  end.seconds = sixth * (seconds1 + 2 * seconds2 + 2 * seconds3 + seconds4);
  end.lostJ = sixth * (lost1 + 2 * lost2 + 2 * lost3 + lost4);
  end.evaporatedL = sixth * (vapour1 + 2 * vapour2 + 2 * vapour3 + vapour4);
}

/** Heat that stays in the bath in a unit of the clock [J]. */
const gainJ = ({ heat, openM2, pace, givenW }: Flow, celsius: number): number =>
  (givenW - bathLossW(heat, openM2, celsius)) * secondsOf(pace, celsius);

/**
 * Length on the clock until a temperature [°C] is reached, by Simpson's rule: ∫ C k dT/(given - loss(T)). Infinite
 * where the bath does not go there. Good enough as a start for `followTo` where the temperature is near.
 */
export function lengthTo(flow: Flow, celsius: number): number {
  const kelvin = celsius - flow.celsius;
  const lastJ = gainJ(flow, celsius);
  if (!(lastJ * kelvin > 0)) return Number.POSITIVE_INFINITY;
  const middle = flow.celsius + kelvin / 2;
  const perJ = 1 / gainJ(flow, flow.celsius) + 4 / gainJ(flow, middle) + 1 / lastJ;
  const length = (kelvin / 6) * flow.jPerK * perJ;
  const vapourL = vapourLPerS(flow.heat, flow.openM2, middle) * secondsOf(flow.pace, middle) * length;
  const driedShare = (vapourL * flow.heat.jPerLK) / (2 * flow.jPerK);
  return driedShare < 1 ? length * (1 - driedShare) : Number.POSITIVE_INFINITY;
}

/**
 * Follows a bath to a temperature [°C] and gives the length on the clock. Newton's method corrects the length that
 * is `nearly` right where it misses by more than 1e-7 K.
 */
export function followTo(flow: Flow, celsius: number, nearly: number, end: StepEnd): number {
  let length = nearly;
  follow(flow, length, end);
  for (let round = 0; round < 8 && Math.abs(end.celsius - celsius) > 1e-7; round++) {
    const jPerK = flow.jPerK - end.evaporatedL * flow.heat.jPerLK;
    length += ((celsius - end.celsius) * jPerK) / gainJ(flow, celsius);
    follow(flow, length, end);
  }
  end.celsius = celsius;
  return length;
}
