import { describe, expect, it, vi } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { type RecordLog, readLog } from '../../src/record/index.ts';
import { RecordError } from '../../src/record/record-error.ts';
import { type Happening, Session } from '../../src/session/session.ts';
import type { EarLevel, Grammar, Heard, Recognizer } from '../../src/voice/ports.ts';
import { SilentSink } from '../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../src/voice/speech-queue.ts';
import { goUntil, type Rig, rig, rigAround, speakingTime } from '../helpers/session-rig.ts';

const { lines } = languages.en;

async function begun(state?: string): Promise<Rig> {
  const run = await rig();
  await run.session.begin();
  if (state) await goUntil(run, state);
  return run;
}

const entriesOf = async (run: Rig, kind: string) => {
  await run.session.settled();
  return (await readLog(run.path)).entries.filter(entry => entry.kind === kind).map(({ data }) => data);
};

const of = <K extends Happening['kind']>({ happenings }: Rig, kind: K) =>
  happenings.filter((each): each is Extract<Happening, { kind: K }> => each.kind === kind);

describe('a session that begins', () => {
  it('welcomes by the name of the engine, says that it is invented, and then asks its first question', async () => {
    const run = await begun();
    expect(run.said[0]).toContain(run.session.parts.profile.name);
    expect(run.said[0]).toContain(lines.inventedProfile);
    expect(run.said).toHaveLength(2);
    expect(of(run, 'said').map(({ asks, hazard, atMs }) => [asks, hazard, atMs])).toEqual([
      [true, false, 0],
      [true, false, 0],
    ]);
    const said = await entriesOf(run, 'said');
    expect(said.at(-1)).toMatchObject({ line: 'ask', step: 'job.card', priority: 'prompt' });
  });

  it('anew after it broke off says so, and is a stop of the tool itself', async () => {
    const { session, clock, record, path } = await rig();
    const run = rigAround(new Session(session.parts, session.moment), clock, record, path);
    await run.session.begin();
    expect(run.said[0]).toBe(lines.resumed);
    expect(of(run, 'said')[0]).toMatchObject({ asks: false, hazard: false });
    expect((await entriesOf(run, 'event'))[0]).toMatchObject({
      type: 'stop',
      cause: 'toolRestarted',
      by: 'technician',
      via: 'tool',
    });
  });
});

describe('what is heard', () => {
  it('is on the record and shown with how it came, what it was, how certain and whose it was', async () => {
    const run = await begun();
    await run.pass(500);
    for (const text of ['card is right', 'banana', 'stop']) await run.type(text);
    expect(await entriesOf(run, 'heard')).toEqual([
      { via: 'keys', text: 'card is right', kind: 'reply', confidence: 1, by: 'technician' },
      { via: 'keys', text: 'banana', kind: 'unclear', reason: 'outOfGrammar', by: 'technician' },
      { via: 'keys', text: 'stop', kind: 'stop', by: 'technician' },
    ]);
    expect(of(run, 'heard')).toEqual([
      { kind: 'heard', atMs: 500, by: 'technician', text: 'card is right', counted: true },
      { kind: 'heard', atMs: 500, by: 'technician', text: 'banana', counted: false },
      { kind: 'heard', atMs: 500, by: 'technician', text: 'stop', counted: true },
    ]);
  });

  it('is put down to whoever the device belongs to', async () => {
    const run = await begun();
    const heard: Heard = { kind: 'reply', id: 'cardRight', text: 'card is right', confidence: 1 };
    run.session.hear(heard, 'touch', 'second');
    expect((await entriesOf(run, 'event'))[0]).toMatchObject({ by: 'second', via: 'touch' });
  });

  it('out of its range is told its range, in the units of the session, and answers nothing', async () => {
    const run = await begun('job.ambient.asking');
    await run.type('500');
    expect(run.key()).toBe('job.ambient.asking');
    // Listened for from -40 to 50 degC.
    expect(run.said.at(-1)).toMatch(/air temperature.*−40 °F to 122 °F/i);
    expect(of(run, 'said').at(-1)).toMatchObject({ asks: false, hazard: false });
    expect((await entriesOf(run, 'event')).some(({ type }) => type === 'unclear')).toBe(false);
  });

  it('out of a range where no number is asked for is told nothing', async () => {
    const run = await begun();
    const { length } = run.said;
    run.session.hear({ kind: 'unclear', text: '500', reason: 'outOfRange' }, 'keys');
    await run.session.settled();
    expect(run.said).toHaveLength(length);
  });
});

