import { integrate } from "../../../maths/quadrature.js";
import { type BathHeat, bathLossW, vapourLPerS } from "./bath-heat.js";
import { type CelsiusTable, tabulate } from "./celsius-table.js";

/**
 * Share of its volume that a bath keeps while it cools from a temperature to another, everything off, tabulated by the
 * temperature it starts from.
 *
 * V_end/V = exp(-∫ c w(T)/loss(T) dT): c heat capacity of a litre [J/(L K)], w water that evaporates [L/s], loss [W], both
 * of the open surface. The volume itself cancels out: a fuller bath cools longer and loses more in proportion.
 * Undefined where the room is too warm for it.
 * @source shah2014
 */
export function cooledShare(heat: BathHeat, toCelsius: number): CelsiusTable | undefined {
  const { openM2 } = heat.cooling;
  if (!(bathLossW(heat, openM2, toCelsius) > 0)) return undefined;
  const dried = (celsius: number): number =>
    (heat.jPerLK * vapourLPerS(heat, openM2, celsius)) / bathLossW(heat, openM2, celsius);
  return tabulate((celsius) => (celsius <= toCelsius ? 1 : Math.exp(-integrate(dried, toCelsius, celsius))), {
    fromCelsius: toCelsius,
    toCelsius: Math.max(toCelsius + 1, 100),
    cellsPerKelvin: 1,
  });
}
