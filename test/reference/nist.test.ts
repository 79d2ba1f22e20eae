import { afterAll, expect, test } from "vitest";
import { fitNonlinear } from "../../src/core/maths/least-squares/nonlinear-least-squares.js";
import { certifiedSets, observationsOf } from "./nist-sets.js";

/** Digits that agree with a certified value of eleven digits. */
const digits = (value: number, certified: number): number =>
  Math.min(11, -Math.log10(Math.abs(value / certified - 1) || 1e-16));
const fewest = (values: readonly number[], certified: readonly number[]): number =>
  Math.min(...values.map((value, j) => digits(value, certified[j]!)));

const table: string[] = ["set        start   parameters   deviations   residual sum   steps"];

afterAll(() => {
  process.stdout.write(
    `\nDigits of the certified values, the worst of each set and start:\n${table.join("\n")}\n`,
  );
});

for (const set of certifiedSets) {
  for (const [i, start] of set.starts.entries()) {
    test(`${set.name} from start ${i + 1} gives 6 digits of every parameter and 4 of its deviation`, () => {
      // source: nistStrd
      const data = observationsOf(set.name);
      const fit = fitNonlinear({ start, residuals: (b) => data.map(({ x, y }) => y - set.model(b, x)) });
      const parameters = fewest(fit.parameters, set.parameters);
      const deviations = fewest(fit.standardErrors ?? [Number.NaN], set.deviations);
      const residualSum = digits(fit.residualSum, set.residualSum);
      const columns = [parameters, deviations, residualSum].map((value) => value.toFixed(1).padStart(12));
      table.push(`${set.name.padEnd(10)} ${i + 1}    ${columns.join(" ")} ${String(fit.steps).padStart(7)}`);
      expect(fit.converged).toBe(true);
      // Numeric slopes cost the ill-conditioned set two digits; all others keep nine.
      expect(parameters).toBeGreaterThanOrEqual(set.name === "MGH09" ? 6 : 9);
      expect(deviations).toBeGreaterThanOrEqual(4);
      expect(residualSum).toBeGreaterThanOrEqual(6);
    });
  }
}
