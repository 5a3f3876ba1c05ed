import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Stryker } from '@stryker-mutator/core';
import ts from 'typescript';
import { z } from 'zod';
import type { Figures, FileFigures, Survivor } from './figures.ts';

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

/** Nothing of it is left in the program, so that no test could import it. */
export function isTypesOnly(file: string): boolean {
  const { outputText } = ts.transpileModule(readFileSync(file, 'utf8'), {
    compilerOptions: { target: ts.ScriptTarget.ESNext, module: ts.ModuleKind.ESNext, removeComments: true },
  });
  return /^\s*(export \{\};\s*)?$/.test(outputText);
}

type Options = ConstructorParameters<typeof Stryker>[0];

/** Runs the mutants of some files, or of some lines of them, on some tests. */
export async function run(mutate: string[], tests: readonly string[], more: Options) {
  process.env.MUTANTS_TESTS = tests.join(';');
  return new Stryker({
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'bench/mutants/vitest.config.ts', related: true },
    mutate,
    coverageAnalysis: 'perTest',
    concurrency: 1,
    tempDirName: '.cache/mutants/copies',
    // The packages are linked, and what no test of these folders reads is not copied.
    ignorePatterns: [
      'audio-fixtures/sessions',
      'audio-fixtures/**/*.wav',
      'acoustic-model',
      'docs/pictures',
      'dist-tablet',
      '.cache',
    ],
    reporters: ['progress-append-only'],
    disableTypeChecks: false,
    // A machine that is busy with other things is no endless loop.
    timeoutMS: 60_000,
    ...more,
  }).runMutationTest();
}

/** What became of one mutant, as far as the figures go. */
export interface Result {
  readonly status: string;
  readonly location: { readonly start: { readonly line: number } };
  readonly mutatorName: string;
  readonly replacement: string;
}

/** The figures of one file; throws on a mutant that ended otherwise than killed, timed out, survived or not covered. */
export function figuresOf(file: string, results: readonly Result[]): FileFigures {
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

/**
 * Mutates one source file and runs the tests that import it. What was noticed before by a test that is
 * unchanged is not run again (`.cache/mutants`; without that folder all is). Throws when the tests fail before
 * anything is mutated, and on a mutant that ended otherwise than killed, timed out, survived or not covered.
 */
export async function measure(file: string, tests: readonly string[]): Promise<FileFigures> {
  if (isTypesOnly(file)) return { killed: 0, timedOut: 0, survivors: [] };
  const runBefore = `.cache/mutants/${file.replaceAll('/', '-')}.json`;
  forgetSurvivors(runBefore);
  const results = await run([file], tests, { incremental: true, incrementalFile: runBefore });
  return figuresOf(file, results);
}

/** What tells one mutant of a file from the others, twins in one line aside. */
export const keyOf = ({
  line,
  mutator,
  replacement,
}: Pick<Survivor, 'line' | 'mutator' | 'replacement'>): string => `${line} ${mutator} ${replacement}`;

export const keyOfResult = ({
  location,
  mutatorName,
  replacement,
}: Pick<Result, 'location' | 'mutatorName' | 'replacement'>) =>
  keyOf({
    line: location.start.line,
    mutator: mutatorName,
    replacement: replacement.replaceAll(/\s+/g, ' '),
  });

/** How many there are of each key. */
function tally(keys: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}

/** What is left of the survivors of a file after some were tried once more: the rest stays as it was. */
export function lessNoticed(file: string, before: FileFigures, results: readonly Result[]): FileFigures {
  const tried = tally(results.map(keyOfResult));
  const left = tally(figuresOf(file, results).survivors.map(keyOf));
  const were = tally(before.survivors.map(keyOf));
  const kept = new Map<string, number>();
  const survivors = before.survivors.filter(each => {
    const key = keyOf(each);
    const all = were.get(key) ?? 0;
    // Twins in one line cannot be told apart: as many are left as one of the two runs left.
    const most = (tried.get(key) ?? 0) < all ? all : Math.min(all, left.get(key) ?? 0);
    const nth = (kept.get(key) ?? 0) + 1;
    if (nth > most) return false;
    kept.set(key, nth);
    return true;
  });
  const noticed = before.survivors.length - survivors.length;
  return { ...before, killed: before.killed + noticed, survivors };
}

/**
 * Tries the survivors of several files once more, on these tests alone and in one run: new tests are quick to ask. What
 * they notice is noticed; what they do not stays as it was, as does what reaches over several lines. Files that
 * changed since are to be measured instead.
 */
export async function tryAgain(before: Figures, tests: readonly string[]): Promise<Figures> {
  const ranges = Object.entries(before).flatMap(([file, { survivors }]) =>
    [...new Set(survivors.map(({ line }) => line))].map(line => `${file}:${line}-${line}`),
  );
  const results = await run(ranges, tests, {});
  return Object.fromEntries(
    Object.entries(before).map(([file, figures]) => {
      const own = results.filter(({ fileName }) => fileName.endsWith(`/${file}`));
      return [file, lessNoticed(file, figures, own)];
    }),
  );
}
