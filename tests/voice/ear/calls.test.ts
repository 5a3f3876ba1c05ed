import { describe, expect, it } from 'vitest';
import { concatenate } from '../../../src/voice/concatenate.ts';
import type { Grammar } from '../../../src/voice/ports.ts';
import { grammar, part, rig, scriptedDecoder } from './rig.ts';

const calling: Grammar = {
  ...grammar,
  calls: [
    { id: 'smokeOrFire', wordings: ['fire'] },
    { id: 'someoneHurt', wordings: ['someone is hurt'] },
  ],
};
const asking: Grammar = { ...calling, replies: [{ id: 'causeFire', wordings: ['fire'] }] };
const fire = { kind: 'stop', text: 'fire', calls: 'smokeOrFire' };
const hurt = { kind: 'stop', text: 'someone is hurt', calls: 'someoneHurt' };
const unsure = { kind: 'unclear', text: '', reason: 'outOfGrammar' } as const;
/** A call with talk before and behind it, and then nothing. */
const withinTalk = [
  part('quiet', 300),
  part('near', 300),
  part('call', 30),
  part('near', 300),
  part('quiet', 2_000),
];
const called = (heard: readonly object[]) => heard.filter(each => 'calls' in each);

describe('a call for help', () => {
  it('is reported in the moment in which it is heard over the voice of the tool', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    ear.listen(calling);
    ear.onlyStop(true);
    await play(part('quiet', 300), part('call', 30), part('quiet', 30));
    expect(heard()).toEqual([fire]);
  });

  it('is reported a moment later where nobody answers', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    ear.listen(calling);
    await play(part('quiet', 300), part('call', 30), part('quiet', 150));
    expect(heard()).toEqual([fire]);
  });

  it('is none within an answer of which the decoder is sure: "card is right" has its sounds', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    ear.listen(calling);
    await play(...withinTalk);
    expect(called(heard())).toEqual([]);
    expect(heard()).toMatchObject([{ kind: 'reply', id: 'yes' }]);
  });

  it('is one within talk that is no answer, at the end of it or after a second and a half', async () => {
    const { ear, play, heard } = rig(scriptedDecoder({ verdict: () => unsure }).decoder);
    ear.listen(calling);
    await play(...withinTalk);
    expect(heard()).toEqual([fire]);
    await play(part('near', 300), part('call', 30), part('near', 1_560));
    expect(heard()).toEqual([fire, fire]);
  });

  it('is held where it answers what is asked too: the answer where the decoder is sure of one, else the call', async () => {
    for (const [verdict, expected] of [
      [
        { kind: 'taken', text: 'fire', certainty: 0.9 },
        { kind: 'reply', id: 'causeFire' },
      ],
      [unsure, fire],
    ] as const) {
      const { ear, play, heard } = rig(scriptedDecoder({ verdict: () => verdict }).decoder);
      ear.listen(asking);
      await play(...withinTalk);
      expect(heard()).toMatchObject([expected]);
    }
  });

  it('is one while the tool speaks and where nobody answers, whatever answers what is asked', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    ear.listen(asking);
    await play(part('quiet', 300), part('call', 30), part('quiet', 1_000));
    expect(heard()).toEqual([fire]);
    ear.onlyStop(true);
    await play(part('call', 30), part('quiet', 30));
    expect(heard()).toEqual([fire, fire]);
  });

  it('is reported when the tool begins to speak, before which it was heard', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    ear.listen(calling);
    await play(part('quiet', 300), part('near', 300), part('call', 30), part('quiet', 30));
    expect(heard()).toEqual([]);
    ear.onlyStop(true);
    expect(heard()).toEqual([fire]);
  });

  it('comes of each cause that is called: "Fire! Someone is hurt!"', async () => {
    const both = [part('call', 30), part('near', 150), part('hurt', 30), part('near', 150), part('call', 30)];
    const { ear, play, heard } = rig(scriptedDecoder({ verdict: () => unsure }).decoder);
    ear.listen(calling);
    await play(part('quiet', 300), part('near', 300), ...both, part('quiet', 1_500));
    expect(heard()).toEqual([fire, hurt]);
    ear.onlyStop(true);
    await play(...both, part('quiet', 60));
    expect(heard()).toEqual([fire, hurt, fire, hurt]);
  });

  it('outlasts an answer that was over before it, though both come in one block', async () => {
    const { ear, play, heard } = rig(scriptedDecoder({ outlook: () => 'complete' }).decoder);
    ear.listen(calling);
    const answer = [part('quiet', 300), part('near', 300), part('quiet', 300)];
    const samples = concatenate([...answer, part('call', 30), part('quiet', 30)]);
    await ear.hear({ samples, sampleRateHz: 16_000 });
    await play(part('quiet', 150));
    expect(heard()).toMatchObject([{ kind: 'reply', id: 'yes' }, fire]);
  });

  it.each([
    ['hangs', () => new Promise(() => {})],
    ['breaks down', () => Promise.reject(new Error('broken'))],
  ])('waits no longer than a second and a half of sound for a decoder that %s', async (_, wait) => {
    const { ear, heard } = rig(scriptedDecoder({ wait }).decoder);
    ear.listen(calling);
    const hear = async (...pieces: readonly Float32Array[]) => {
      for (const samples of pieces) void ear.hear({ samples, sampleRateHz: 16_000 }).catch(() => {});
      await new Promise(setImmediate);
    };
    await hear(
      part('quiet', 300),
      part('near', 300),
      part('call', 30),
      part('near', 1_470),
      part('quiet', 30),
    );
    expect(heard()).toEqual([]);
    await hear(part('quiet', 30), part('quiet', 30));
    expect(heard()).toEqual([fire]);
  });

  it('swallows no stop that the decoder hears after it', async () => {
    const { ear, play, heard } = rig(scriptedDecoder({ stop: () => 'stop' }).decoder);
    ear.listen(calling);
    ear.onlyStop(true);
    await play(part('quiet', 600), part('call', 30), part('near', 300));
    expect(heard()).toEqual([fire, { kind: 'stop', text: 'stop' }]);
  });

  it('leaves a stop alone that is shouted right before it or after it', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    ear.listen(calling);
    await play(part('quiet', 300), part('call', 30), part('stop', 30), part('quiet', 1_500));
    await play(part('stop', 30), part('call', 30), part('quiet', 150));
    expect(heard().filter(({ kind }) => kind === 'stop')).toHaveLength(4);
    expect(called(heard())).toHaveLength(2);
  });

  it('is none where nothing is listened for so', async () => {
    const { play, heard } = rig(scriptedDecoder().decoder);
    await play(part('quiet', 300), part('call', 30), part('quiet', 30));
    expect(heard()).toEqual([]);
  });
});
