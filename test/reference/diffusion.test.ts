import { expect, test } from "vitest";
import { lawUptake } from "../../src/core/uptake/law/laws.js";

/**
 * M_t/M_inf of a plane sheet, cylinder and sphere in an infinite bath against T = D t/l²
 * (source: crank1975, equations 4.18, 5.22, 6.20; 30-digit series, checked by numerical inversion of the
 * Laplace transform).
 */
const table: readonly { T: number; plane: number; cylinder: number; sphere: number }[] = [
  { T: 0.0005, plane: 0.0252313252202, cylinder: 0.04996051590545, sphere: 0.0741939756606 },
  { T: 0.002, plane: 0.0504626504404, cylinder: 0.0989079578188, sphere: 0.1453879513212 },
  { T: 0.005, plane: 0.07978845608029, cylinder: 0.1545070702887, sphere: 0.2243653682409 },
  { T: 0.01, plane: 0.1128379167096, cylinder: 0.2154739381795, sphere: 0.3085137501287 },
  { T: 0.02, plane: 0.1595769121606, cylinder: 0.2985639088217, sphere: 0.4187307364817 },
  { T: 0.05, plane: 0.2523132521778, cylinder: 0.4521209979966, sphere: 0.6069397566788 },
  { T: 0.1, plane: 0.3568234004525, cylinder: 0.6058241939667, sphere: 0.770478738026 },
  { T: 0.2, plane: 0.5040878202025, cylinder: 0.7821475525427, sphere: 0.9154955661077 },
];

const parabolic = (multiple: number, T: number): number =>
  lawUptake("parabolic", (multiple ** 2 * T) / Math.PI);

/** The plane sheet of the table by its series, for the T between its rows. */
function planeSheet(T: number): number {
  let sum = 0;
  for (let n = 0; n < 60; n += 1)
    sum += Math.exp((-((2 * n + 1) ** 2) * Math.PI ** 2 * T) / 4) / (2 * n + 1) ** 2;
  return 1 - (8 / Math.PI ** 2) * sum;
}

/** T at which the plane sheet has taken up a share of its plateau. */
function timeOf(uptake: number): number {
  let [low, high] = [1e-3, 2];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (planeSheet(middle) < uptake) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

test("the series gives the plane sheet of the table and its half time", () => {
  for (const { T, plane } of table.filter((row) => row.T >= 0.005))
    expect(Math.abs(planeSheet(T) - plane)).toBeLessThan(1e-12);
  expect(Math.abs(timeOf(0.5) - 0.196730739524)).toBeLessThan(1e-11);
});

test("the parabolic law is the diffusion into a plane sheet up to 40 % of its plateau, within 0.004 %", () => {
  for (const { T, plane } of table.filter((row) => row.plane < 0.4))
    expect(Math.abs(parabolic(2, T) / plane - 1)).toBeLessThan(4e-5);
});

test.each([
  [0.4, 0.004],
  [0.5, 0.1],
  [0.55, 0.28],
  [0.6, 0.64],
])(
  "at %d of the plateau the parabolic law is off the diffusion into a plane sheet by %d %%",
  (uptake, percent) => {
    // source: crank1975, equation 4.20; the relative errors were computed beside the table
    const off = 100 * Math.abs(parabolic(2, timeOf(uptake)) / uptake - 1);
    const lastDigit = percent < 0.01 ? 0.001 : 0.01;
    expect(Math.abs(off - percent)).toBeLessThan(lastDigit / 2);
  },
);

test("the parabolic law with the next term is the diffusion into a cylinder and a sphere at short times", () => {
  for (const { T, cylinder, sphere } of table.slice(0, 4)) {
    expect(Math.abs((parabolic(4, T) - T) / cylinder - 1)).toBeLessThan(0.001);
    expect(Math.abs((parabolic(6, T) - 3 * T) / sphere - 1)).toBeLessThan(1e-9);
  }
});
