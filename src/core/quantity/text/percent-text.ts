/** "12.5 %". */
export const percentText = (share: number): string => `${(100 * share).toFixed(1)} %`;
