/** A working day, and the days that are worked, where nobody says. Common practice, no source. */
export const usualHours = 8;
export const usualDays = "mon-fri";
