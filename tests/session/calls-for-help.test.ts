import { describe, expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { readLog } from '../../src/record/index.ts';
import { callsFor, callsIn } from '../../src/session/calls-for-help.ts';
import type { Heard } from '../../src/voice/ports.ts';
import { createTypedRecognizer } from '../../src/voice/recognizers/typed.ts';
import { type Rig, rig } from '../helpers/session-rig.ts';

const { en, fr, es } = languages;

const atWork = async (): Promise<Rig> => {
  const run = await rig('demo-six', 'us', undefined, 'en', 'voice');
  await run.session.begin();
  return run;
};
const calledOut = ({ happenings }: Rig) =>
  happenings.flatMap(each => (each.kind === 'said' && each.hazard ? [each.shown] : []));
const entriesOf = async (run: Rig, kind: string) => {
  await run.session.settled();
  return (await readLog(run.path)).entries.filter(entry => entry.kind === kind).map(({ data }) => data);
};
const fire: Heard = { kind: 'stop', text: 'fire', calls: 'smokeOrFire' };

describe('fire and injury that are called out', () => {
  it.each([
    ['fire', 'smokeOrFire', 'call the fire service'],
    ['someone is hurt', 'someoneHurt', 'Call the emergency number'],
  ])(
    '"%s" over the voice of the tool, amid its work, stops for %s and calls for help',
    async (text, cause, help) => {
      const run = await atWork();
      expect(run.session.speaking).toBe(true);
      await run.type(text);
      expect(run.key()).toBe('stopped.makingSafe');
      expect((await entriesOf(run, 'event')).at(-1)).toMatchObject({ type: 'stop', cause, via: 'voice' });
      expect(calledOut(run).some(each => each.includes(help))).toBe(true);
    },
  );

  it('are taken at the question for the cause of another stop, and no second time', async () => {
    const run = await atWork();
    for (const text of ['stop', 'all is off', 'correct']) {
      await run.pass(20_000);
      await run.type(text);
    }
    expect(run.key()).toBe('stopped.askingCause');
    run.session.hear(fire, 'voice');
    expect(run.key()).toBe('stopped.makingSafe');
    const events = (await entriesOf(run, 'event')).length;
    await run.pass(20_000);
    run.session.hear(fire, 'voice');
    expect(await entriesOf(run, 'event')).toHaveLength(events);
  });

  it('are not taken from the tool itself, while it says so and a moment longer, and stand on the record', async () => {
    const run = await atWork();
    await run.pass(60_000);
    const before = run.key();
    run.session.callOut('fireCall');
    await run.pass(100);
    expect(run.session.speaking).toBe(true);
    run.session.hear(fire, 'voice');
    while (run.session.speaking) await run.pass(100);
    await run.pass(1_000);
    run.session.hear(fire, 'voice');
    expect(run.key()).toBe(before);
    expect((await entriesOf(run, 'heard')).slice(-2)).toMatchObject([
      { text: 'fire', reason: 'toolSpoke' },
      { text: 'fire', reason: 'toolSpoke' },
    ]);
    await run.pass(600);
    run.session.hear(fire, 'voice');
    expect(run.key()).toBe('stopped.makingSafe');
  });

  it('are taken from an ear that held them until the tool says so itself: they were called before', async () => {
    const run = await atWork();
    await run.pass(60_000);
    const ear = createTypedRecognizer();
    let held: Heard | undefined = fire;
    let hear: (heard: Heard) => void = () => {};
    run.session.attach(
      {
        ...ear,
        onHeard(handler) {
          hear = handler;
        },
        onlyStop(active) {
          const called = held;
          if (!active || called === undefined) return;
          held = undefined;
          hear(called);
        },
      },
      'voice',
    );
    run.session.callOut('fireCall');
    await run.pass(100);
    expect(run.key()).toBe('stopped.makingSafe');
  });

  it('counts by keys whatever the tool says', async () => {
    const run = await rig();
    await run.session.begin();
    run.session.callOut('fireCall');
    await run.pass(100);
    await run.type('fire');
    expect(run.key()).toBe('stopped.makingSafe');
  });
});

describe('what calls for help', () => {
  it('sounds in a sentence with its words, or with words that begin as they do', () => {
    expect(callsIn('smokeOrFire', 'Phase: first fire.', en)).toBe(true);
    expect(callsIn('smokeOrFire', 'Has it fired?', en)).toBe(true);
    expect(callsIn('someoneHurt', 'Stop: someone is hurt!', en)).toBe(true);
    expect(callsIn('someoneHurt', 'Ask someone.', en)).toBe(false);
    expect(callsIn('smokeOrFire', 'Oil pressure?', en)).toBe(false);
    expect(callsIn('smokeOrFire', "Extincteur d'incendie ?", fr)).toBe(true);
  });

  it('sounds as it is where all its words are short, and in no sentence for that', () => {
    const short = { ...fr, replies: { ...fr.replies, causeSmokeOrFire: ['au feu'] } };
    expect(callsIn('smokeOrFire', 'Au feu !', short)).toBe(true);
    expect(callsIn('smokeOrFire', 'Y a-t-il un feu ?', short)).toBe(false);
    expect(callsFor([{ id: 'lit', wordings: ['le feu'] }], short)[0]).toEqual({
      id: 'smokeOrFire',
      wordings: ['au feu'],
    });
    expect(callsFor([{ id: 'on', wordings: ['mis au feu'] }], short)[0]?.wordings).toEqual([]);
    for (const cause of ['smokeOrFire', 'someoneHurt'] as const)
      expect(callsIn(cause, 'Is it on?', en)).toBe(false);
  });

  it('is not listened for where it sounds in another reply, but for its longer wordings', () => {
    const wordings = (replies: Parameters<typeof callsFor>[0]) =>
      callsFor(replies, en).find(({ id }) => id === 'smokeOrFire')?.wordings;
    expect(wordings([])).toEqual(en.replies.causeSmokeOrFire);
    expect(wordings([{ id: 'fired', wordings: ['fired'] }])).toEqual(['smoke or fire', 'smoke']);
    expect(wordings([{ id: 'good', wordings: ['sound and smoke good'] }])).toEqual(['smoke or fire', 'fire']);
    expect(wordings([{ id: 'causeSmokeOrFire', wordings: ['smoke', 'fire'] }])).toEqual(
      en.replies.causeSmokeOrFire,
    );
  });

  it('may be called in every language', () => {
    for (const language of [en, fr, es])
      for (const { wordings } of callsFor([], language)) expect(wordings.length).toBeGreaterThan(0);
  });
});
