import {
  ASYMMETRIC_MATCHERS_OBJECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
} from '@vitest/expect';
import * as chai from 'chai';

/** One test of a file: its whole name, and what it does. */
export interface Test {
  readonly id: string;
  readonly run: () => Promise<void>;
}

type Body = () => unknown;

interface Suite {
  readonly name: string;
  readonly around: Suite | null;
  readonly before: Body[];
  readonly beforeEach: Body[];
  readonly afterEach: Body[];
  readonly after: Body[];
  begun: boolean;
}

const suiteIn = (around: Suite | null, name: string): Suite => ({
  name,
  around,
  before: [],
  beforeEach: [],
  afterEach: [],
  after: [],
  begun: false,
});

// Its spies and its faked time are bound to a process of vitest's, of which they ask no more than this.
Reflect.set(globalThis, '__vitest_worker__', { config: { fakeTimers: {} } });
const { vi } = await import('vitest');

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

type Asserted = Readonly<Record<PropertyKey, unknown>>;

/** Asks again until what is expected is so: `poll(get).not.toBe(3)` waits for what `expect(get()).not.toBe(3)` says. */
function poll(get: Body, options: { timeout?: number; interval?: number } = {}): unknown {
  const asserted = (path: readonly PropertyKey[]): unknown =>
    new Proxy(() => undefined, {
      get: (_, key) => asserted([...path, key]),
      apply: (_, _this, args: readonly unknown[]) =>
        vi.waitFor(async () => {
          let on = chai.expect(await get()) as unknown as Asserted;
          for (const key of path.slice(0, -1)) on = on[key] as Asserted;
          return Reflect.apply(on[path.at(-1) ?? ''] as () => unknown, on, args);
        }, options),
    });
  return asserted([]);
}

const expect = Object.assign((value: unknown, message?: string) => chai.expect(value, message), {
  ...(chai.expect as unknown as Record<string, unknown>),
  ...(Reflect.get(globalThis, ASYMMETRIC_MATCHERS_OBJECT) as Record<string, unknown>),
  poll,
});

const chain = (suite: Suite | null): Suite[] => (suite ? [...chain(suite.around), suite] : []);

/** A function of a test or a suite, wherever it stands among the arguments: `(name, fn, ms)`, `(name, options, fn)`. */
const bodyIn = (rest: readonly unknown[]) =>
  rest.find((each): each is (...args: readonly unknown[]) => unknown => typeof each === 'function');

/** Leaves a test out that cannot be run here: it fails before anything is mutated. */
function skip(so: boolean = true): void {
  if (so) throw new Error('cannot be run here');
}

const asText = (value: unknown): string => {
  try {
    return typeof value === 'object' ? (JSON.stringify(value)?.slice(0, 60) ?? '') : String(value);
  } catch {
    return '?';
  }
};

/**
 * The parts of vitest that the tests use, for one loading of one file of tests. A test that uses another fails before
 * anything is mutated, and is left out.
 */
export function testing() {
  const tests: Test[] = [];
  const cleaning: Body[] = [];
  const top = suiteIn(null, '');
  let current = top;
  let ending: Body[] = [];
  const seen = new Map<string, number>();

  const describe = (name: unknown, ...rest: unknown[]) => {
    const around = current;
    current = suiteIn(around, String(name));
    bodyIn(rest)?.();
    const own = current;
    cleaning.push(async () => {
      if (own.begun) for (const each of own.after) await each();
    });
    current = around;
  };
  const it = (name: unknown, ...rest: unknown[]) => {
    const suites = chain(current);
    const whole = [...suites.map(suite => suite.name), String(name)].join(' > ');
    const nth = (seen.get(whole) ?? 0) + 1;
    seen.set(whole, nth);
    const body = bodyIn(rest);
    tests.push({
      id: `${whole} #${nth}`,
      run: async () => {
        for (const suite of suites) {
          if (!suite.begun) {
            suite.begun = true;
            for (const each of suite.before) await each();
          }
        }
        ending = [];
        try {
          for (const suite of suites) for (const each of suite.beforeEach) await each();
          await body?.({ skip });
        } finally {
          for (const each of ending.toReversed()) await each();
          for (const suite of suites.toReversed()) for (const each of suite.afterEach) await each();
        }
      },
    });
  };
  const each =
    (make: typeof it) =>
    (rows: readonly unknown[]) =>
    (name: unknown, ...rest: unknown[]) => {
      const body = bodyIn(rest);
      for (const row of rows) {
        const args = Array.isArray(row) ? row : [row];
        make(`${String(name)} ${args.map(asText).join(', ')}`, () => body?.(...args));
      }
    };
  const nothing = () => undefined;
  const made = (make: typeof it) =>
    Object.assign(make, {
      each: each(make),
      skip: nothing,
      todo: nothing,
      runIf: (so: unknown) => (so ? make : nothing),
      skipIf: (so: unknown) => (so ? nothing : make),
      sequential: make,
      concurrent: make,
    });
  const hook = (which: 'before' | 'beforeEach' | 'afterEach' | 'after') => (body: Body) =>
    void current[which].push(body);
  const api = {
    describe: made(describe),
    it: made(it),
    test: made(it),
    expect,
    vi,
    beforeAll: hook('before'),
    beforeEach: hook('beforeEach'),
    afterEach: hook('afterEach'),
    afterAll: hook('after'),
    onTestFinished: (body: Body) => void ending.push(body),
  };
  return {
    api,
    tests,
    /** What was to be done after all tests; also after one that failed, which may have left time or a method faked. */
    clean: async () => {
      vi.useRealTimers();
      vi.restoreAllMocks();
      for (const body of [...cleaning, ...top.after]) await body();
    },
  };
}
