import { appendFile, mkdtemp, readFile, rm, truncate } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import type { EngineHeard } from '../../../src/engineering/engine-sound/ear.ts';
import { RecordError, readLog, verifyLog } from '../../../src/record/index.ts';
import { Run } from '../../../src/server/bay/run.ts';
import { ENTRIES_IN_A_PAGE } from '../../../src/server/protocol/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import { firingOf } from '../../../src/session/engine-ear/join-engine-ear.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { goUntil, rigAround } from '../../helpers/session-rig.ts';
import { demoSix } from '../../machines/helpers/profiles.ts';
import { allElse } from './parts-of-a-bay.ts';

const header = { profile: demoSix, job: demoJob, language: 'fr', units: 'metric' } as const;

/** Disks of a busy machine take their time. */
const soon = (check: () => void) => vi.waitFor(check, { timeout: 20_000, interval: 5 });

/** A session with a record of its own, what was told of that, and the next one that is made from it. */
async function begun({ language = 'en' as 'en' | 'fr' } = {}) {
  const folder = await mkdtemp(join(tmpdir(), 'run-'));
  const path = join(folder, 'session.jsonl');
  const asked: string[] = [];
  const mouths = {
    say: (text: string) => asked.push(text),
    hush: () => void asked.push('hush'),
    attended: () => false,
  };
  const told: (readonly string[])[] = [];
  const news = {
    rescued: async (...rescued: readonly string[]) => void told.push(['rescued', ...rescued]),
    lost: (sentence: string) => void told.push(['lost', sentence]),
    closed: () => void told.push(['closed']),
  };
  let clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'));
  const makeClock = (beginMs: number) => {
    clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'), beginMs);
    return clock;
  };
  const run = await Run.start({ id: 'one', path }, { ...header, language }, makeClock, mouths, news);
  onTestFinished(() => run.close());
  await run.session.begin();
  const bench = rigAround(run.session, clock, run.record, path);
  const problems = () => run.viewer.view().problems;
  const resumed = async () => {
    const again = await Run.resume({ id: 'one', path }, makeClock, mouths, news);
    onTestFinished(() => again.run.close());
    return again;
  };
  return { folder, path, run, bench, clock, asked, told, problems, resumed };
}

/** Answers by the first of these that may be said, until it is so. */
async function answerUntil({ run, bench }: Awaited<ReturnType<typeof begun>>, isSo: () => boolean) {
  const answers = ['end the session', 'all is off', 'correct', 'false alarm'];
  for (let turn = 0; turn < 12 && !isSo(); turn += 1) {
    const offered = run.session.grammar('keys').replies.flatMap(({ wordings }) => wordings);
    await bench.type(answers.find(each => offered.includes(each)) ?? expect.fail(offered.join()));
  }
}

describe('A session that a bay runs', () => {
  test('is in its own language and of its own engine, with nobody listening yet', async () => {
    const { run } = await begun({ language: 'fr' });
    expect([run.id, run.language, run.isOver, run.mayBeLeft]).toEqual(['one', 'fr', false, false]);
    expect(run.session.parts).toMatchObject({ profile: { name: demoSix.name }, units: 'metric' });
    expect(run.firing).toEqual(firingOf(demoSix));
    expect(run.viewer.view().hearing.source).toBe('keys');
    expect(run.clock.nowMs()).toBe(0);
  });

  test('gives out its record as it was written, a page of it at a time, and is known by the hash of its first entry', async () => {
    const { run, path } = await begun();
    await run.session.settled();
    const lines = (await readFile(path, 'utf8')).trimEnd().split('\n');
    expect(run.chain).toBe(JSON.parse(lines[0] ?? '').hash);
    expect(run.lines(0)).toEqual(lines);
    expect(run.lines(1)).toEqual(lines.slice(1));
    for (let nth = 0; nth < ENTRIES_IN_A_PAGE; nth += 1)
      run.session.keep('command', { id: String(nth), device: 'd', name: 'n', role: 'second', do: 'say' });
    expect(run.lines(0)).toHaveLength(ENTRIES_IN_A_PAGE);
  });

  test('may be left when all is said to be off, and never once it is over', async () => {
    const session = await begun();
    const { run, bench } = session;
    run.session.receive({ type: 'stop' }, 'technician', 'touch');
    await run.session.settled();
    expect(run.mayBeLeft).toBe(false);
    await answerUntil(session, () => run.mayBeLeft);
    expect(run.isOver).toBe(false);
    await answerUntil(session, () => run.isOver);
    expect([run.isOver, run.mayBeLeft, run.firing]).toEqual([true, false, null]);
    expect(bench.session.moment.status).toBe('done');
  });
});

