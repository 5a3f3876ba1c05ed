import { mkdirSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { createVitest } from 'vitest/node';
import type { FileFigures } from '../figures.ts';
import { figuresOf, isTypesOnly, type Result } from '../measure.ts';
import { bundle } from './bundle.ts';
import { instrument } from './instrument.ts';
import type { Outcome, Reach } from './worker.ts';
import { inProcesses } from './workers.ts';

const BUNDLES = '.cache/mutants/bundles';

/** The files of tests that globs name. */
async function filesOf(tests: readonly string[]): Promise<string[]> {
  process.env.MUTANTS_TESTS = tests.join(';');
  const vitest = await createVitest('test', { config: 'bench/mutants/vitest.config.ts', watch: false });
  const found = await vitest.globTestSpecifications();
  await vitest.close();
  return found.map(({ moduleId }) => relative(process.cwd(), moduleId));
}

/** How often a loop may go round before it counts as one without an end. */
const hitLimit = (hits: number) => 1000 + 10 * hits;

/**
 * Mutates files that the same tests hold, without a run of vitest for each mutant: each file of tests is put together
 * with all that it imports, and loaded anew in the same process for each mutant that its tests reach.
 * The mutants are Stryker's, and so is what counts as noticed.
 * @param onFile called with each file as soon as all its mutants have been tried
 */
export async function measureQuickly(
  files: readonly string[],
  tests: readonly string[],
  processes: number,
  onFile: (file: string, figures: FileFigures) => void,
): Promise<void> {
  for (const file of files.filter(isTypesOnly)) onFile(file, { killed: 0, timedOut: 0, survivors: [] });
  const mutated = files.filter(file => !isTypesOnly(file));
  const { texts, mutants } = await instrument(mutated);
  mkdirSync(BUNDLES, { recursive: true });
  const reaches = new Map<string, Reach>();
  await inProcesses(processes, await filesOf(tests), async (worker, test) => {
    const path = join(BUNDLES, `${test.replaceAll('/', '-')}.js`);
    writeFileSync(path, await bundle(test, texts));
    const reach = await worker.ask<Reach>({ kind: 'reach', file: path });
    if (reach === null) return console.error(`${test} does not come to an end, and is left out.`);
    for (const failed of reach.failed)
      console.error(`Left out, as it fails before anything is mutated: ${failed}`);
    reaches.set(path, reach);
  });

  /** How many mutants of a file each file of tests has noticed: what notices the most for its time is asked first. */
  const noticed = new Map<string, number>();
  const results = new Map(mutated.map(file => [file, [] as Result[]]));
  const fileOf = (path: string) => mutated.find(file => path.endsWith(`/${file}`)) ?? path;
  const left = new Map<string, number>();
  for (const { fileName } of mutants) left.set(fileOf(fileName), (left.get(fileOf(fileName)) ?? 0) + 1);

  await inProcesses(
    processes,
    mutants,
    async (worker, { id, fileName, location, mutatorName, replacement }) => {
      const source = fileOf(fileName);
      const key = (test: string) => `${source} ${test}`;
      const worth = (test: string) =>
        (0.3 + (noticed.get(key(test)) ?? 0)) / ((reaches.get(test)?.ms ?? 0) + 50);
      const holding = [...reaches].flatMap(([file, { loading, byTest, passing }]) => {
        const own = loading.includes(id) ? passing : passing.filter(test => byTest[test]?.includes(id));
        return own.length > 0 ? [{ file, tests: own }] : [];
      });
      holding.sort((one, other) => worth(other.file) - worth(one.file));
      const hits = Math.max(0, ...[...reaches.values()].map(({ hits }) => hits[id] ?? 0));
      const outcome: Outcome | { readonly status: 'NoCoverage' } =
        holding.length === 0
          ? { status: 'NoCoverage' }
          : ((await worker.ask<Outcome>({
              kind: 'mutant',
              id,
              files: holding,
              hitLimit: hitLimit(hits),
            })) ?? {
              status: 'Timeout',
            });
      if ('by' in outcome && outcome.by)
        noticed.set(key(outcome.by), (noticed.get(key(outcome.by)) ?? 0) + 1);
      const own = results.get(source);
      own?.push({
        status: outcome.status,
        location: { start: { line: location.start.line + 1 } },
        mutatorName,
        replacement,
      });
      if (own && own.length === left.get(source)) onFile(source, figuresOf(source, own));
    },
  );
}
