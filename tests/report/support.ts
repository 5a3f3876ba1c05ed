import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { JobCard } from '../../machines/context.ts';
import { english } from '../../prompts/en/index.ts';
import { loadProfile } from '../../src/profile/load.ts';
import { type Entry, type JsonObject, openNewLog, readLog } from '../../src/record/index.ts';
import type { SummaryInput } from '../../src/report/summarize.ts';
import { headerData } from '../../src/session/header.ts';
import { Session } from '../../src/session/session.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { SilentSink } from '../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../src/voice/speech-queue.ts';
import { type Rig, rigAround, job as shortJob } from '../helpers/session-rig.ts';

/** A folder that is gone after the test. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'report-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export const longNames: JobCard = {
  vehicle: 'Recovery tractor with the very long fleet name that once seemed a good idea, 12',
  engine: 'E'.repeat(80),
  technician: 'Maximiliana-Konstantina von und zu Hohenzuckerwatte-Papadopoulou-Featherston',
  second: '<script>alert("second")</script>',
  supervisor: 'O\'Brien & Sons "Quality"',
};

export const rightToLeft: JobCard = {
  vehicle: 'משאית גרר 7',
  engine: 'מנוע דיזל (משופץ) 6.7 L',
  technician: 'محمد عبد الله الأحمد',
  second: 'דנה כהן',
  supervisor: 'Ada Example עם שם נוסף',
};

/**
 * A session with real parts at a clock that obeys, for these people.
 * @param wallOffMs how far the wall clock is off, at a session time
 */
export async function sessionFor(
  path: string,
  job: JobCard = shortJob,
  profileName = 'demo-six',
  wallOffMs: (nowMs: number) => number = () => 0,
): Promise<Rig> {
  const profile = await loadProfile(profileName);
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'));
  const record = await openNewLog(path, headerData({ profile, job, language: 'en', units: 'us' }), {
    wall: () => new Date(clock.wall().getTime() + wallOffMs(clock.nowMs())),
    monoMs: () => clock.nowMs(),
  });
  const silence = { synthesize: async () => ({ samples: new Float32Array(160), sampleRateHz: 16_000 }) };
  const sink = new SilentSink((ms, signal) => clock.sleep(ms, signal));
  const speech = new SpeechQueue(silence, sink, () => clock.nowMs());
  const session = new Session({ profile, job, language: english, units: 'us', clock, record, speech });
  const rig = rigAround(session, clock, record, path);
  await session.begin();
  return rig;
}

/** A clock that stands until it is told to go on. */
function handClock() {
  let nowMs = 0;
  const begin = Date.UTC(2026, 0, 2, 3, 4, 5);
  return {
    wall: () => new Date(begin + nowMs),
    monoMs: () => nowMs,
    pass: (ms: number) => {
      nowMs += ms;
    },
  };
}

export interface Written {
  readonly kind: string;
  readonly data: JsonObject;
  /** Since the entry before. */
  readonly afterMs?: number;
}

/** A sound record with these entries behind its header. */
export async function writeLog(
  path: string,
  entries: readonly Written[],
  header: JsonObject = {},
): Promise<void> {
  const clock = handClock();
  const log = await openNewLog(path, header, clock);
  for (let start = 0; start < entries.length; start += 500) {
    await Promise.all(
      entries.slice(start, start + 500).map(({ kind, data, afterMs = 0 }) => {
        clock.pass(afterMs);
        return log.append(kind, data);
      }),
    );
  }
  await log.close();
}

export async function demoHeader(job: JobCard = shortJob): Promise<JsonObject> {
  return headerData({ profile: await loadProfile('demo-six'), job, language: 'en', units: 'us' });
}

/** What the report command reads of a record. */
export async function inputOf(path: string): Promise<SummaryInput & { readonly entries: readonly Entry[] }> {
  const { entries, fault } = await readLog(path);
  return { entries, ...(fault ? { fault } : {}) };
}

/** One hour of gauges from the bus: so many readings a second, in turn of speed, pressure and temperature. */
export function busReadings(count: number, everyMs: number): Written[] {
  const gauges = [
    { quantity: 'engineSpeed', si: (t: number) => 850 + 900 * Math.max(0, Math.sin(t / 400)) },
    {
      quantity: 'oilPressure',
      si: (t: number) => 250 + 150 * Math.max(0, Math.sin(t / 400)) + 8 * Math.sin(t),
    },
    { quantity: 'coolantTemperature', si: (t: number) => 90 - 85 * Math.exp(-t / 600) + Math.sin(t / 7) },
  ] as const;
  return Array.from({ length: count }, (_, index) => {
    const gauge = gauges[index % gauges.length] ?? gauges[0];
    const si = Math.round(gauge.si((index * everyMs) / 1000) * 100) / 100;
    return { kind: 'reading', data: { quantity: gauge.quantity, si, via: 'bus' }, afterMs: everyMs };
  });
}
