import type { Reporter, TestModule } from "vitest/node";

/** Ends every run with one plain line: `N passed, N failed`. A file that cannot be loaded counts as failed. */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    let passed = 0;
    let failed = errors.length;
    let skipped = 0;
    for (const module of modules) {
      if (module.errors().length > 0) failed++;
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === "passed") passed++;
        else if (state === "failed") failed++;
        else skipped++;
      }
    }
    process.stdout.write(
      `\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}\n`,
    );
  }
}
