/**
 * Density of air-free liquid water at 1 atm, a ratio of polynomials in the temperature.
 *
 * ρ = (999.83952 + 16.945176 t - 7.9870401e-3 t² - 46.170461e-6 t³ + 105.56302e-9 t⁴ - 280.54253e-12 t⁵)
 * / (1 + 16.87985e-3 t), t [°C], ρ [kg/m³].
 * Valid from 0 to 150 °C; within 0.012 kg/m³ of IAPWS-IF97 from 0 to 100 °C.
 * @source kell1975 equation 16
 * @example
 * waterDensityKgM3(20) // => 998.204
 * waterDensityKgM3(80) // => 971.798
 */
export function waterDensityKgM3(celsius: number): number {
  const t = celsius;
  const above =
    999.83952 +
    t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
  return above / (1 + 16.87985e-3 * t);
}

/**
 * Volume that hot water takes when it has cooled to the room's temperature, per volume measured hot.
 *
 * ρ(hot) / ρ(room) [L/L]. Valid from 0 to 150 °C.
 * @source kell1975 equation 16
 * @example
 * coldPerHot(80, 20) // => 0.97355
 */
export const coldPerHot = (celsius: number, roomCelsius: number): number =>
  waterDensityKgM3(celsius) / waterDensityKgM3(roomCelsius);

/**
 * Vapour pressure of water at saturation.
 *
 * p = 0.61121 exp((18.678 - t/234.5) t/(257.14 + t)), t [°C], p [kPa].
 * Valid from 0 to 100 °C; within 0.075 % of IAPWS-IF97 up to 95 °C, 0.109 % low at 100 °C.
 * @source buck1996 appendix 1, over water
 * @example
 * saturationPressureKpa(20) // => 2.3383
 * saturationPressureKpa(80) // => 47.410
 */
export const saturationPressureKpa = (celsius: number): number =>
  0.61121 * Math.exp(((18.678 - celsius / 234.5) * celsius) / (257.14 + celsius));

/**
 * Heat that one kilogram of water takes up when it evaporates, a straight line through the table at 0 °C.
 *
 * L = 2501 - 2.36 t, t [°C], L [kJ/kg].
 * Valid from 0 to 100 °C; against IAPWS-IF97 within 0.1 % up to 65 °C, then too high: 0.18 % at 80 °C,
 * 0.32 % at 95 °C, 0.38 % at 100 °C. Evaporation itself is known to some 20 %.
 * @source psychrometry
 * @example
 * latentHeatKjPerKg(80) // => 2312.2
 */
export const latentHeatKjPerKg = (celsius: number): number => 2501 - 2.36 * celsius;