describe('an event', () => {
  it('that changes nothing is not on the record', async () => {
    const run = await begun();
    const before = await entriesOf(run, 'event');
    run.session.receive({ type: 'clock' }, 'technician', 'tool');
    expect(await entriesOf(run, 'event')).toEqual(before);
  });

  it('of time is the tool’s own, at the moment that was waited for', async () => {
    const run = await begun('fill.coolantBleed.counting');
    const nextMs = run.clock.nextMs() ?? 0;
    await run.pass(nextMs - run.clock.nowMs());
    const clock = (await entriesOf(run, 'event')).findLast(({ type }) => type === 'clock');
    expect(clock).toMatchObject({ by: 'technician', via: 'tool', atMs: nextMs });
  });

  it('ends the session with its outcome, after which nothing is waited for or taken', async () => {
    const run = await begun();
    let outcome = '';
    void run.session.outcome.then(ended => {
      outcome = ended;
    });
    await run.type('stop');
    for (const said of ['all is off', 'another cause', 'end the session']) await run.type(said);
    expect(outcome).toBe('');
    await run.type('correct');
    expect(outcome).toBe('ended');
    await run.pass(60_000);
    expect(run.clock.nextMs()).toBeNull();
    expect(await entriesOf(run, 'closed')).toEqual([{ outcome: 'ended' }]);
    const events = await entriesOf(run, 'event');
    await run.type('stop');
    run.session.receive({ type: 'hold' }, 'technician', 'keys');
    expect(await entriesOf(run, 'event')).toEqual(events);
  });
});

describe('what the session tells by itself', () => {
  it('in passing asks nothing; called out it is a hazard; both stand on the record with their step', async () => {
    const run = await begun();
    run.session.mention('busSilent');
    run.session.callOut('heardOverspeed', { speed: { unit: 'rpm', si: 3200 } });
    expect(of(run, 'said').slice(-2)).toMatchObject([
      { shown: lines.busSilent, hazard: false, asks: false, inPassing: lines.busSilent },
      { hazard: true, asks: false, inPassing: '' },
    ]);
    expect(run.said.at(-1)).toContain('3200 rpm');
    expect((await entriesOf(run, 'said')).slice(-2)).toMatchObject([
      { line: 'busSilent', step: 'job.card', priority: 'notice' },
      { line: 'heardOverspeed', step: 'job.card', priority: 'hazard' },
    ]);
  });

  it('of what does not work is shown and on the record', async () => {
    const run = await begun();
    run.session.report('No microphone.');
    expect(of(run, 'problem')).toEqual([{ kind: 'problem', sentence: 'No microphone.' }]);
    expect(await entriesOf(run, 'problem')).toEqual([{ sentence: 'No microphone.' }]);
  });

  it('is told to those who watch, for as long as they do', async () => {
    const run = await begun();
    const watcher = vi.fn();
    const unwatch = run.session.watch(watcher);
    run.session.report('One.');
    expect(watcher).toHaveBeenCalledWith({ kind: 'problem', sentence: 'One.' });
    unwatch();
    const calls = watcher.mock.calls.length;
    run.session.report('Two.');
    expect(watcher.mock.calls).toHaveLength(calls);
  });

  it('beside an answer is shown beside the question that follows, and what came before a question too', async () => {
    const run = await begun('job.ambient.asking');
    await run.type('50');
    const said = of(run, 'said').at(-1);
    expect(said?.asks).toBe(true);
    expect(said?.inPassing).toBe('50 °F.');
    expect(said?.shown).toMatch(/^50 °F\. .+\?$/);
  });
});

