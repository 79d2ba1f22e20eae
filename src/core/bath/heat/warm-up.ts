import { integrate } from "../../maths/quadrature.js";
import type { Room } from "../../model/batch.js";
import { waterDensityKgM3 } from "../water.js";
import { tankLossW } from "./heat-loss.js";
import { type HeatedTank, sensibleHeatKj } from "./heating.js";

/** A place on the way up. */
export interface WarmUpPoint {
  readonly minutes: number;
  readonly celsius: number;
}

/**
 * Temperatures on the way from the room's to a bath's, lid on, in equal steps of temperature, with their times.
 *
 * t(T) = ∫ m c dT'/(η P - loss(T')), as in `heatUp`, whose time the last point has. A tank whose heater stops
 * short has points up to 98 % of the way to where it stops, given as `stopsAtCelsius`; without a heater, none.
 * @source shah2014
 * @example
 * warmUp({ volumeL: 6, surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid", heaterW: 400, heaterEfficiency: 0.9 }, 80, { celsius: 20, humidity: 0.5 }, { steps: 2 }).map((point) => point.celsius) // => [20, 50, 80]
 * warmUp({ volumeL: 6, surfaceCm2: 450, wallAreaDm2: 18, insulation: "none", cover: "lid", heaterW: 400, heaterEfficiency: 0.9 }, 80, { celsius: 20, humidity: 0.5 }, { steps: 2 })[2].minutes // => 91.652
 */
export function warmUp(
  tank: HeatedTank,
  celsius: number,
  room: Room,
  how: { readonly steps?: number; readonly stopsAtCelsius?: number } = {},
): WarmUpPoint[] {
  const givenW = (tank.heaterW ?? 0) * tank.heaterEfficiency;
  if (!(givenW > 0)) return [];
  const { steps = 12, stopsAtCelsius } = how;
  const rise = (stopsAtCelsius === undefined ? celsius : stopsAtCelsius) - room.celsius;
  const top = room.celsius + (stopsAtCelsius === undefined ? rise : 0.98 * rise);
  if (!(top > room.celsius)) return [];
  // The mass is that of the bath asked for, as filled, however far the heater gets.
  const joulePerKelvin = 1000 * sensibleHeatKj((tank.volumeL * waterDensityKgM3(celsius)) / 1000, 1);
  const secondsPerKelvin = (t: number): number =>
    joulePerKelvin / (givenW - tankLossW(tank, t, room, "heating"));
  const points: WarmUpPoint[] = [{ minutes: 0, celsius: room.celsius }];
  for (let i = 1; i <= steps; i++) {
    const before = points[i - 1]!;
    const next = room.celsius + ((top - room.celsius) * i) / steps;
    const minutes = before.minutes + integrate(secondsPerKelvin, before.celsius, next) / 60;
    points.push({ minutes, celsius: next });
  }
  return points;
}
