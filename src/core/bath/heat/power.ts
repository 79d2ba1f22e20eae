import type { Dryer, Tank } from "../../model/batch.js";

/** Energy [kWh] of joules. */
export const kwhOf = (joules: number): number => joules / 3_600_000;

/** Power [W] drawn to hold a bath: a heater that falls behind its losses draws its full power, not more. */
export const heldW = ({ heaterW }: Pick<Tank, "heaterW">, holdingW: number): number =>
  Math.min(holdingW, heaterW ?? holdingW);

/** Energy [kWh] of so many dryer runs. */
export const dryingKwh = ({ powerW, duty, minutes }: Dryer, runs: number): number =>
  kwhOf(powerW * duty * runs * minutes * 60);
