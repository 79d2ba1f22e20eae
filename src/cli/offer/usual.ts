/** Quantities of a price list, and hours of a week, where none are given. Common practice, no source. */
export const usualQuantities: readonly number[] = [1, 10, 50, 100];
export const usualHoursPerWeek = 40;
