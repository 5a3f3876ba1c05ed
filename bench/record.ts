import { mkdtemp, open, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type JsonObject, openNewLog, type RecordClock, readLog, verifyLog } from '../src/record/index.ts';
import { killAndRecover } from '../tests/record/kill-run.ts';

const APPENDS = 500;
const EVENTS = 200_000;
const VERIFY_TARGET_PER_S = 200_000;
const KILLS = 500;

const clock: RecordClock = { wall: () => new Date(), monoMs: () => performance.now() };

/** A reading as a session records it: about 400 bytes with its envelope. */
const reading = (i: number): JsonObject => ({
  who: 'technician',
  said: 'Oil pressure now?',
  heard: 'forty two psi',
  confidence: 0.83,
  value: 280 + (i % 100) / 10,
  unit: 'kPa',
  min: 100,
  verdict: { met: true, margin: 180 + (i % 100) / 10 },
});

/**
 * Measures the record and prints one line for each figure.
 * @param folder where the files go; the disk under it is what is measured
 * @param kills how often a writing process is killed and its record recovered
 */
export async function benchRecord(folder = tmpdir(), kills = KILLS): Promise<void> {
  const place = await mkdtemp(join(folder, 'bench-record-'));
  try {
    await benchAppend(place);
    await benchVerify(place);
    await benchKills(place, kills);
  } finally {
    await rm(place, { recursive: true });
  }
}

async function benchAppend(place: string): Promise<void> {
  const log = await openNewLog(join(place, 'append.jsonl'), {}, clock);
  const raw = await open(join(place, 'raw.bin'), 'wx');
  const block = Buffer.alloc(400, 'x');
  const recordMs: number[] = [];
  const diskMs: number[] = [];
  // In turn, so that whatever else the disk does meets both alike.
  for (let i = 0; i < APPENDS; i++) {
    recordMs.push(await timeMs(() => log.append('reading', reading(i))));
    diskMs.push(
      await timeMs(async () => {
        await raw.write(block);
        await raw.datasync();
      }),
    );
  }
  await raw.close();
  await log.close();
  console.log(`record: append and sync  ${spread(recordMs)}`);
  console.log(`record: the disk alone   ${spread(diskMs)} (write 400 bytes, fdatasync)`);
}

async function benchVerify(place: string): Promise<void> {
  const path = join(place, 'verify.jsonl');
  const log = await openNewLog(path, {}, clock);
  for (let i = 1; i < EVENTS; i += 1000) {
    await Promise.all(
      Array.from({ length: Math.min(1000, EVENTS - i) }, (_, k) => log.append('reading', reading(i + k))),
    );
  }
  await log.close();
  const rounds: number[] = [];
  for (let round = 0; round < 5; round++) {
    rounds.push(
      await timeMs(async () => {
        if (!(await verifyLog(path)).ok) throw new Error('the record just written does not verify');
      }),
    );
  }
  const perS = Math.round(EVENTS / (Math.min(...rounds) / 1000));
  const readMs = await timeMs(() => readLog(path));
  const megabytes = ((await stat(path)).size / 1e6).toFixed(0);
  const met = perS >= VERIFY_TARGET_PER_S ? 'met' : 'NOT met';
  console.log(
    `record: verify           ${perS} events/s, best of 5 (${EVENTS} events, ${megabytes} MB); target ${VERIFY_TARGET_PER_S}: ${met}`,
  );
  console.log(`record: read into memory ${Math.round(EVENTS / (readMs / 1000))} events/s`);
}

async function benchKills(place: string, kills: number): Promise<void> {
  let acknowledged = 0;
  let lost = 0;
  let torn = 0;
  let sound = 0;
  for (let run = 0; run < kills; run++) {
    const outcome = await killAndRecover(place, run);
    acknowledged += outcome.acknowledged;
    lost += outcome.lost;
    torn += outcome.tornTail ? 1 : 0;
    sound += outcome.verified ? 1 : 0;
  }
  console.log(
    `record: ${kills} kills          ${acknowledged} entries acknowledged, ${lost} lost, ${torn} torn lines recovered, ${sound} records sound`,
  );
}

async function timeMs(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

function spread(timesMs: number[]): string {
  const sorted = timesMs.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(2);
  return `p50 ${at(0.5)} ms, p95 ${at(0.95)} ms, longest ${at(1)} ms (${sorted.length} times)`;
}
