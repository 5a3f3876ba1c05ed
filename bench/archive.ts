import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { addFiles } from '../src/archive/add-files.ts';
import type { Archive } from '../src/archive/archive.ts';
import { compareStarts } from '../src/archive/compare.ts';
import type { Filter } from '../src/archive/filter.ts';
import { type Intake, takeIn } from '../src/archive/intake.ts';
import { openArchive } from '../src/archive/open.ts';
import { rewritten, wholeSession } from '../tests/archive/sessions.ts';

const WHOLE = 1500;
const SHORT = 4000;
/** A session that stops in its second phase. */
const SHORT_ENTRIES = 150;
const STORED = 100_000;
const IMPORT_TARGET_PER_S = 500;
const SEARCH_TARGET_MS = 100;

/**
 * Measures the archive: importing records from the local disk beside plain inserts of the same rows, and
 * searching among 100,000 sessions; in SQLite, and in PostgreSQL where FIRST_FIRE_BENCH_POSTGRES names one.
 */
export async function benchArchive(): Promise<void> {
  const place = await mkdtemp(join(tmpdir(), 'bench-archive-'));
  try {
    const session = await wholeSession(join(place, 'one.jsonl'));
    await benchImport(place, 'whole sessions', WHOLE, index => rewritten(session, index));
    await benchImport(place, 'stopped in phase 2', SHORT, index =>
      rewritten(session.slice(0, SHORT_ENTRIES), index),
    );

    const short = join(place, 'short.jsonl');
    await writeFile(short, rewritten(session.slice(0, SHORT_ENTRIES), 0));
    const taken = await takeIn(join(place, 'one.jsonl'));
    const packed = await takeIn(short);
    if (!taken.ok || !packed.ok) throw new Error('the record just written cannot be taken in');
    const model = { ...taken.intake, packed: packed.intake.packed };
    const stores = [['SQLite', join(place, 'many.sqlite')] as const];
    const postgres = process.env.FIRST_FIRE_BENCH_POSTGRES;
    await benchSearch(model, [...stores, ...(postgres ? [['PostgreSQL', postgres] as const] : [])]);
  } finally {
    await rm(place, { recursive: true });
  }
}

async function benchImport(place: string, what: string, count: number, make: (index: number) => string) {
  const folder = await mkdtemp(join(place, 'logs-'));
  const paths: string[] = [];
  let bytes = 0;
  for (let index = 0; index < count; index += 1) {
    const path = join(folder, `${index}.jsonl`);
    const text = make(index);
    bytes += text.length;
    await writeFile(path, text);
    paths.push(path);
  }

  const archive = await openArchive(join(folder, 'import.sqlite'));
  const cpuBefore = process.cpuUsage();
  const importMs = await timeMs(async () => {
    for await (const added of addFiles(archive, [folder]))
      if (added.kind !== 'new') throw new Error(`${added.source} was not added`);
  });
  const { user, system } = process.cpuUsage(cpuBefore);
  const cpuMs = (user + system) / 1000;
  const againMs = await timeMs(async () => {
    for await (const added of addFiles(archive, [folder]))
      if (added.kind !== 'known') throw new Error(`${added.source} was added twice`);
  });
  await archive.close();

  const intakes: Intake[] = [];
  for (const path of paths) {
    const taken = await takeIn(path);
    if (taken.ok) intakes.push(taken.intake);
  }
  const plain = await openArchive(join(folder, 'plain.sqlite'));
  const plainMs = await timeMs(() => addBatches(plain, intakes));
  await plain.close();
  await rm(folder, { recursive: true });

  const rate = (ms: number) => Math.round((count / ms) * 1000);
  const met = rate(importMs) >= IMPORT_TARGET_PER_S ? 'met' : 'NOT met';
  console.log(
    `archive: import, ${what}: ${rate(importMs)} sessions/s on ${availableParallelism()} cores (${count} of ${Math.round(bytes / count / 1000)} kB); target ${IMPORT_TARGET_PER_S}: ${met}`,
  );
  // Says more than the time on a machine that others use too.
  console.log(
    `archive: processor ${(cpuMs / count).toFixed(1)} ms a session: ${rate(cpuMs)} sessions/s for each core that is free`,
  );
  console.log(
    `archive: plain inserts of the same rows: ${rate(plainMs)} sessions/s, ${(importMs / plainMs).toFixed(1)} times as fast; import again: ${rate(againMs)} sessions/s`,
  );
}

