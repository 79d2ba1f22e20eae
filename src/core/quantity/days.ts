const dayMs = 86_400_000;

/** First and last year of days that are planned: any other is a slip, and days after them have four digits too. */
export const [firstYear, lastYear] = [1900, 2999];

/**
 * Whether a day is in one of these years.
 * @example
 * isInYears("2027-04-16") // => true
 * isInYears("9999-12-31") // => false
 */
export function isInYears(date: string): boolean {
  const year = Number(date.slice(0, 4));
  return year >= firstYear && year <= lastYear;
}

const time = (date: string): number => Date.parse(`${date.slice(0, 10)}T00:00:00Z`);

/**
 * A day so many days later; ISO 8601.
 * @example
 * daysLater("2028-02-28", 2) // => "2028-03-01"
 */
export const daysLater = (date: string, days: number): string =>
  new Date(time(date) + days * dayMs).toISOString().slice(0, 10);

/**
 * Days from one day to another.
 * @example
 * daysBetween("2027-04-12", "2027-04-19") // => 7
 */
export const daysBetween = (from: string, to: string): number => (time(to) - time(from)) / dayMs;

/**
 * The day of the week, 1 for Monday to 7 for Sunday.
 * @example
 * weekdayOf("2027-04-16") // => 5
 */
export const weekdayOf = (date: string): number => ((new Date(time(date)).getUTCDay() + 6) % 7) + 1;

/** Short names of the days of the week, from Monday. */
export const weekdayNames = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
