import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Tests that are quick to load and notice the most go first: the first that fails ends the run of a mutant. */
const FIRST = /\/(?:stated|outlook|refusals|published|explained|vocabulary)\.test\.ts$/;
const LAST = /\/fuzz\.test\.ts$/;

class QuickestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const late = ({ moduleId }: TestSpecification): number =>
      FIRST.test(moduleId) ? 0 : LAST.test(moduleId) ? 2 : 1;
    return files.toSorted((a, b) => late(a) - late(b));
  }
}

/**
 * Only the tests that hold what is mutated (`MUTANTS_TESTS`, globs apart by semicolons) and no set-up, which would
 * ask for Debian packages that none of them needs.
 */
export default defineConfig({
  test: {
    include: (process.env.MUTANTS_TESTS ?? '').split(';'),
    sequence: { sequencer: QuickestFirst },
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
