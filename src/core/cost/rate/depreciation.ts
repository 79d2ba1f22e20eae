/**
 * What a machine loses per unit of its life, in a straight line: (price + installation - salvage)/life.
 *
 * The life may be years, hours or pieces; the result is per that.
 * @source costingExercises
 * @example
 * straightLine({ price: 19000, installation: 1500, salvage: 2500, life: 10 }) // => 1800
 */
export const straightLine = (machine: {
  readonly price: number;
  readonly installation?: number;
  readonly salvage?: number;
  readonly life: number;
}): number => (machine.price + (machine.installation ?? 0) - (machine.salvage ?? 0)) / machine.life;

/**
 * What an hour of use wears off a tank or dryer, nothing being left of it at the end.
 * @source costingExercises
 * @example
 * equipmentPerHour(140, 1400) // => 0.1
 */
export const equipmentPerHour = (price: number, lifeHours: number): number =>
  straightLine({ price, life: lifeHours });
