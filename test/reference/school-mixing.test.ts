import { expect, test } from "vitest";
import { mixedCelsius } from "../../src/core/bath/heat/mixing-temperature.js";

test("40 g of water at 20 °C and 100 g at 80 °C mix to 62.9 °C", () => {
  // source: schoolMixing
  const celsius = mixedCelsius({ jPerK: 100, celsius: 80 }, { jPerK: 40, celsius: 20 });
  expect(celsius).toBeCloseTo(62.9, 1);
  expect(Math.abs(celsius / 62.8571 - 1)).toBeLessThan(1e-5);
});
