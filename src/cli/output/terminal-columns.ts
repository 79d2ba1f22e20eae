/** Columns of a terminal that does not say how wide it is. */
const usual = 80;
/** With fewer columns words break more often than lines. */
const least = 20;

/** Columns to lay text out for: those of the terminal, where it says a width that text can be laid out for. */
export const terminalColumns = (said: number | undefined): number =>
  said !== undefined && Number.isFinite(said) && said >= 1 ? Math.max(least, Math.floor(said)) : usual;