describe('The record of a session', () => {
  test('is closed by itself when it is over, once, with all that was to be said of it', async () => {
    const session = await begun();
    const { run, told, path } = session;
    run.session.receive({ type: 'stop' }, 'technician', 'touch');
    await answerUntil(session, () => run.isOver);
    await soon(() => expect(told).toEqual([['closed']]));
    await run.close();
    await run.close();
    expect(told).toEqual([['closed']]);
    expect(await verifyLog(path)).toMatchObject({ ok: true });
    await expect(run.record.append('problem', { sentence: 'x' })).rejects.toMatchObject({ code: 'closed' });
    expect(run.viewer.view().problems).toEqual([]);
  });

  test('is closed with everything carried out that had been received, of which nothing is said any more', async () => {
    const { run, told, path, asked } = await begun();
    await allElse();
    expect(asked).toHaveLength(1);
    run.session.receive({ type: 'stop' }, 'second', 'touch');
    await allElse();
    asked.length = 0;
    run.session.receive({ type: 'reply', id: 'stillRunning' }, 'second', 'touch');
    await run.close();
    expect(told).toEqual([['closed']]);
    const { entries } = await readLog(path);
    const events = entries.filter(({ kind }) => kind === 'event');
    expect(events.at(-1)).toMatchObject({ data: { type: 'reply', id: 'stillRunning' } });
    await allElse();
    expect(asked.filter(each => each !== 'hush')).toEqual([]);
    expect(run.session.speaking).toBe(false);
  });

  test('is closed with the clock of its session: nothing falls due any more', async () => {
    const { run, clock, bench } = await begun();
    await goUntil(bench, 'noFuelCrank.untilPressure.cranking');
    expect(clock.nextMs()).not.toBeNull();
    await run.close();
    expect(clock.nextMs()).toBeNull();
  });

  test('that can no longer be written is said to be in memory only; at its end the whole of it is saved elsewhere, and told', async () => {
    const { run, bench, told, path, folder, problems } = await begun();
    await run.session.settled();
    await rm(path);
    await bench.type('card is right');
    await soon(() =>
      expect(problems()).toEqual([
        expect.stringMatching(
          /^The laptop can no longer write the record \(the file was deleted\): it keeps it in memory only\. Make room there, and all of it is written; else the laptop saves the record elsewhere when the session is over, and says where\.$/,
        ),
      ]),
    );
    await run.close();
    const elsewhere = run.record.path;
    expect(elsewhere).toMatch(/\.rescued-/);
    expect(problems()).toContain(
      `The record could not be written to the end; the whole of it is in ${basename(elsewhere)}. The laptop's terminal says where.`,
    );
    expect(problems().join()).not.toContain(folder);
    expect(told).toEqual([
      [
        'rescued',
        elsewhere,
        `${path} could not be written to the end; the whole record is in ${elsewhere}: keep that file.`,
        run.chain,
      ],
      ['closed'],
    ]);
    expect(await verifyLog(elsewhere)).toMatchObject({ ok: true });
  });

  test('that no place takes is told in the terminal, and of that on the faces', async () => {
    const { run, told, problems } = await begun();
    const unsaved = new RecordError('unsaved', 'It is nowhere.');
    vi.spyOn(run.record, 'close').mockRejectedValueOnce(unsaved);
    vi.spyOn(run.record, 'saveTo').mockRejectedValue(new RecordError('unwritable', 'No room.'));
    vi.spyOn(run.record, 'unsavedEntries', 'get').mockReturnValue(1);
    await run.close();
    expect(problems()).toEqual(['The laptop could save the record nowhere; its terminal says why.']);
    expect(told).toEqual([['lost', expect.stringMatching(/^It is nowhere\. Nothing could be written to /)]]);
  });

  test('that cannot be closed, or whose end cannot be awaited, is told so, and the bay goes on', async () => {
    const breaks = [
      ({ record }: Run) => vi.spyOn(record, 'close').mockRejectedValueOnce(new Error('a fault')),
      ({ session }: Run) => vi.spyOn(session, 'settled').mockRejectedValueOnce(new Error('a fault')),
    ];
    for (const broken of breaks) {
      const { run, told, problems, path } = await begun();
      broken(run);
      await run.close();
      expect(problems()).toEqual(['The laptop could not close the record; its terminal says why.']);
      expect(told).toEqual([
        ['lost', `${path} could not be closed (a fault): verify it before you go on with it.`],
      ]);
    }
  });
});

