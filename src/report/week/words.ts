import { weekdayNames, weekdayOf } from "../../core/quantity/days.js";
import { duration } from "../../core/quantity/text/duration.js";

/** A day with the name of its weekday: "Mon 2027-04-12". */
export const daySaid = (date: string): string => `${weekdayNames[weekdayOf(date) - 1]} ${date}`;

/** The same without the year, for tables: "Mon 04-12". */
export const shortDay = (date: string): string => `${weekdayNames[weekdayOf(date) - 1]} ${date.slice(5)}`;

/** Minutes in hours and minutes, whole. */
export const hoursSaid = (minutes: number): string => duration(60 * Math.round(minutes));
