import { readFileSync } from 'node:fs';
import { Script } from 'node:vm';
import { testing } from './testing.ts';

/** What the tests of one file reach: mutants as it is loaded, and by test. */
export interface Reach {
  /** Of the processor. */
  readonly ms: number;
  /** What it took in all, with what it waited for. */
  readonly wallMs: number;
  readonly loading: readonly string[];
  readonly byTest: Readonly<Record<string, readonly string[]>>;
  readonly hits: Readonly<Record<string, number>>;
  readonly passing: readonly string[];
  readonly failed: readonly string[];
}

export type Order =
  | { readonly kind: 'reach'; readonly file: string }
  | {
      readonly kind: 'mutant';
      readonly id: string;
      readonly hitLimit: number;
      /** How much time of the processor is spent on it: the files of tests behind it are not asked. */
      readonly withinMs: number;
      readonly files: readonly {
        readonly file: string;
        readonly tests: readonly string[];
        /** How long one of these tests may take: a promise that is never kept ends here, and none that is only slow. */
        readonly longestMs: number;
      }[];
    };

type Load = (name: string) => Promise<unknown>;

interface Namespace {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?:
    | { static: Record<string, number>; perTest: Record<string, Record<string, number>> }
    | undefined;
}

const namespace: Namespace = {};
Reflect.set(globalThis, '__stryker__', namespace);

const scripts = new Map<string, Script>();

function scriptOf(file: string): Script {
  const known = scripts.get(file);
  if (known) return known;
  const made = new Script(`(async load => {${readFileSync(file, 'utf8')}\n})`, { filename: file });
  scripts.set(file, made);
  return made;
}

/** Loads a file of tests anew, all of the project with it. */
async function loaded(file: string) {
  const own = testing();
  const load: Load = async name => (name === 'vitest' ? own.api : import(name));
  await (scriptOf(file).runInThisContext() as (load: Load) => Promise<void>)(load);
  return own;
}

/** How long one test may take that nothing was mutated for. */
const LONGEST_MS = 300_000;

// Taken before a test can fake them.
const { setTimeout, clearTimeout } = globalThis;

class TooLate extends Error {}

async function inTime(run: () => Promise<unknown>, longestMs: number): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  try {
    await Promise.race([
      run(),
      new Promise((_, reject) => {
        timer = setTimeout(() => reject(new TooLate()), longestMs);
      }),
    ]);
  } finally {
    clearTimeout(timer);
  }
}

async function reach(file: string): Promise<Reach> {
  const begun = process.cpuUsage();
  const begunMs = performance.now();
  const coverage = { static: {}, perTest: {} as Record<string, Record<string, number>> };
  namespace.mutantCoverage = coverage;
  const failed: string[] = [];
  const passing: string[] = [];
  const { tests, clean } = await loaded(file);
  for (const test of tests) {
    namespace.currentTestId = test.id;
    await inTime(test.run, LONGEST_MS).then(
      () => passing.push(test.id),
      error => failed.push(`${test.id}: ${String(error).slice(0, 300)}`),
    );
    namespace.currentTestId = undefined;
  }
  await clean();
  const hits: Record<string, number> = {};
  for (const counts of [coverage.static, ...Object.values(coverage.perTest)])
    for (const [id, count] of Object.entries(counts)) hits[id] = (hits[id] ?? 0) + Number(count);
  namespace.mutantCoverage = undefined;
  return {
    ms: process.cpuUsage(begun).user / 1000,
    wallMs: performance.now() - begunMs,
    loading: Object.keys(coverage.static),
    byTest: Object.fromEntries(
      Object.entries(coverage.perTest).map(([id, counts]) => [id, Object.keys(counts)]),
    ),
    hits,
    passing,
    failed,
  };
}

/** How long what was to be done after all tests may take, after one that failed. */
const CLEAN_MS = 5000;

const nothing = async () => undefined;

const isEndless = (error: unknown) =>
  error instanceof TooLate || (error instanceof Error && error.message.includes('Hit count limit reached'));

export interface Outcome {
  readonly status: 'Killed' | 'Timeout' | 'Survived';
  /** The file of tests that noticed it. */
  readonly by?: string;
}

/** `Killed` by the first test that fails, also a file that cannot be loaded; `Timeout` at a loop without an end. */
async function mutant({
  id,
  files,
  hitLimit,
  withinMs,
}: Extract<Order, { kind: 'mutant' }>): Promise<Outcome> {
  const begun = process.cpuUsage();
  namespace.mutantCoverage = { static: {}, perTest: {} };
  for (const { file, tests, longestMs } of files) {
    if (process.cpuUsage(begun).user / 1000 > withinMs) break;
    let own: Awaited<ReturnType<typeof loaded>> | undefined;
    namespace.activeMutant = id;
    namespace.hitCount = 0;
    namespace.hitLimit = hitLimit;
    try {
      own = await loaded(file);
      for (const test of own.tests) {
        if (tests.includes(test.id)) await inTime(test.run, longestMs);
      }
      await inTime(own.clean, longestMs);
    } catch (error) {
      // A server that it began is not to be there for the next.
      await inTime(own?.clean ?? nothing, CLEAN_MS).catch(nothing);
      return { status: isEndless(error) ? 'Timeout' : 'Killed', by: file };
    } finally {
      namespace.activeMutant = undefined;
      namespace.hitCount = undefined;
      namespace.hitLimit = undefined;
    }
  }
  return { status: 'Survived' };
}

// What a mutant leaves behind it is no failure of the next.
process.on('unhandledRejection', () => undefined);
process.on('uncaughtException', () => undefined);
process.on('message', (order: Order) => {
  const done = order.kind === 'reach' ? reach(order.file) : mutant(order);
  done.then(
    answer => process.send?.({ answer }),
    (error: unknown) => process.send?.({ error: error instanceof Error ? error.stack : String(error) }),
  );
});
process.send?.({ answer: 'ready' });
