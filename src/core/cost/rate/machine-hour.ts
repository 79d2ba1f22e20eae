/**
 * One machine's share of a charge that several places have in common.
 * @source costingExercises
 * @example
 * sharedCharge(400, { used: 1, of: 4 }) // => 100
 */
export const sharedCharge = (charge: number, part: { readonly used: number; readonly of: number }): number =>
  (charge * part.used) / part.of;

/**
 * What an hour of a machine costs: all charges of a period over the hours it works in that period.
 * @source costingExercises
 * @example
 * machineHourRate([80, 100, 150, 290], 160) // => 3.875
 */
export const machineHourRate = (charges: readonly number[], hours: number): number =>
  charges.reduce((sum, charge) => sum + charge, 0) / hours;
