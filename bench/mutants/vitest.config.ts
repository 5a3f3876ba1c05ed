import { basename } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type Reporter, type TestSpecification, type Vitest } from 'vitest/node';

/** Tests that are quick to load and notice the most go first: the first that fails ends the run of a mutant. */
const FIRST = new Set(
  (
    'stated outlook doubts heard idle warm-up-looks sweep-ends cranked refusals published explained vocabulary ' +
    'canonical edges believed stops-kept found said-again assurance dangers filled survey look figures own-engine ' +
    'told-apart meaning may-be-said worded clocks units loud viewer'
  ).split(' '),
);
const LAST = new Set('fuzz lost agreement stops whole-start recipes timing bus session going-on'.split(' '));

const nameOf = (path: string): string => basename(path, '.test.ts');

class QuickestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const late = ({ moduleId }: TestSpecification): number =>
      FIRST.has(nameOf(moduleId)) ? 0 : LAST.has(nameOf(moduleId)) ? 2 : 1;
    return files.toSorted((a, b) => late(a) - late(b));
  }
}

/**
 * A file that fails before it has named its tests, as it is loaded or in the body of a `describe`, has none that could
 * fail, and the mutant that did it would be told as not noticed: one that says so is put there.
 */
class Loaded implements Reporter {
  #vitest: Vitest | undefined;

  onInit(vitest: Vitest): void {
    this.#vitest = vitest;
  }

  onTestRunEnd(): void {
    for (const file of this.#vitest?.state.getFiles() ?? []) {
      const { result } = file;
      if (
        result?.state !== 'fail' ||
        !result.errors?.length ||
        file.tasks.some(({ result }) => result?.state === 'fail')
      )
        continue;
      const name = 'can be loaded';
      file.tasks.push({
        type: 'test',
        id: `${file.id}_loaded`,
        name,
        fullName: `${file.name} > ${name}`,
        fullTestName: name,
        mode: 'run',
        meta: {},
        annotations: [],
        artifacts: [],
        timeout: 0,
        context: undefined as never,
        file,
        suite: file,
        result,
      });
    }
  }
}

/**
 * Only the tests that hold what is mutated (`MUTANTS_TESTS`, globs apart by semicolons) and no set-up, which would
 * ask for Debian packages that none of them needs.
 */
export default defineConfig({
  test: {
    include: (process.env.MUTANTS_TESTS ?? '').split(';'),
    reporters: [new Loaded()],
    sequence: { sequencer: QuickestFirst },
    isolate: false,
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
