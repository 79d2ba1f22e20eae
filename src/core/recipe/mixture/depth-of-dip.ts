import { lawUptake } from "../../uptake/law/laws.js";
import { referenceUptake, speedAt, type UptakeModel } from "../../uptake/law/uptake-model.js";

/** A dip in a bath of several dyes: one time [s] and one temperature [°C] for all of them. */
export interface RecipeDip {
  readonly seconds: number;
  readonly celsius: number;
}

/**
 * Depth that a dye of strength 1 takes in a dip of a mixed bath: g(k(T) t)/g(k_ref t_ref) [-]; of strength s a(s) times
 * that.
 *
 * At a fixed time uptake through a film and by diffusion is proportional to the liquor, whatever the law. `dipSeconds`,
 * which asks for the time of a fixed depth at another strength, keeps between two laws instead.
 * @source crank1975 linear uptake at a constant surface concentration
 * @example
 * depthOfDip({ law: "first-order", ratePerSecond: 0.01, referenceSeconds: 100, referenceCelsius: 80, activationEnergyJPerMol: 75000 }, { seconds: 50, celsius: 80 }) // => 0.622459
 */
export const depthOfDip = (uptake: UptakeModel, { seconds, celsius }: RecipeDip): number =>
  lawUptake(
    uptake.law,
    (uptake.ratePerSecond * speedAt(uptake, celsius) * seconds) / (uptake.timeFactor ?? 1),
  ) / referenceUptake(uptake);
