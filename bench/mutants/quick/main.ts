import { type ChildProcess, fork } from 'node:child_process';
import { appendFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { bundle } from './bundle.ts';
import { instrument } from './instrument.ts';
import type { Order, Reach } from './worker.ts';

const { values, positionals: files } = parseArgs({
  options: {
    tests: { type: 'string', multiple: true, default: [] },
    processes: { type: 'string', default: '1' },
    out: { type: 'string', default: '.cache/mutants/quick' },
    only: { type: 'string' },
    known: { type: 'string' },
  },
  allowPositionals: true,
});
const out = values.out;
mkdirSync(out, { recursive: true });
const { texts, mutants } = await instrument(files);
const tests = readFileSync(values.tests[0] ?? '', 'utf8').split('\n').filter(Boolean);
const bundles = new Map<string, string>();
for (const test of tests) {
  const path = `${out}/${test.replaceAll('/', '-')}.js`;
  writeFileSync(path, await bundle(test, texts));
  bundles.set(test, path);
}
console.log(new Date().toISOString(), mutants.length, 'mutants,', tests.length, 'test files bundled');

const WORKS_FOR = 60;
const PATIENCE_MS = 45_000;

class Worker {
  #child: ChildProcess | null = null;
  #orders = 0;
  async #ready(): Promise<ChildProcess> {
    if (this.#child && this.#orders < WORKS_FOR && this.#child.connected) return this.#child;
    this.#child?.kill('SIGKILL');
    this.#orders = 0;
    const child = fork(new URL('worker.ts', import.meta.url), {
      execArgv: ['--import', 'tsx', '--max-old-space-size=3000'],
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    });
    this.#child = child;
    await new Promise(resolve => child.once('message', resolve));
    return child;
  }
  async ask<T>(order: Order): Promise<T | 'Timeout'> {
    const child = await this.#ready();
    this.#orders += 1;
    return new Promise((resolve, reject) => {
      const over = (answer: T | 'Timeout') => {
        clearTimeout(timer);
        child.removeAllListeners('message').removeAllListeners('exit');
        resolve(answer);
      };
      const timer = setTimeout(() => {
        child.kill('SIGKILL');
        this.#child = null;
        over('Timeout');
      }, order.kind === 'reach' ? 600_000 : PATIENCE_MS);
      child.once('exit', () => {
        this.#child = null;
        over('Timeout');
      });
      child.once('message', (message: { answer?: T; error?: string }) => {
        if (message.answer === undefined) {
          clearTimeout(timer);
          reject(new Error(message.error));
        } else over(message.answer);
      });
      child.send(order);
    });
  }
  end() {
    this.#child?.kill('SIGKILL');
  }
}

async function pool<T>(items: readonly T[], work: (worker: Worker, item: T) => Promise<void>): Promise<void> {
  const left = [...items];
  await Promise.all(
    Array.from({ length: Number(values.processes) }, async () => {
      const worker = new Worker();
      for (let item = left.shift(); item !== undefined; item = left.shift()) await work(worker, item);
      worker.end();
    }),
  );
}

const reaches = new Map<string, Reach>();
await pool(tests, async (worker, test) => {
  const got = await worker.ask<Reach>({ kind: 'reach', file: bundles.get(test) ?? '' }).catch(error => {
    console.log(`${test} cannot be loaded: ${String(error).slice(0, 600)}`);
    return 'Timeout' as const;
  });
  if (got === 'Timeout') return;
  if (got.failed.length > 0) console.log(`${test} fails before anything is mutated: ${got.failed.slice(0, 3).join('; ')}`);
  reaches.set(test, got);
});
const order = [...reaches].filter(([, { failed }]) => failed.length === 0).sort(([, a], [, b]) => a.ms - b.ms);
console.log(new Date().toISOString(), order.length, 'test files of', tests.length, 'usable;', Math.round(order.reduce((sum, [, { ms }]) => sum + ms, 0)), 'ms');

const results = `${out}/results.tsv`;
const had = new Set(existsSync(results) ? readFileSync(results, 'utf8').split('\n').map(row => row.split('\t').slice(0, 7).filter((_, i) => i !== 1).join('\t')) : []);
const only = values.only ? new Set(readFileSync(values.only, 'utf8').split('\n')) : null;
const wanted = mutants.filter(mutant => {
  const key = keyOf(mutant);
  return !had.has(key) && (!only || only.has(key));
});
function keyOf(mutant: (typeof mutants)[number]): string {
  const { start, end } = mutant.location;
  const file = files.find(name => mutant.fileName.endsWith(`/${name}`)) ?? mutant.fileName;
  return [file, start.line + 1, start.column + 1, `${end.line + 1}:${end.column + 1}`, mutant.mutatorName, JSON.stringify(mutant.replacement)].map(each => String(each).replaceAll(/[\t\n]/g, ' ')).join('\t');
}
let done = 0;
/** What each test file has noticed so far: those that notice the most for their time are asked first. */
const noticed = new Map<string, number>();
const worth = (source: string, file: string, ms: number) => (0.3 + (noticed.get(`${source} ${file}`) ?? 0)) / (ms + 50);
if (values.known) {
  const rough = (key: string) => key.split('\t').filter((_, i) => i !== 3).join('\t');
  const times = new Map<string, number>();
  for (const mutant of mutants) times.set(rough(keyOf(mutant)), (times.get(rough(keyOf(mutant))) ?? 0) + 1);
  const killed = new Map(
    readFileSync(values.known, 'utf8').split('\n').map(row => row.split('\t')).flatMap(([file, status, ...rest]) =>
      status === 'Killed' || status === 'Timeout' ? [[[file, ...rest.slice(0, 4)].join('\t'), status] as const] : [],
    ),
  );
  for (const mutant of [...wanted]) {
    const status = killed.get(rough(keyOf(mutant)));
    if (status === undefined || times.get(rough(keyOf(mutant))) !== 1) continue;
    wanted.splice(wanted.indexOf(mutant), 1);
    const [file, ...rest] = keyOf(mutant).split('\t');
    appendFileSync(results, `${[file, status, ...rest].join('\t')}\n`);
  }
  console.log(wanted.length, 'left');
}
await pool(wanted, async (worker, mutant) => {
  const { id } = mutant;
  let hits = 0;
  const held = order.flatMap(([test, { loading, byTest, hits: all, ms }]) => {
    hits = Math.max(hits, all[id] ?? 0);
    const file = bundles.get(test) ?? '';
    if (loading.includes(id)) return [{ file, tests: null, ms }];
    const own = Object.entries(byTest).flatMap(([name, ids]) => (ids.includes(id) ? [name] : []));
    return own.length > 0 ? [{ file, tests: own, ms }] : [];
  });
  held.sort((a, b) => worth(mutant.fileName, b.file, b.ms) - worth(mutant.fileName, a.file, a.ms));
  const answer =
    held.length === 0
      ? 'NoCoverage'
      : await worker
          .ask<string>({ kind: 'mutant', id, files: held, hitLimit: 1000 + hits * 10 })
          .catch(() => 'Killed');
  const [status = '', by = ''] = answer.split('\t');
  const pair = `${mutant.fileName} ${by}`;
  if (by) noticed.set(pair, (noticed.get(pair) ?? 0) + 1);
  const [file, ...rest] = keyOf(mutant).split('\t');
  appendFileSync(results, `${[file, status, ...rest].join('\t')}\n`);
  done += 1;
  if (done % 50 === 0) console.log(new Date().toISOString(), done, 'of', wanted.length);
});
console.log(new Date().toISOString(), 'done');
process.exit(0);
