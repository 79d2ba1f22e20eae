import type { Dryer } from "../../model/batch.js";

/** Energy [kWh] of joules. */
export const kwhOf = (joules: number): number => joules / 3_600_000;

/** Energy [kWh] of so many dryer runs. */
export const dryingKwh = ({ powerW, duty, minutes }: Dryer, runs: number): number =>
  kwhOf(powerW * duty * runs * minutes * 60);
