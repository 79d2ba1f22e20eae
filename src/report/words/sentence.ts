/** A text with a full stop behind it, where it does not end already. */
export const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/** A text as a sentence of its own: with a capital in front too. */
export const sentence = (text: string): string => ended(`${text.slice(0, 1).toUpperCase()}${text.slice(1)}`);
