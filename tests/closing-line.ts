import type { Reporter, TestModule, TestRunEndReason } from 'vitest/node';

/**
 * Closes a run with "N passed, N failed". A test whose process died in it has no result, and would count for neither:
 * here it is named, and has failed. So has whatever went wrong outside of any test.
 */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[], reason: TestRunEndReason): void {
    let passed = 0;
    let failed = errors.length;
    for (const module of modules) {
      if (module.state() === 'failed' && module.errors().length > 0) failed++;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed++;
        if (state === 'failed' || state === 'pending') failed++;
        if (state === 'pending')
          process.stdout.write(`Never ended: ${module.relativeModuleId} > ${test.fullName}\n`);
      }
    }
    process.stdout.write(`${passed} passed, ${reason === 'passed' ? failed : Math.max(failed, 1)} failed\n`);
  }
}
