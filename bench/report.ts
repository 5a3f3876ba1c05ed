import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readLog, verifyLog } from '../src/record/index.ts';
import { buildDocument } from '../src/report/document/build.ts';
import { renderHtml } from '../src/report/html/page.ts';
import { renderPdf } from '../src/report/pdf/render.ts';
import { summarize } from '../src/report/summarize.ts';
import { goUntil } from '../tests/helpers/session-rig.ts';
import { busReadings, sessionFor, type Written } from '../tests/report/support.ts';

const HOUR_S = 3600;
const PER_S = 10;
const TARGET_MS = 2000;
const ROUNDS = 5;

/**
 * Measures the report of a whole session with ten gauge values a second for an hour beside it, and prints one
 * line for each part: wall time, and processor time, which says more on a machine that others use too.
 */
export async function benchReport(): Promise<void> {
  const place = await mkdtemp(join(tmpdir(), 'bench-report-'));
  try {
    const path = join(place, 'log.jsonl');
    await writeSession(path);
    const rounds: Part[][] = [];
    for (let round = 0; round < ROUNDS; round += 1) rounds.push(await report(path));
    const total = (parts: Part[]) => parts.reduce((sum, { ms }) => sum + ms, 0);
    const best = rounds.toSorted((a, b) => total(a) - total(b))[0] ?? [];
    for (const { name, ms, cpuMs } of best)
      console.log(`report: ${name.padEnd(16)} ${ms} ms, processor ${cpuMs} ms`);
    const first = total(rounds[0] ?? []);
    const met = total(best) < TARGET_MS ? 'met' : 'NOT met';
    console.log(
      `report: HTML and PDF     ${total(best)} ms, best of ${ROUNDS} (the first, cold: ${first} ms), ${HOUR_S * PER_S} readings; target ${TARGET_MS} ms: ${met}`,
    );
  } finally {
    await rm(place, { recursive: true });
  }
}

/** A start in which all goes well, and an hour of gauges from the bus behind it. */
async function writeSession(path: string): Promise<void> {
  const rig = await sessionFor(path);
  await goUntil(rig);
  const readings = busReadings(HOUR_S * PER_S, 1000 / PER_S);
  for (let start = 0; start < readings.length; start += 500) {
    await Promise.all(
      readings.slice(start, start + 500).map(({ kind, data, afterMs = 0 }: Written) => {
        rig.clock.advance(afterMs);
        return rig.record.append(kind, data);
      }),
    );
  }
  await rig.record.close();
}

interface Part {
  readonly name: string;
  readonly ms: number;
  readonly cpuMs: number;
}

async function report(path: string): Promise<Part[]> {
  const parts: Part[] = [];
  const timed = async <T>(name: string, work: () => T | Promise<T>): Promise<T> => {
    const [start, cpu] = [performance.now(), process.cpuUsage()];
    const result = await work();
    const { user, system } = process.cpuUsage(cpu);
    parts.push({
      name,
      ms: Math.round(performance.now() - start),
      cpuMs: Math.round((user + system) / 1000),
    });
    return result;
  };
  const { entries } = await timed('read', () => readLog(path));
  await timed('verify', () => verifyLog(path));
  const model = await timed('stories, replay', () => summarize({ entries }));
  const laidOut = await timed('words, plots', () => buildDocument(model, 'us'));
  await timed('HTML', () => renderHtml(laidOut));
  await timed('PDF', () => renderPdf(laidOut, new Date(0)));
  return parts;
}
