/** Seconds in water of a temperature to a second degree burn, and to a worse one. */
export interface Scald {
  readonly celsius: number;
  readonly secondDegreeSeconds?: number;
  readonly seriousSeconds: number;
}

const rows: readonly Scald[] = [
  { celsius: 45, secondDegreeSeconds: 7200, seriousSeconds: 10800 },
  { celsius: 47, secondDegreeSeconds: 1200, seriousSeconds: 2700 },
  { celsius: 48, secondDegreeSeconds: 900, seriousSeconds: 1200 },
  { celsius: 48.9, secondDegreeSeconds: 480, seriousSeconds: 600 },
  { celsius: 51.1, secondDegreeSeconds: 120, seriousSeconds: 252 },
  { celsius: 55, secondDegreeSeconds: 17, seriousSeconds: 30 },
  { celsius: 60, secondDegreeSeconds: 3, seriousSeconds: 5 },
  { celsius: 62.8, seriousSeconds: 3 },
  { celsius: 65.6, seriousSeconds: 1.5 },
  { celsius: 68.3, seriousSeconds: 1 },
];

/**
 * The published row of the highest temperature that a liquor reaches; burns take no longer than it says.
 *
 * Undefined below 45 °C, where the table ends; above 68.3 °C its last row, so "at once".
 * @source scaldPlumbing table, 45 to 60 °C
 * @source scaldHospital 62.8 to 68.3 °C
 * @example
 * scald(61) // => { celsius: 60, secondDegreeSeconds: 3, seriousSeconds: 5 }
 * scald(80) // => { celsius: 68.3, seriousSeconds: 1 }
 * scald(40) // => undefined
 */
export const scald = (celsius: number): Scald | undefined => rows.findLast((row) => row.celsius <= celsius);
