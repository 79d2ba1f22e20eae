import { describe, expect, test } from "vitest";
import { type BathName, simulateBaths } from "./bath-simulation.js";
import { still, stirred } from "./layer-dyes.js";

// What this shows: how near a shade comes, in fresh and other baths, with dyes that go in by none of our laws. What it
// cannot show: that a real dye, a real bath or a real reader is like these. Only logged dips show that.

const quantile = (sorted: readonly number[], p: number): number =>
  sorted[Math.round(p * (sorted.length - 1))]!;

type Result = ReturnType<typeof simulateBaths>;

const printed = (title: string, result: Result): string =>
  [
    `${title}: CIEDE2000 over the best that the dye can give in that bath`,
    "bath       median    95th  interval holds",
    ...(Object.keys(result) as BathName[]).map((name) => {
      const { excess, held } = result[name];
      return `${name.padEnd(8)} ${quantile(excess, 0.5).toFixed(2).padStart(8)} ${quantile(excess, 0.95).toFixed(2).padStart(7)} ${held === null ? "" : `${(100 * held).toFixed(0).padStart(10)} of 100`}`;
    }),
  ].join("\n");

const simulated = (title: string, ...given: Parameters<typeof simulateBaths>): Result => {
  const result = simulateBaths(...given);
  process.stdout.write(`${printed(title, result)}\n`);
  return result;
};

const options = { dyes: 150, seed: 20261125, timed: false, changeOver: stirred } as const;

const weakOnly = { ...options, baths: ["70 %"] } as const;
const fewer = { ...options, dyes: 50, baths: ["fresh", "70 %"] } as const;

describe(`times for colours of ${options.dyes} invented layer dyes, read to 0.3 an axis`, () => {
  test("from four swatches: none refused, and near in every bath", () => {
    const result = simulated("four swatches", options, "swatches only");
    expect(quantile(result.fresh.excess, 0.5)).toBeLessThanOrEqual(0.17);
    const weak = result["70 %"];
    expect(quantile(weak.excess, 0.5)).toBeLessThanOrEqual(0.3);
    expect(quantile(weak.excess, 0.95)).toBeLessThanOrEqual(1.35);
    expect(weak.held).toBeGreaterThanOrEqual(0.85);
    for (const { refused } of Object.values(result)) expect(refused).toBe(0);
  });

  test("with one swatch of 60 s at half strength", () => {
    const weak = simulated("a half-strength swatch", weakOnly, "half-strength swatch")["70 %"];
    expect(quantile(weak.excess, 0.5)).toBeLessThanOrEqual(0.25);
    expect(quantile(weak.excess, 0.95)).toBeLessThanOrEqual(0.85);
  });

  test("after a trial dip of another shade, and of the same", () => {
    const other = simulated("a trial of another shade", weakOnly, "trial of another shade")["70 %"];
    expect(quantile(other.excess, 0.5)).toBeLessThanOrEqual(0.32);
    expect(quantile(other.excess, 0.95)).toBeLessThanOrEqual(1.4);
    const same = simulated("a trial of the shade", weakOnly, "trial of the shade")["70 %"];
    expect(quantile(same.excess, 0.5)).toBeLessThanOrEqual(0.17);
    expect(quantile(same.excess, 0.95)).toBeLessThanOrEqual(0.5);
  });

  test("where swatches and trials are timed to 2 s, and where the bath is hardly stirred, it is printed", () => {
    simulated("four swatches, timed to 2 s", { ...fewer, timed: true }, "swatches only");
    const slack = simulated("four swatches, still bath", { ...fewer, changeOver: still }, "swatches only");
    // The law takes the film for a plateau there: far off, and the interval says so.
    expect(slack["70 %"].held).toBeGreaterThanOrEqual(0.85);
  });
});
