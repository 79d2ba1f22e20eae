import { fitNonlinear, type NonlinearFit, type NonlinearProblem } from "./nonlinear-least-squares.js";

const factors = [0.01, 0.1, 1, 10, 100];
const tried = 8;

/**
 * The best fit from a start of which each parameter may be off by a few powers of ten; signs are kept.
 *
 * Of the starts with every parameter multiplied by 0.01 to 100, those with the smallest sums are fitted and the
 * smallest sum of all is returned. For up to five parameters (3125 evaluations).
 * @example
 * fitFromPoorStart({ start: [1, 1], residuals: (p) => [1, 2, 4].map((x) => p[0] * (1 - Math.exp(-p[1] * x)) - 50 * (1 - Math.exp(-0.02 * x))) }).parameters.map((value) => Math.round(value * 1e6) / 1e6) // => [50, 0.02]
 */
export function fitFromPoorStart(problem: NonlinearProblem): NonlinearFit {
  let starts: (readonly number[])[] = [[]];
  for (const value of problem.start)
    starts = starts.flatMap((head) => factors.map((f) => [...head, f * value]));
  const sumAt = (p: readonly number[]): number => problem.residuals(p).reduce((sum, r) => sum + r * r, 0);
  const ranked = starts
    .map((start) => ({ start, sum: sumAt(start) }))
    .filter(({ sum }) => Number.isFinite(sum))
    .sort((a, b) => a.sum - b.sum)
    .slice(0, tried);
  const fits = [...ranked.map(({ start }) => start), problem.start].map((start) =>
    fitNonlinear({ ...problem, start }),
  );
  return fits.reduce((best, fit) => (fit.residualSum < best.residualSum ? fit : best));
}
