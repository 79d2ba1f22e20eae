/** 0 °C [K], exact by definition of the Celsius scale. */
export const kelvinAtZeroCelsius = 273.15;
