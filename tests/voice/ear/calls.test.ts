import { describe, expect, it } from 'vitest';
import type { Grammar } from '../../../src/voice/ports.ts';
import { grammar, part, rig, scriptedDecoder } from './rig.ts';

const calling: Grammar = { ...grammar, calls: [{ id: 'smokeOrFire', wordings: ['fire'] }] };
const asking: Grammar = { ...calling, replies: [{ id: 'causeFire', wordings: ['fire'] }] };
const fire = { kind: 'stop', text: 'fire', calls: 'smokeOrFire' };
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
    const verdict = () => ({ kind: 'unclear', text: '', reason: 'outOfGrammar' }) as const;
    const { ear, play, heard } = rig(scriptedDecoder({ verdict }).decoder);
    ear.listen(calling);
    await play(...withinTalk);
    expect(heard()).toEqual([fire]);
    await play(part('near', 300), part('call', 30), part('near', 1_530));
    expect(heard()).toEqual([fire, fire]);
  });

  it('is the decoder’s business where it answers what is asked, but while the tool speaks', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    ear.listen(asking);
    await play(part('quiet', 300), part('call', 30), part('quiet', 300));
    expect(called(heard())).toEqual([]);
    ear.onlyStop(true);
    await play(part('quiet', 300), part('call', 30), part('quiet', 30));
    expect(called(heard())).toEqual([fire]);
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
