import { expect, test } from "vitest";
import { mixedCelsius } from "../../src/core/bath/heat/mixing-temperature.js";

test("steel of 215 °C in 1.28 kg of water and its glass beaker at 10 °C: three bodies of 16.3 °C", () => {
  // source: universityPhysics2
  const celsius = mixedCelsius(
    { jPerK: 1.28 * 4186 + 0.2 * 840, celsius: 10 },
    { jPerK: 0.385 * 452, celsius: 215 },
  );
  expect(celsius).toBeCloseTo(16.3, 1);
  expect(Math.abs(celsius / 16.2585 - 1)).toBeLessThan(1e-5);
});
