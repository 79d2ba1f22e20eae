import fc from "fast-check";
import { expect, test } from "vitest";
import { makeUp } from "../../../../src/core/bath/make-up/make-up.js";
import { waterDensityKgM3 } from "../../../../src/core/bath/water.js";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("a hot bath is filled with less cold water, by the ratio of densities", () => {
  const dilution = { kind: "liquid", fraction: 0.1 } as const;
  const made = makeUp({ volumeHotL: 6, celsius: 80, roomCelsius: 20, dilution });
  expect(made.volumeColdL).toBeCloseTo((6 * 971.7978) / 998.2041, 5);
  expect(made).toMatchObject({ fraction: 0.1, volumeHotL: 6 });
});

test("concentrate and water are the whole cold fill, and its mass is that of the hot volume", () => {
  fc.assert(
    fc.property(number(0.5, 100), number(20, 98), number(0.001, 1), (volumeHotL, celsius, fraction) => {
      const made = makeUp({ volumeHotL, celsius, roomCelsius: 18, dilution: { kind: "liquid", fraction } });
      if (!("concentrateMl" in made)) throw new Error("liquid expected");
      expect((made.concentrateMl + made.waterMl) / 1000 / made.volumeColdL).toBeCloseTo(1, 12);
      expect(made.concentrateMl / (1000 * made.volumeColdL)).toBeCloseTo(fraction, 12);
      const coldKg = made.volumeColdL * waterDensityKgM3(18);
      expect(coldKg / (volumeHotL * waterDensityKgM3(celsius))).toBeCloseTo(1, 12);
    }),
  );
});

test("powder is weighed by the cold fill, all of which is water", () => {
  const dilution = { kind: "powder", gramsPerL: 20 } as const;
  const made = makeUp({ volumeHotL: 6, celsius: 80, roomCelsius: 20, dilution });
  const volumeColdL = (6 * waterDensityKgM3(80)) / waterDensityKgM3(20);
  expect(made).toEqual({
    gramsPerL: 20,
    volumeHotL: 6,
    volumeColdL,
    powderG: 20 * volumeColdL,
    waterMl: 1000 * volumeColdL,
  });
});
