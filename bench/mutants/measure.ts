import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Stryker } from '@stryker-mutator/core';
import { z } from 'zod';
import type { FileFigures, Survivor } from './figures.ts';

const survivorStatus: Readonly<Record<string, Survivor['status']>> = {
  Survived: 'survived',
  NoCoverage: 'no coverage',
};

const reportSchema = z.looseObject({
  files: z.record(z.string(), z.looseObject({ mutants: z.array(z.looseObject({ status: z.string() })) })),
});

/**
 * Takes out of the run before what no test noticed, so that it is tried again: of a mutant that acts while its
 * module is loaded the run cannot tell which tests could notice it, and would not try it on new ones.
 */
function forgetSurvivors(runBefore: string): void {
  if (!existsSync(runBefore)) return;
  const report = reportSchema.parse(JSON.parse(readFileSync(runBefore, 'utf8')));
  for (const file of Object.values(report.files)) {
    file.mutants = file.mutants.filter(({ status }) => survivorStatus[status] === undefined);
  }
  writeFileSync(runBefore, JSON.stringify(report));
}

/**
 * Mutates one source file and runs the tests that import it. What was noticed before by a test that is
 * unchanged is not run again (`.cache/mutants`; without that folder all is). Throws when the tests fail before
 * anything is mutated, and on a mutant that ended otherwise than killed, timed out, survived or not covered.
 */
export async function measure(file: string, tests: readonly string[]): Promise<FileFigures> {
  const runBefore = `.cache/mutants/${file.replaceAll('/', '-')}.json`;
  forgetSurvivors(runBefore);
  process.env.MUTANTS_TESTS = tests.join(';');
  const results = await new Stryker({
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'bench/mutants/vitest.config.ts', related: true },
    mutate: [file],
    coverageAnalysis: 'perTest',
    concurrency: 1,
    incremental: true,
    incrementalFile: runBefore,
    tempDirName: '.cache/mutants/copies',
    // The packages are linked, and what no test of these folders reads is not copied.
    ignorePatterns: ['audio-fixtures', 'acoustic-model', 'docs/pictures', 'dist-tablet', '.cache'],
    reporters: ['progress-append-only'],
    disableTypeChecks: false,
    timeoutMS: 20_000,
  }).runMutationTest();

  const lines = readFileSync(file, 'utf8').split('\n');
  const figures: FileFigures = { killed: 0, timedOut: 0, survivors: [] };
  for (const { status, location, mutatorName, replacement } of results) {
    const left = survivorStatus[status];
    if (status === 'Killed') figures.killed += 1;
    else if (status === 'Timeout') figures.timedOut += 1;
    else if (left) {
      const { line } = location.start;
      figures.survivors.push({
        line,
        text: lines[line - 1]?.trim() ?? '',
        mutator: mutatorName,
        replacement: replacement.replaceAll(/\s+/g, ' '),
        status: left,
      });
    } else throw new Error(`${file}:${location.start.line}: a mutant ended as ${status}; run it again.`);
  }
  figures.survivors.sort((a, b) => a.line - b.line);
  return figures;
}
