import { expect, test } from "vitest";
import { floatAdvice, floats } from "../../../src/core/part/floats.js";
import { meanWallMm, thinWallAdvice } from "../../../src/core/part/wall.js";
import { measured, near } from "./tools/expecting.js";
import { binaryStl } from "./tools/files.js";
import { box, sphere } from "./tools/solids.js";

test("floats returns whether a part is lighter than the water of the bath", () => {
  expect(floats(0.93, 80)).toBe(true);
  // Water has 0.9718 g/cm3 at 80 °C.
  expect(floats(0.971, 80)).toBe(true);
  expect(floats(0.973, 80)).toBe(false);
  expect(floats(0.973, 20)).toBe(true);
  expect(floatAdvice(0.93, 80)).toMatch(/basket or weight/);
  expect(floatAdvice(1.01, 80)).toBeUndefined();
});

test("meanWallMm returns nearly the thickness of a plate and two thirds of the radius of a ball", async () => {
  const plate = await measured(binaryStl(box([0, 0, 0], [400, 500, 1])));
  near(meanWallMm(plate.volumeCm3, plate.areaCm2), 1, 0.005);
  const ball = await measured(binaryStl(sphere(30, 96)));
  near(meanWallMm(ball.volumeCm3, ball.areaCm2), 20, 0.001);
});

test("thinWallAdvice says to support and cool flat below 1.5 mm only", () => {
  const at = (mm: number) => thinWallAdvice(mm / 20, 1);
  expect(at(1.49)).toMatch(/support and cool flat/);
  expect(at(1.5)).toBeUndefined();
});
