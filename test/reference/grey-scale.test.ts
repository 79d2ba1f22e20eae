import { expect, test } from "vitest";
import { changeGrade, greyGrades, stainingGrade } from "../../src/core/colour/difference/grey-scale.js";

// source: isoA02 nominal differences of the grey scale for change in colour (preview of EN 20105-A02:1994)
const change = [0, 0.8, 1.7, 2.5, 3.4, 4.8, 6.8, 9.6, 13.6];
// source: isoA03 nominal differences of the grey scale for staining (from memory)
const staining = [0, 2.2, 4.3, 6.0, 8.5, 12.0, 16.9, 24.0, 34.1];
// source: isoA05 from these differences on the grade is the next one (from memory; midpoints of the nominals)
const from = [0.4, 1.25, 2.1, 2.95, 4.1, 5.8, 8.2, 11.6];

test("changeGrade returns every grade at its nominal difference, and a value within 0.05 of it", () => {
  change.forEach((deltaE, i) => {
    const { grade, value } = changeGrade([80, 0, 0], [80 - deltaE, 0, 0]);
    expect(grade).toBe(greyGrades[i]);
    expect(Math.abs(value - (5 - i / 2))).toBeLessThanOrEqual(0.03 + 1e-9);
  });
});

test("changeGrade returns the next grade from the limit on and the better one just below it", () => {
  from.forEach((limit, i) => {
    expect(changeGrade([0, 0, 0], [limit, 0, 0]).grade).toBe(greyGrades[i + 1]);
    expect(changeGrade([0, 0, 0], [limit - 1e-9, 0, 0]).grade).toBe(greyGrades[i]);
  });
});

test("stainingGrade returns every grade at its nominal difference, and a value within 0.03 of it", () => {
  staining.forEach((deltaE, i) => {
    const { grade, value } = stainingGrade([95, 0, 0], [95 - deltaE, 0, 0]);
    expect(grade).toBe(greyGrades[i]);
    expect(Math.abs(value - (5 - i / 2))).toBeLessThanOrEqual(0.03);
  });
});
