import { describe, expect, it } from 'vitest';
import type { Grammar } from '../../../src/voice/ports.ts';
import { grammar, part, rig, scriptedDecoder } from './rig.ts';

const calling: Grammar = { ...grammar, calls: [{ id: 'smokeOrFire', wordings: ['fire'] }] };
const asking: Grammar = { ...calling, replies: [{ id: 'causeFire', wordings: ['fire'] }] };
const fire = { kind: 'stop', text: 'fire', calls: 'smokeOrFire' };
const called = (heard: readonly object[]) => heard.filter(each => 'calls' in each);

describe('a call for help', () => {
  it('is reported in the moment in which it is heard, over the voice of the tool too', async () => {
    for (const toolSpeaks of [false, true]) {
      const { ear, play, heard } = rig(scriptedDecoder().decoder);
      ear.listen(calling);
      ear.onlyStop(toolSpeaks);
      await play(part('quiet', 300), part('call', 30), part('quiet', 30));
      expect(heard()).toEqual([fire]);
    }
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
    await play(part('stop', 30), part('call', 30), part('quiet', 30));
    expect(heard().filter(({ kind }) => kind === 'stop')).toHaveLength(4);
    expect(called(heard())).toHaveLength(2);
  });

  it('is none where nothing is listened for so', async () => {
    const { play, heard } = rig(scriptedDecoder().decoder);
    await play(part('quiet', 300), part('call', 30), part('quiet', 30));
    expect(heard()).toEqual([]);
  });
});
