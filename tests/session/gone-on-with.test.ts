import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stateName } from '../../machines/moment.ts';
import { type Entry, readLog, verifyLog } from '../../src/record/index.ts';
import { inJson, VOCABULARY } from '../../src/record/vocabulary/index.ts';
import { headerData, languageIn, readHeader, type SessionHeader } from '../../src/session/header.ts';
import { beginRecord, continueRecord, recordName } from '../../src/session/record-keeping.ts';
import { ResumeError, restore } from '../../src/session/resume.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { job } from '../helpers/session-rig.ts';
import { Driver } from '../machines/helpers/driver.ts';
import { demoSix } from '../machines/helpers/profiles.ts';

const header: SessionHeader = { profile: demoSix, job, language: 'en', units: 'metric' };
const BEGUN = new Date('2026-01-02T03:04:05Z');

/** A record of a session that has answered so many seconds after it began. */
async function begun(...replies: readonly (readonly [seconds: number, id: string])[]) {
  const path = join(scratchFolder(), 'session.jsonl');
  const clock = new VirtualClock(BEGUN);
  const record = await beginRecord(path, header, clock);
  for (const [seconds, id] of replies) {
    clock.advance(seconds * 1000 - clock.nowMs());
    const event = { type: 'reply', id, by: 'technician', via: 'keys', atMs: clock.nowMs() };
    await record.append('event', { ...event, state: 'any' });
  }
  await record.close();
  return path;
}
const later = (beginMs: number) => new VirtualClock(BEGUN, beginMs);
const entriesOf = async (path: string): Promise<Entry[]> => [...(await readLog(path)).entries];

describe('a new record', () => {
  it('is named by its date and time, which sort', () => {
    expect(recordName(new Date('2026-01-02T03:04:05.678Z'))).toBe('first-fire-2026-01-02T03-04-05');
  });

  it('begins with all that is needed to replay it, by the clock of its session', async () => {
    const [first] = await entriesOf(await begun());
    expect(first).toMatchObject({ kind: 'opened', at: BEGUN.toISOString(), monoMs: 0 });
    expect(first?.data.vocabulary).toBe(VOCABULARY);
    expect(first && readHeader(first.data)).toEqual({ ...header, vocabulary: VOCABULARY });
  });

  it('says its language, also where the rest of it cannot be read', () => {
    expect(languageIn(headerData({ ...header, language: 'fr' }))).toBe('fr');
    expect(languageIn({ language: 'fr', profile: 'lost' })).toBe('fr');
    expect(languageIn({ language: 'xx' })).toBeNull();
    expect(languageIn({})).toBeNull();
  });
});

describe('a record that broke off', () => {
  it('is gone on with where it was: state and time', async () => {
    const path = await begun([3, 'cardRight']);
    const { record, clock, restored, entries, setAside } = await continueRecord(path, later);
    expect(setAside).toBeNull();
    expect(clock.nowMs()).toBe(3000);
    expect(restored.moment.context.done).toContain('job.card');
    expect(entries.map(({ kind }) => kind)).toEqual(['opened', 'event']);
    await record.close();
    expect((await entriesOf(path)).at(-1)).toMatchObject({
      kind: 'resumed',
      data: { vocabulary: VOCABULARY },
      monoMs: 3000,
    });
  });

  it('that has only begun is gone on with from the start', async () => {
    const { record, clock, restored } = await continueRecord(await begun(), later);
    expect(clock.nowMs()).toBe(0);
    expect(restored.moment.context.done).toEqual([]);
    await record.close();
  });

  it('in the middle of a line has what there was of it set aside, and says where', async () => {
    const path = await begun([3, 'cardRight'], [4, 'understood']);
    writeFileSync(path, readFileSync(path, 'utf8').slice(0, -20));
    const { record, setAside } = await continueRecord(path, later);
    expect(setAside).toBe(
      'The last line of the record had been cut short; what there was of it is set aside in entry 2, and the record goes on behind the entry before.',
    );
    await record.close();
    expect(await verifyLog(path)).toMatchObject({ ok: true });
  });

  it('as its session was over is closed, and not gone on with', async () => {
    const path = await begun();
    const ended = new Driver(demoSix).stop().reply('allOff').reply('yes').reply('endSession').reply('yes');
    expect(ended.over).toBe(true);
    const { record } = await continueRecord(path, later);
    for (const { event, after } of ended.history)
      await record.append('event', { ...inJson<'event'>({ ...event, state: stateName(after) }) });
    await record.close();
    await expect(continueRecord(path, later)).rejects.toThrow(
      new ResumeError(
        `${path} broke off as its session was over. That is on the record now; begin a new one.`,
        true,
      ),
    );
    const closed = (await entriesOf(path)).at(-1);
    expect(closed).toMatchObject({ kind: 'closed', data: { outcome: 'ended' } });
    await expect(continueRecord(path, later)).rejects.toThrow(
      new ResumeError(`${path} is closed: its session was ended. Begin a new one.`, true),
    );
  });
});

describe('a record that cannot be gone on with says why', () => {
  const why = async (change: (entries: Entry[]) => Entry[]) => {
    const entries = change(await entriesOf(await begun([3, 'cardRight'])));
    try {
      return restore(entries, 'it').lastMs;
    } catch (error) {
      return error instanceof ResumeError ? error.message : error;
    }
  };
  const withData = (place: number, data: object) => (entries: Entry[]) =>
    entries.map((entry, i) => (i === place ? { ...entry, data: { ...entry.data, ...data } } : entry));

  it('written by a newer or an older program', async () => {
    expect(await why(entries => entries)).toBe(3000);
    expect(await why(withData(0, { vocabulary: VOCABULARY + 1 }))).toBe(
      `it was written by a newer version of this program (vocabulary ${VOCABULARY + 1}); go on with it there.`,
    );
    expect(await why(withData(0, { vocabulary: 2 }))).toBe(
      'it was written by an earlier version of this program (vocabulary 2), whose procedure was another; begin a new session.',
    );
  });

  it('written by the program before this one, where its events led elsewhere than they do now', async () => {
    const led = (state: string) => (entries: Entry[]) =>
      withData(0, { vocabulary: 8 })(withData(1, { state })(entries));
    expect(await why(led(stateName(new Driver(demoSix).reply('cardRight', { via: 'keys' }).moment)))).toBe(
      3000,
    );
    expect(await why(led('job.elsewhere.asking'))).toBe(
      'it was written by an earlier version of this program (vocabulary 8), whose procedure led elsewhere in entry 1; begin a new session.',
    );
  });

  it('begun by no session', async () => {
    const none = 'it does not begin like a start-up session of this version; begin a new one.';
    expect(await why(withData(0, { job: null }))).toBe(none);
    expect(await why(() => [])).toBe(none);
  });

  it('with an event that this version does not have; what only tells is passed over', async () => {
    expect(await why(withData(1, { type: 'somersault' }))).toBe(
      'it, entry 1: not an event of this version; begin a new session.',
    );
    const asNote = (entries: Entry[]) =>
      entries.map((entry, i) => (i === 1 ? { ...entry, kind: 'somersault' } : entry));
    expect(await why(asNote)).toBe(0);
  });

  it('by the name of its error', () => {
    expect(new ResumeError('').name).toBe('ResumeError');
  });
});
