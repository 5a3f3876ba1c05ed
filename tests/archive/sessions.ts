import { type Entry, readLog } from '../../src/record/index.ts';
import { sealNext } from '../../src/record/seal-next.ts';
import { goUntil } from '../helpers/session-rig.ts';
import { sessionFor } from '../report/support.ts';
import { demoCard } from './people.ts';

/** The entries of a start in which all goes well, at a clock that obeys; its record is left at the path. */
export async function wholeSession(path: string): Promise<readonly Entry[]> {
  const rig = await sessionFor(path, demoCard);
  await goUntil(rig);
  await rig.record.close();
  return (await readLog(path)).entries;
}

export interface Changes {
  readonly vehicle?: string;
  readonly technician?: string;
  /** How many days later than the model. */
  readonly daysLater?: number;
  /** Instead of what was measured between first fire and oil pressure. */
  readonly oilPressureSeconds?: number;
}

const DAY_MS = 86_400_000;

/** The text of another sound record with the same course, chained anew. */
export function another(entries: readonly Entry[], changes: Changes): string {
  const { vehicle, technician, daysLater = 0, oilPressureSeconds } = changes;
  const lines: string[] = [];
  let before: Entry | undefined;
  for (const { kind, at, monoMs, data } of entries) {
    const clock = {
      wall: () => new Date(Date.parse(at) + daysLater * DAY_MS),
      monoMs: () => monoMs,
    };
    const job = {
      ...(typeof data.job === 'object' ? data.job : {}),
      ...(vehicle !== undefined && { vehicle }),
      ...(technician !== undefined && { technician }),
    };
    const isPressureTime = kind === 'inTime' && data.step === 'firstFire.oilPressure';
    const changed =
      kind === 'opened'
        ? { ...data, job }
        : isPressureTime && oilPressureSeconds !== undefined
          ? { ...data, seconds: oilPressureSeconds }
          : data;
    const sealed = sealNext(before, kind, changed, clock);
    before = sealed.entry;
    lines.push(sealed.line);
  }
  return lines.map(line => `${line}\n`).join('');
}

/** One of many, by its number. */
export const rewritten = (entries: readonly Entry[], index: number): string =>
  another(entries, {
    vehicle: `Invented truck ${index}`,
    daysLater: index % 1000,
    oilPressureSeconds: 2 + ((index * 7919) % 100) / 50,
  });

/** The same start, told of another engine or of practice. */
export const opened = (
  entries: readonly Entry[],
  data: Readonly<Record<string, unknown>>,
): readonly Entry[] =>
  entries.map(entry =>
    entry.kind === 'opened'
      ? { ...entry, data: { ...entry.data, ...JSON.parse(JSON.stringify(data)) } }
      : entry,
  );
