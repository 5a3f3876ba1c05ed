import { mkdtempSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { describe, expect, it, vi } from 'vitest';
import { type Entry, type RecordLog, readLog, verifyLog } from '../../src/record/index.ts';
import { Session } from '../../src/session/session.ts';
import { goUntil, rig, rigAround } from '../helpers/session-rig.ts';

const kinds = (entries: readonly Entry[]) => entries.map(entry => entry.kind);

describe('a whole session by keys', () => {
  it.each([
    ['demo-six', 'us'],
    ['demo-four', 'us'],
    ['demo-six', 'metric'],
  ] as const)(
    'is led from job card to sign-off on %s in %s units, and its record verifies',
    async (name, units) => {
      const run = await rig(name, units);
      await run.session.begin();
      await goUntil(run);
      expect(run.key()).toBe('signedOff');
      await expect(run.session.outcome).resolves.toBe('signedOff');
      await run.record.close();
      expect(await verifyLog(run.path)).toMatchObject({ ok: true });
      const { entries } = await readLog(run.path);
      expect(entries.at(-1)?.kind === 'closed' || kinds(entries).includes('closed')).toBe(true);
    },
  );
});

describe('a session that is over', () => {
  it('puts nothing on its record behind the sentence that says so: its last hash is the one that was noted', async () => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run, 'job.makerFirst.asking');
    for (const words of ['stop', 'all is off', 'end the session', 'correct']) await run.type(words);
    await run.session.outcome;
    const { lastHash } = run.record;
    run.session.hear({ kind: 'unclear', text: 'a cough', reason: 'outOfGrammar' }, 'voice');
    await run.type('stop');
    run.session.keep('reading', { quantity: 'oilPressure', si: 300, via: 'bus' });
    run.session.report('The microphone is gone.');
    await run.session.settled();
    expect(run.record.lastHash).toBe(lastHash);
    await run.record.close();
    const { entries } = await readLog(run.path);
    expect(kinds(entries).slice(-2)).toEqual(['closed', 'said']);
  });
});

describe('the queue', () => {
  it('carries out a stop ahead of everything that waits', async () => {
    const run = await rig();
    await run.session.begin();
    run.session.receive({ type: 'reply', id: 'cardRight' }, 'technician', 'keys');
    run.session.receive({ type: 'reply', id: 'understood' }, 'technician', 'keys');
    run.session.receive({ type: 'stop' }, 'second', 'voice');
    await run.session.settled();
    expect(run.key()).toBe('stopped.makingSafe');
    expect(run.session.moment.context.stop).toMatchObject({ by: 'second' });
    const { entries } = await readLog(run.path);
    const events = entries.filter(entry => entry.kind === 'event').map(entry => entry.data.type);
    // The first event was being carried out already; the second one has to wait behind the stop.
    expect(events.indexOf('stop')).toBeLessThanOrEqual(1);
  });

  it('stamps an event with the moment it came, not the moment it is carried out', async () => {
    const run = await rig();
    await run.session.begin();
    await run.pass(1234);
    run.session.receive({ type: 'hold' }, 'technician', 'keys');
    run.clock.advance(5000);
    await run.session.settled();
    expect(run.session.moment.context.heldSinceMs).toBe(1234);
  });
});

/** A record whose disk takes its time, to see what is said before a fact is safe. */
function slow(record: RecordLog): { record: RecordLog; release(): void; pending(): number } {
  const waiting: (() => void)[] = [];
  return {
    record: new Proxy(record, {
      get(target, name) {
        if (name !== 'append') {
          const value: unknown = Reflect.get(target, name, target);
          return typeof value === 'function' ? value.bind(target) : value;
        }
        return async (...args: Parameters<RecordLog['append']>) => {
          await new Promise<void>(resolve => waiting.push(resolve));
          return target.append(...args);
        };
      },
    }),
    release: () => {
      for (const go of waiting.splice(0)) go();
    },
    pending: () => waiting.length,
  };
}

/** Everything that waits for nothing but its turn has had it. */
async function allElseDone(): Promise<void> {
  for (let turn = 0; turn < 10; turn++) await setImmediate();
}

