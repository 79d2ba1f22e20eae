/** First, last and step of the wavelengths at which everything is summed [nm]. */
export const tableGrid = { firstNm: 380, lastNm: 780, stepNm: 5, count: 81 } as const;

/** First, last and step of the wavelengths at which a smooth reflectance curve is held [nm]. */
export const curveGrid = { firstNm: 380, lastNm: 730, stepNm: 10, count: 36 } as const;

/** The wavelengths of a grid [nm]. */
export const wavelengthsOf = (grid: {
  readonly firstNm: number;
  readonly stepNm: number;
  readonly count: number;
}): readonly number[] => Array.from({ length: grid.count }, (_, i) => grid.firstNm + i * grid.stepNm);
