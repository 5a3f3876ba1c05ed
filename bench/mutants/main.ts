/**
 * `npm run mutants -- FOLDER ...`: measures the folders or files that are named and writes docs/mutants.md. With
 * no name it writes the page alone, from the figures of the runs before. `--by TEST` (any number of them) tries the
 * survivors of the named files once more, on these test files alone and in one run (with `--quick N`, by the quick
 * way; `--again --quick N` on the tests that hold them). `--at-once N` measures all that is named in one run for each
 * set of tests, N mutants at a time; `--events FOLDER` takes the files that such a run got through, though it was ended
 * (`.cache/mutants/events/...`). `--quick N` measures all that is named by N processes that load the tests anew for each
 * mutant, which takes a tenth of the time (`bench/mutants/quick/measure.ts`); with `--within N`, one that has outlived N
 * seconds of them counts as not noticed.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type Figures, type FileFigures, readFigures, writeFigures } from './figures.ts';
import { folders, sourcesIn, testsOf } from './folders.ts';
import { measure, tryAgain } from './measure.ts';
import { mutantsPage } from './page.ts';
import { measureQuickly, tryAgainQuickly } from './quick/measure.ts';
import { figuresOfEvents, measureTogether } from './together.ts';

const writePage = (): void =>
  writeFileSync(new URL('../../docs/mutants.md', import.meta.url), mutantsPage(readFigures()));

function take({ figures, unfinished }: ReturnType<typeof figuresOfEvents>): void {
  writeFigures({ ...readFigures(), ...figures });
  writePage();
  console.log(
    `${Object.keys(figures).length} files measured; not through: ${unfinished.join(', ') || 'none'}`,
  );
}

/** After each file: what was measured stays when the run is ended. */
function keep(file: string, figures: FileFigures): void {
  writeFigures({ ...readFigures(), [file]: figures });
  writePage();
  const { killed, timedOut, survivors } = figures;
  console.log(`${file}: ${killed + timedOut} noticed, ${survivors.length} not`);
}

/** The files that are named, by the tests that hold them, as globs with a space between. */
function byTheirTests(names: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const byTests = new Map<string, string[]>();
  for (const file of names.flatMap(sourcesIn)) {
    const tests = (testsOf(file) ?? []).join(' ');
    byTests.set(tests, [...(byTests.get(tests) ?? []), file]);
  }
  return byTests;
}

/** The figures of the files that are named and have survivors. */
function survivorsIn(names: readonly string[]): Figures {
  const before = readFigures();
  return Object.fromEntries(
    names.flatMap(sourcesIn).flatMap(file => {
      const figures = before[file];
      return figures && figures.survivors.length > 0 ? [[file, figures] as const] : [];
    }),
  );
}

const { values, positionals } = parseArgs({
  options: {
    by: { type: 'string', multiple: true, default: [] },
    'at-once': { type: 'string' },
    quick: { type: 'string' },
    within: { type: 'string' },
    again: { type: 'boolean', default: false },
    events: { type: 'string', multiple: true, default: [] },
  },
  allowPositionals: true,
});
const means = {
  processes: Math.round(Number(values.quick ?? 1)),
  withinMs: 1000 * Number(values.within ?? 3600),
};
const isCount = (given: string | undefined): boolean => given === undefined || Number(given) >= 1;
const named = positionals.map(name => name.replace(/\/$/, ''));
const unknown = named.filter(name => !existsSync(name) || !testsOf(name));
if (unknown.length > 0) {
  console.error(
    `${unknown.join(', ')}: not in a folder whose tests are known; those are ${folders.join(', ')}.`,
  );
  process.exitCode = 2;
} else if (!isCount(values['at-once']) || !isCount(values.quick) || !isCount(values.within)) {
  console.error(
    '--at-once N, --quick N: how many mutants at a time; --within N: seconds for one; each 1 or more.',
  );
  process.exitCode = 2;
} else if (values.events.length > 0) {
  for (const folder of values.events) take(figuresOfEvents(folder));
} else if (values.again && values.quick !== undefined) {
  for (const [tests, files] of byTheirTests(Object.keys(survivorsIn(named))))
    await tryAgainQuickly(survivorsIn(files), tests.split(' '), means, keep);
} else if (values.quick !== undefined && values.by.length > 0) {
  await tryAgainQuickly(survivorsIn(named), values.by, means, keep);
} else if (values.quick !== undefined) {
  for (const [tests, files] of byTheirTests(named))
    await measureQuickly(files, tests.split(' '), means, keep);
  writePage();
} else if (values['at-once'] !== undefined) {
  for (const [tests, files] of byTheirTests(named)) {
    const events = `.cache/mutants/events/${(files[0] ?? '').replaceAll('/', '-')}`;
    take(await measureTogether(files, tests.split(' '), Math.round(Number(values['at-once'])), events));
  }
} else if (values.by.length > 0) {
  const before = survivorsIn(named);
  const again = await tryAgain(before, values.by);
  writeFigures({ ...readFigures(), ...again });
  writePage();
  for (const file of Object.keys(before))
    console.log(`${file}: of ${before[file]?.survivors.length} are left ${again[file]?.survivors.length}`);
} else {
  const failed: string[] = [];
  for (const file of named.flatMap(sourcesIn)) {
    try {
      const figures = await measure(file, testsOf(file) ?? []);
      keep(file, figures);
    } catch (error) {
      // The others are measured all the same.
      failed.push(`${file}: ${error instanceof Error ? error.message : String(error)}`);
      console.error(failed.at(-1));
    }
  }
  writePage();
  if (failed.length > 0) {
    console.error(`Not measured:\n${failed.join('\n')}`);
    process.exitCode = 1;
  }
}