describe('the record', () => {
  it('has an event on the disk before the next prompt is spoken, but a call-out does not wait', async () => {
    const base = await rig();
    const disk = slow(base.record);
    const session = new Session({ ...base.session.parts, record: disk.record });
    const run = rigAround(session, base.clock, disk.record, base.path);
    const begun = session.begin();
    const drain = setInterval(disk.release, 1);
    await begun;
    clearInterval(drain);

    const before = run.said.length;
    run.keys.type('card is right');
    await vi.waitFor(() => expect(disk.pending()).toBeGreaterThan(0));
    await allElseDone();
    expect(run.said.length).toBe(before);

    run.session.receive({ type: 'stop' }, 'technician', 'keys');
    disk.release();
    await allElseDone();
    const again = setInterval(disk.release, 1);
    await run.session.settled();
    clearInterval(again);
    const hazards = run.happenings.flatMap(each => (each.kind === 'said' && each.hazard ? [each.shown] : []));
    expect(hazards[0]).toMatch(/^Stop/);
  });

  it('keeps what was heard, said and judged, with limits, margin, rule and source', async () => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run, 'fill.oilFilterPreFilled.asking');
    await run.record.close();
    const lines = (await readFile(run.path, 'utf8')).trim().split('\n');
    const entries: Entry[] = lines.map(line => JSON.parse(line));
    expect(new Set(kinds(entries))).toEqual(
      new Set(['opened', 'said', 'heard', 'event', 'passed', 'verdict', 'stopped']),
    );
    const verdict = entries.find(
      entry => entry.kind === 'verdict' && entry.data.quantity === 'coolantFreezePoint',
    );
    expect(verdict?.data).toMatchObject({ unit: 'degC', met: true, rule: expect.any(String) });
    expect(verdict?.data.source).toMatch(/ASHRAE/);
    const mix = entries.find(entry => entry.kind === 'passed' && entry.data.step === 'fill.coolantMix');
    expect(mix?.data.figures).toMatchObject({ concentrate: { unit: 'litre' }, water: { unit: 'litre' } });
  });
});

describe('keys', () => {
  it('are never deafened by the voice of the tool', async () => {
    const run = await rig();
    await run.session.begin();
    expect(run.session.speaking).toBe(true);
    await run.type('card is right');
    expect(run.key()).toBe('job.makerFirst.asking');
  });

  it('give a reason in their own words where one is asked for', async () => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run, 'prime.strokes.asking');
    await run.type('skip this');
    expect(run.key()).toBe('prime.strokes.skipping');
    await run.type('electric lift pump, no hand primer');
    expect(run.session.moment.context.skips).toMatchObject([
      { step: 'prime.strokes', reason: 'electric lift pump, no hand primer' },
    ]);
  });
});

describe('what is heard and does not count', () => {
  it('is answered with a repetition, and is on the record', async () => {
    const run = await rig();
    await run.session.begin();
    await run.type('banana');
    expect(run.key()).toBe('job.card.asking');
    expect(run.said.at(-1)).toMatch(/^I did not understand/);
    const { entries } = await readLog(run.path);
    expect(entries.some(entry => entry.kind === 'heard' && entry.data.kind === 'unclear')).toBe(true);
  });

  it('has no effect while time is only running', async () => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run, 'fill.coolantBleed.counting');
    const said = run.said.length;
    await run.type('banana');
    expect(run.key()).toBe('fill.coolantBleed.counting');
    expect(run.said.length).toBe(said);
  });
});

it('is told in one sentence that a record is there already', async () => {
  const path = join(mkdtempSync(join(tmpdir(), 'session-')), 'record.jsonl');
  const run = await rig('demo-six', 'us', path);
  await run.record.close();
  await expect(rig('demo-six', 'us', path)).rejects.toThrow(/exists|there already/);
});

it('is stopped when one of its faces breaks: the others are told, and nothing that follows is lost', async () => {
  const run = await rig();
  await run.session.begin();
  const broken = run.session.watch(() => {
    throw new Error('no picture any more');
  });
  await run.type('card is right');
  expect(run.key()).toBe('stopped.makingSafe');
  expect(run.happenings).toContainEqual(
    expect.objectContaining({ kind: 'problem', sentence: expect.stringMatching(/no picture any more/) }),
  );
  broken();
  await run.pass(20_000);
  await run.type('all is off');
  expect(run.key()).not.toBe('stopped.makingSafe');
});
