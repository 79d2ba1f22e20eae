import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Test files that take several seconds. Started last, one would run alone while the other cores wait. */
const long = [
  /\/packed\//,
  /simulation/,
  /\/kill/,
  /\/bundle\./,
  /\/formats\./,
  /\/yaml-read\./,
  /\/fuzz\./,
  /\/learning\./,
];

const rank = ({ moduleId }: TestSpecification): number => {
  const found = long.findIndex((pattern) => pattern.test(moduleId));
  return found < 0 ? long.length : found;
};

/** Runs the long test files first, the others in the order of vitest. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}