async function addBatches(archive: Archive, intakes: readonly Intake[]): Promise<void> {
  for (let start = 0; start < intakes.length; start += 200)
    await archive.add(intakes.slice(start, start + 200), new Date());
}

const people = ['Ada', 'Ben', 'Cleo', 'Dana', 'Emil', 'Fay', 'Gus', 'Hana', 'Ivo', 'Jo'];
const DAY_MS = 86_400_000;

/** Another session like this one: other names, another day, another time to oil pressure. */
function another(model: Intake, index: number): Intake {
  const id = index.toString(16).padStart(64, '0');
  const started = new Date(Date.UTC(2020, 0, 1) + (index * 2000 * DAY_MS) / STORED).toISOString();
  const name = (offset: number) =>
    `${people[(index + offset) % 10]} ${people[Math.floor(index / 10) % 10]}son`;
  const card = {
    ...model.card,
    vehicle: `Invented truck ${index % 5000}`,
    technician: name(0),
    second: name(3),
    outcome: index % 20 === 0 ? ('ended' as const) : model.card.outcome,
    measured: model.card.measured.map(figure => ({
      ...figure,
      at: started,
      value: figure.value + ((index * 7919) % 1000) / 1000,
    })),
  };
  return { ...model, digest: id, chain: id, head: id, started, ended: started, card };
}

const searches: readonly (readonly [what: string, filter: Filter])[] = [
  ['the latest', {}],
  ['vehicle', { vehicle: 'truck 4711' }],
  ['person', { person: 'fay danason' }],
  ['outcome and dates', { outcome: 'ended', from: '2022-03-01', to: '2022-03-31' }],
  ['text', { text: 'truck 49 ' }],
  ['text that nobody wrote', { text: 'no such words' }],
  [
    'everything at once',
    { vehicle: 'truck 1', person: 'ada', from: '2021-01-01', to: '2021-12-31', outcome: 'ended' },
  ],
];

async function benchSearch(model: Intake, stores: readonly (readonly [string, string])[]): Promise<void> {
  for (const [database, where] of stores) {
    const archive = await openArchive(where);
    await addBatches(
      archive,
      Array.from({ length: STORED }, (_, index) => another(model, index)),
    );
    let worst = 0;
    for (const [what, filter] of searches) {
      const times: number[] = [];
      let found = 0;
      for (let round = 0; round < 9; round += 1) {
        times.push(
          await timeMs(async () => {
            found = (await archive.find(filter, 50)).sessions.length;
          }),
        );
      }
      const [first = 0] = times;
      const sorted = times.toSorted((a, b) => a - b);
      const median = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
      worst = Math.max(worst, ...times);
      console.log(
        `archive: ${database}, ${STORED} sessions, ${what}: ${median.toFixed(1)} ms (first ${first.toFixed(1)} ms), ${found} found`,
      );
    }
    const compareMs = await timeMs(async () => {
      compareStarts('oil-pressure-time', await archive.measured('oil-pressure-time', {}, 40));
    });
    await archive.close();
    const met = worst < SEARCH_TARGET_MS ? 'met' : 'NOT met';
    console.log(
      `archive: ${database}, slowest search ${worst.toFixed(1)} ms; target ${SEARCH_TARGET_MS} ms: ${met}; compare the last 40: ${compareMs.toFixed(1)} ms`,
    );
  }
}

async function timeMs(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