describe('an ear', () => {
  class Ear implements Recognizer {
    readonly grammars: Grammar[] = [];
    readonly only: boolean[] = [];
    say: (heard: Heard) => void = () => {};
    listen(grammar: Grammar): void {
      this.grammars.push(grammar);
    }
    onlyStop(active: boolean): void {
      this.only.push(active);
    }
    onHeard(handler: (heard: Heard) => void): void {
      this.say = handler;
    }
    onLevel(): void {}
    close(): void {}
  }

  it('by voice hears only stop words while the tool speaks; keys are never told so', async () => {
    const run = await begun();
    const [voice, keys] = [new Ear(), new Ear()];
    expect(run.session.speaking).toBe(true);
    run.session.attach(voice, 'voice');
    run.session.attach(keys, 'keys');
    expect(voice.only.at(-1)).toBe(true);
    await run.pass(120_000);
    expect(run.session.speaking).toBe(false);
    expect(run.session.hearsOnlyStop).toBe(false);
    expect(voice.only.at(-1)).toBe(false);
    expect(keys.only).toEqual([]);
  });

  it('is told what may be said now, as soon as it is there and after each change, each in its own way', async () => {
    const run = await begun();
    const [voice, keys] = [new Ear(), new Ear()];
    run.session.attach(voice, 'voice');
    run.session.attach(keys, 'keys');
    expect([voice, keys].map(({ grammars }) => grammars.at(-1)?.key)).toEqual([
      'job.card.asking',
      'job.card.asking',
    ]);
    await run.type('card is right');
    expect(voice.grammars.at(-1)).toEqual(run.session.grammar('voice'));
    expect(keys.grammars.at(-1)).toEqual(run.session.grammar('keys'));
    expect(voice.grammars.at(-1)?.key).toBe('job.makerFirst.asking');
  });

  it('is heard in the way that it came', async () => {
    const run = await begun();
    const voice = new Ear();
    run.session.attach(voice, 'voice');
    voice.say({ kind: 'reply', id: 'cardRight', text: 'card is right', confidence: 0.7 });
    expect((await entriesOf(run, 'event'))[0]).toMatchObject({ via: 'voice', certainty: 0.7 });
  });

  const noisy = (nth: number): EarLevel => ({
    levelDbfs: -30,
    clipping: false,
    speech: false,
    noiseDbfs: -40,
    utterance: { nth, speechDbfs: -30, aboveNoiseDb: 2 },
  });

  it('in a bay too noisy for voice is told of by voice, but by a sentence to be read where seconds count', async () => {
    const quiet = await begun();
    await quiet.pass(120_000);
    for (const nth of [1, 2, 3]) quiet.session.level(noisy(nth));
    expect(quiet.said.at(-1)).toContain('Too noisy here for voice');
    expect(of(quiet, 'problem')).toEqual([]);
    expect(quiet.session.hearsOnlyStop).toBe(true);

    const stopped = await begun();
    await stopped.type('stop');
    await stopped.pass(120_000);
    const { length } = stopped.said;
    for (const nth of [1, 2, 3]) stopped.session.level(noisy(nth));
    expect(stopped.said).toHaveLength(length);
    expect(of(stopped, 'problem').map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining('Too noisy here for voice'),
    ]);
  });
});

describe('a part that fails', () => {
  it('of the voice is told, and the session goes on by what is shown', async () => {
    const base = await rig();
    const { clock, record, path } = base;
    const speech = new SpeechQueue(
      { synthesize: () => Promise.reject(new Error('No voice here.')) },
      new SilentSink((ms, signal) => clock.sleep(ms, signal)),
      () => clock.nowMs(),
    );
    const run = rigAround(new Session({ ...base.session.parts, speech }), clock, record, path);
    await run.session.begin();
    await run.pass(1000);
    expect(of(run, 'problem').length).toBeGreaterThan(0);
    expect(of(run, 'problem')[0]?.sentence).toContain('No voice here.');
    await run.type('card is right');
    expect(run.key()).toBe('job.makerFirst.asking');
  });

  it('of the record is told in its own words; that of its disk is told otherwise, for as long as it lasts', async () => {
    const told = async (error: unknown) => {
      const base = await rig();
      const record: RecordLog = new Proxy(base.record, {
        get(target, name) {
          if (name === 'append') return () => Promise.reject(error);
          const value: unknown = Reflect.get(target, name, target);
          return typeof value === 'function' ? value.bind(target) : value;
        },
      });
      const run = rigAround(new Session({ ...base.session.parts, record }), base.clock, record, base.path);
      run.session.keep('problem', { sentence: 'x' });
      await run.session.settled();
      return of(run, 'problem').map(({ sentence }) => sentence);
    };
    expect(await told(new RecordError('closed', 'It is closed.'))).toEqual(['It is closed.']);
    expect(await told(new RecordError('disk', 'No room.'))).toEqual([]);
    expect(await told(new Error('What?'))).toEqual(['Error: What?']);
  });
});

describe('what the tool says', () => {
  it('is spoken and recorded with a name of its own, and hazards once each', async () => {
    const base = await rig();
    const { clock, record, path } = base;
    const sink = new SilentSink((ms, signal) => clock.sleep(ms, signal));
    const speech = new SpeechQueue(speakingTime, sink, () => clock.nowMs());
    const enqueue = vi.spyOn(speech, 'enqueue');
    const clear = vi.spyOn(speech, 'clear');
    const run = rigAround(new Session({ ...base.session.parts, speech }), clock, record, path);
    await run.session.begin();
    expect(enqueue.mock.calls.map(([{ label, priority }]) => [label, priority])).toEqual([
      [expect.stringMatching(/^job\.card-/), 'prompt'],
      ['job.card-ask', 'prompt'],
    ]);
    // Time and what was not understood cut nothing short; an answer does.
    expect(clear).not.toHaveBeenCalled();
    await run.type('banana');
    expect(clear).not.toHaveBeenCalled();
    await run.type('card is right');
    expect(clear).toHaveBeenCalled();
  });
});
