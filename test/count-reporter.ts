import type { Reporter, TestModule } from 'vitest/node';

/** Prints the counts as the run's last line, so that a reader (or a script) finds them without scrolling. */
export class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    let passed = 0;
    let failed = 0;
    let skipped = 0;
    for (const module of modules) {
      if (module.errors().length > 0) failed += 1;
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failed += 1;
        else skipped += 1;
      }
    }
    const tail = skipped > 0 ? `, ${skipped} skipped` : '';
    process.on('exit', () => process.stdout.write(`${passed} passed, ${failed} failed${tail}\n`));
  }
}