describe('A session that broke off', () => {
  test('is gone on with where it was, with its time and what was measured in it', async () => {
    const { run, bench, clock, resumed } = await begun();
    await goUntil(bench, 'fill.oilLevel.asking');
    const { readings } = run.viewer.view();
    expect(readings).not.toEqual([]);
    const beforeMs = clock.nowMs();
    await run.close();
    const { run: again, entries } = await resumed();
    expect(again.viewer.view().readings).toEqual(readings);
    expect(again.session.moment.context.step).toBe(run.session.moment.context.step);
    expect(again.clock.nowMs()).toBeLessThanOrEqual(beforeMs);
    expect(again.clock.nowMs()).toBeGreaterThan(0);
    expect(again.viewer.view().problems).toEqual([]);
    expect(entries[0]).toMatchObject({ kind: 'opened' });
    expect(again.chain).toBe(run.chain);
    await again.session.begin();
    expect(again.session.moment.context.stop).toMatchObject({ cause: 'toolRestarted' });
  });

  test('of which the last line was cut short says so', async () => {
    const { run, bench, path, resumed } = await begun();
    await bench.type('card is right');
    await run.close();
    const { length } = await readFile(path);
    await truncate(path, length - 30);
    const { run: again } = await resumed();
    expect(again.viewer.view().problems).toEqual([
      expect.stringMatching(/^The last line of the record had been cut short/),
    ]);
  });

  test('is not gone on with from what is no record', async () => {
    const { run, path, resumed } = await begun();
    await run.close();
    await appendFile(path, 'no entry\n');
    await expect(resumed()).rejects.toBeInstanceOf(RecordError);
  });
});

describe('What a microphone hears of the engine', () => {
  afterEach(() => void vi.useRealTimers());

  const heard = (rpm: number | null): EngineHeard => ({
    toldS: 0,
    atS: 0,
    claim: rpm === null ? null : { rpm, confidence: 0.9 },
    happened: null,
    hunting: null,
    levelsDb: [],
  });

  async function listened() {
    const session = await begun();
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    let shown = 0;
    session.run.viewer.watch(() => {
      shown += 1;
    });
    const speed = () => session.run.viewer.view().engineEar?.speed;
    return { ...session, speed, shown: () => shown };
  }

  test('is shown twice a second at most', async () => {
    const { run, clock, speed, shown } = await listened();
    expect(run.viewer.view().engineEar).toBeUndefined();
    run.engineEar.take(heard(700));
    expect(shown()).toBe(1);
    expect(speed()).toContain('700');
    clock.advance(499);
    run.engineEar.take(heard(710));
    expect(shown()).toBe(1);
    clock.advance(1);
    run.engineEar.take(heard(720));
    expect(shown()).toBe(2);
    run.engineEar.take(heard(720));
    expect(shown()).toBe(2);
  });

  test('is left standing no longer than a second and a half after the last word of it, and keeps nothing waiting', async () => {
    const { run, clock, shown, speed } = await listened();
    run.engineEar.take(heard(700));
    const pass = (ms: number) => {
      clock.advance(ms);
      vi.advanceTimersByTime(ms);
    };
    pass(400);
    run.engineEar.take(heard(700));
    expect(shown()).toBe(1);
    pass(1499);
    expect(shown()).toBe(1);
    pass(1);
    expect(shown()).toBe(2);
    expect(speed()).toBeFalsy();
    run.engineEar.take(heard(700));
    vi.useRealTimers();
    await run.close();
  });

  test('is shown no more once the session is closed', async () => {
    const { run, shown } = await listened();
    run.engineEar.take(heard(700));
    await run.close();
    const before = shown();
    vi.advanceTimersByTime(10_000);
    expect(shown()).toBe(before);
  });
});
