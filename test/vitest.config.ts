import { defineConfig } from "vitest/config";
import { LongestFirst } from "./tools/longest-first.js";

export default defineConfig({
  test: {
    root: new URL("../", import.meta.url).pathname,
    include: ["test/**/*.test.ts"],
    reporters: process.env.CI
      ? ["dot", "./test/tools/count-reporter.ts"]
      : ["default", "./test/tools/count-reporter.ts"],
    passWithNoTests: false,
    // Nothing is mocked and nothing kept outside a test: one process a core will do, in half the time.
    isolate: false,
    // Vitest leaves one core to itself otherwise.
    maxWorkers: "100%",
    sequence: { sequencer: LongestFirst },
    // Ends what hangs, not what is slow: a machine that is busy takes several times as long.
    testTimeout: 300_000,
  },
});
