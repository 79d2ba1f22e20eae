/** Whether a text is a day that exists, ISO 8601. */
export const isDay = (text: string): boolean => {
  const time = /^\d{4}-\d\d-\d\d$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(text);
};
