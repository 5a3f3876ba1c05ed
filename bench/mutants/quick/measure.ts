import { appendFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { createVitest } from 'vitest/node';
import type { Figures, FileFigures } from '../figures.ts';
import { figuresOf, isTypesOnly, keyOf, keyOfResult, lessNoticed, type Result } from '../measure.ts';
import { bundle } from './bundle.ts';
import { instrument } from './instrument.ts';
import type { Outcome, Reach } from './worker.ts';
import { inProcesses, type Worker } from './workers.ts';

const BUNDLES = '.cache/mutants/bundles';

/** A line for each mutant that was tried, also of a file that a run that was ended did not get through. */
const TRIED = '.cache/mutants/tried.jsonl';

/** The files of tests that globs name. */
async function filesOf(tests: readonly string[]): Promise<string[]> {
  process.env.MUTANTS_TESTS = tests.join(';');
  const vitest = await createVitest('test', { config: 'bench/mutants/vitest.config.ts', watch: false });
  const found = await vitest.globTestSpecifications();
  await vitest.close();
  return found.map(({ moduleId }) => relative(process.cwd(), moduleId));
}

/** All tests of a file, none of which has been loaded before. */
const FIRST_PATIENCE_MS = 900_000;

/**
 * How long what took `tookMs` before anything was mutated may take with a mutant: one that has not come to an end by
 * then never will, also on a machine that is busy with others.
 */
const patienceMs = (tookMs: number) => 30_000 + 4 * tookMs;

/** How often a loop may go round before it counts as one without an end. */
const hitLimit = (hits: number) => 1000 + 10 * hits;

/** What a file of tests reaches, put together at `path`; null, and told, where it cannot be loaded or never ends. */
async function reachOf(test: string, path: string, texts: ReadonlyMap<string, string>, worker: Worker) {
  try {
    writeFileSync(path, await bundle(test, texts));
    const reach = await worker.ask<Reach>({ kind: 'reach', file: path }, FIRST_PATIENCE_MS);
    if (reach === null) console.error(`${test} does not come to an end, and is left out.`);
    return reach;
  } catch (error) {
    console.error(`${test} cannot be loaded, and is left out: ${String(error)}`);
    return null;
  }
}

/** What a measurement may take. */
export interface Means {
  readonly processes: number;
  /**
   * The time of the processor for one mutant. One that has outlived it counts as not noticed, so that the figure is
   * never too good; the tests that notice the most for their time have been asked by then.
   */
  readonly withinMs: number;
}

/**
 * Mutates files that the same tests hold, without a run of vitest for each mutant: each file of tests is put together
 * with all that it imports, and loaded anew in the same process for each mutant that its tests reach.
 * The mutants are Stryker's, and so is what counts as noticed.
 * @param isWanted says of a mutant whether it is tried
 * @param onFile called with each file as soon as all its mutants that are tried have been
 */
async function tryMutants(
  files: readonly string[],
  tests: readonly string[],
  { processes, withinMs }: Means,
  isWanted: (file: string, mutant: Omit<Result, 'status'>) => boolean,
  onFile: (file: string, results: readonly Result[]) => void,
): Promise<void> {
  const { texts, mutants: all } = await instrument(files);
  const fileOf = (path: string) => files.find(file => path.endsWith(`/${file}`)) ?? path;
  const resultOf = ({ location, mutatorName, replacement }: (typeof all)[number]) => ({
    location: { start: { line: location.start.line + 1 } },
    mutatorName,
    replacement,
  });
  const mutants = all.filter(mutant => isWanted(fileOf(mutant.fileName), resultOf(mutant)));
  mkdirSync(BUNDLES, { recursive: true });
  const reaches = new Map<string, Reach>();
  await inProcesses(processes, await filesOf(tests), async (worker, test) => {
    const path = join(BUNDLES, `${test.replaceAll('/', '-')}.js`);
    const reach = await reachOf(test, path, texts, worker);
    if (reach === null) return;
    for (const failed of reach.failed)
      console.error(`Left out, as it fails before anything is mutated: ${failed}`);
    reaches.set(path, reach);
  });

  /** How many mutants of a file each file of tests has noticed: what notices the most for its time is asked first. */
  const noticed = new Map<string, number>();
  const results = new Map(files.map(file => [file, [] as Result[]]));
  const left = new Map<string, number>();
  for (const { fileName } of mutants) left.set(fileOf(fileName), (left.get(fileOf(fileName)) ?? 0) + 1);

  await inProcesses(processes, mutants, async (worker, mutant) => {
    const { id } = mutant;
    const source = fileOf(mutant.fileName);
    const key = (test: string) => `${source} ${test}`;
    const worth = (test: string) =>
      (0.3 + (noticed.get(key(test)) ?? 0)) / ((reaches.get(test)?.ms ?? 0) + 50);
    const holding = [...reaches].flatMap(([file, { loading, byTest, passing, wallMs }]) => {
      // Those behind the first that reaches it, too: what that one has built may be kept for them.
      const first = loading.includes(id) ? 0 : passing.findIndex(test => byTest[test]?.includes(id));
      return first < 0 ? [] : [{ file, tests: passing.slice(first), longestMs: patienceMs(wallMs) }];
    });
    holding.sort((one, other) => worth(other.file) - worth(one.file));
    const tookMs = holding.reduce((sum, { file }) => sum + (reaches.get(file)?.wallMs ?? 0), 0);
    const hits = Math.max(0, ...[...reaches.values()].map(({ hits }) => hits[id] ?? 0));
    const outcome: Outcome | { readonly status: 'NoCoverage' } =
      holding.length === 0
        ? { status: 'NoCoverage' }
        : ((await worker.ask<Outcome>(
            { kind: 'mutant', id, files: holding, hitLimit: hitLimit(hits), withinMs },
            patienceMs(tookMs),
          )) ?? { status: 'Timeout' });
    if ('by' in outcome && outcome.by) noticed.set(key(outcome.by), (noticed.get(key(outcome.by)) ?? 0) + 1);
    const result = { status: outcome.status, ...resultOf(mutant) };
    appendFileSync(TRIED, `${JSON.stringify({ source, ...result })}\n`);
    const own = results.get(source);
    own?.push(result);
    if (own && own.length === left.get(source)) onFile(source, own);
  });
}

/** Measures files that the same tests hold. @param onFile called with each file as soon as it is through */
export async function measureQuickly(
  files: readonly string[],
  tests: readonly string[],
  means: Means,
  onFile: (file: string, figures: FileFigures) => void,
): Promise<void> {
  for (const file of files.filter(isTypesOnly)) onFile(file, { killed: 0, timedOut: 0, survivors: [] });
  const mutated = files.filter(file => !isTypesOnly(file));
  await tryMutants(
    mutated,
    tests,
    means,
    () => true,
    (file, results) => onFile(file, figuresOf(file, results)),
  );
}

/** Tries the survivors of several files once more on these tests alone, as `tryAgain` does. */
export async function tryAgainQuickly(
  before: Figures,
  tests: readonly string[],
  means: Means,
  onFile: (file: string, figures: FileFigures) => void,
): Promise<void> {
  const survived = new Map(
    Object.entries(before).map(([file, { survivors }]) => [file, new Set(survivors.map(keyOf))]),
  );
  const isWanted = (file: string, mutant: Omit<Result, 'status'>) =>
    survived.get(file)?.has(keyOfResult(mutant)) === true;
  await tryMutants(Object.keys(before), tests, means, isWanted, (file, results) => {
    if (before[file]) onFile(file, lessNoticed(file, before[file], results));
  });
}
