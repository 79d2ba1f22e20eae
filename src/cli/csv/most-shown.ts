/** Faults of a file's rows that are shown; the rest are counted. */
export const mostShown = 100;
