import { describe, expect, it } from 'vitest';
import { offerOf } from '../../../machines/moment.ts';
import { readLog } from '../../../src/record/index.ts';
import { joinVoices } from '../../../src/session/who-speaks/join-voices.ts';
import type { VoiceHeard } from '../../../src/voice/ports.ts';
import { enoughUtterances } from '../../../src/voice/who-speaks/known-voices.ts';
import { goodReply, type Rig, rig } from '../../helpers/session-rig.ts';

const voices = {
  technician: Float32Array.of(1, 0, 0),
  second: Float32Array.of(0, 1, 0),
  neither: Float32Array.of(0, 0, 1),
};
type Whose = keyof typeof voices;

/** A session at one microphone, to which each line is said in somebody's voice. */
async function shared(practice = false) {
  const run = await rig('demo-six', 'us', undefined, 'en', 'voice');
  const link = joinVoices(run.session, practice);
  await run.session.begin();
  await run.pass(60_000);
  const asked = (): Whose => (offerOf(run.session.moment).by === 'second' ? 'second' : 'technician');
  async function say(text: string, whose: Whose = asked(), microphone?: string): Promise<void> {
    const hear = (heard: VoiceHeard) => link.hears(heard, microphone);
    const stops = run.session.parts.language.stopWordings.includes(text);
    // A stop is heard before the utterance that it is in has ended.
    if (!stops) hear({ voice: voices[whose], stopped: false });
    await run.type(text);
    if (stops) hear({ voice: voices[whose], stopped: true });
    await run.pass(60_000);
  }
  async function until(key: string): Promise<void> {
    for (let turn = 0; run.key() !== key; turn++) {
      if (turn > 400) throw new Error(`never at ${key}, but at ${run.key()}`);
      const reply = goodReply(run);
      if (reply === null) await run.pass(1000);
      else await say(reply);
    }
  }
  return { run, say, until };
}

const eventsOf = async (run: Rig) => {
  const { entries } = await readLog(run.path);
  return entries.filter(({ kind }) => kind === 'event').map(({ data }) => data as Record<string, unknown>);
};
const CLEAR = 'noFuelCrank.untilPressure.askingClear';

describe('two people at one microphone', () => {
  it('are learned from the emergency word and what they are asked, and the record says that nothing is kept', async () => {
    const { run, until } = await shared();
    await until(CLEAR);
    const { entries } = await readLog(run.path);
    const learned = entries.filter(({ kind }) => kind === 'voiceLearned').map(({ data }) => data);
    expect(learned).toEqual([
      { by: 'technician', utterances: enoughUtterances, kept: false },
      { by: 'second', utterances: enoughUtterances, kept: false },
    ]);
    const drilled = await eventsOf(run);
    expect(drilled.at(-1)).toMatchObject({ voice: { of: expect.any(String) } });
  });

  it('do not answer for one another: "clear" in the technician\'s voice is refused, and asked for by name', async () => {
    const { run, say, until } = await shared();
    await until(CLEAR);
    const clear = goodReply(run) ?? '';
    await say(clear, 'technician');
    expect(run.key()).toBe(CLEAR);
    expect(run.said.at(-1)).toMatch(/Second person: say it yourself/);
    await say(clear, 'second');
    expect(run.key()).not.toBe(CLEAR);
  });

  it('are heard each for themselves: what was refused is no part of what the second person then says', async () => {
    const { run, say, until } = await shared();
    await until(CLEAR);
    for (const whose of ['technician', 'technician', 'technician', 'second'] as const)
      await say(goodReply(run) ?? '', whose);
    const answers = (await eventsOf(run)).filter(({ id }) => id === 'clearToCrank');
    expect(answers.map(({ voice }) => voice)).toEqual([
      ...Array.from({ length: 3 }, () => expect.objectContaining({ of: 'technician' })),
      expect.objectContaining({ of: 'second' }),
    ]);
    expect(run.key()).not.toBe(CLEAR);
  });

  it('may be one person in both parts at an engine to practise on', async () => {
    const { run, say, until } = await shared(true);
    await until(CLEAR);
    await say(goodReply(run) ?? '', 'technician');
    expect(run.key()).not.toBe(CLEAR);
  });

  it('may each stop it, in whatever voice', async () => {
    const { run, say, until } = await shared();
    await until(CLEAR);
    await say(run.session.parts.language.stopWordings[0] ?? '', 'technician');
    expect(run.key()).toMatch(/^stopped/);
  });

  it('are not told apart by keys, nor where a voice came long before', async () => {
    const { run, until } = await shared();
    await until(CLEAR);
    const clear = goodReply(run) ?? '';
    await run.type(clear);
    expect(run.key()).not.toBe(CLEAR);
    const last = (await eventsOf(run)).at(-1);
    expect(last).not.toHaveProperty('voice');
  });
});
