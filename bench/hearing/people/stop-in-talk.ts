import { concatenate } from '../../../src/voice/concatenate.ts';
import { speechRateHz } from '../../../src/voice/resample.ts';
import { levelled } from '../mix.ts';
import type { Spoken } from '../scene.ts';
import { wordIn } from './clip-scenes.ts';
import { type Clip, soundOf } from './recordings.ts';

const ms = (count: number) => Math.round((count * speechRateHz) / 1000);
const gap = new Float32Array(ms(60));
/** An "s" begins faintly, and a "p" ends so: below what tells where a word lies. */
const [faintStart, faintEnd] = [ms(120), ms(80)];
/** Of the talk before the stop and after it. */
const longestTalk = ms(2_000);

/** Where the talk is quietest around a place: between words, as far as level tells. */
function pauseNear(talk: Float32Array, place: number): number {
  const frame = ms(40);
  let [best, least] = [place, Number.POSITIVE_INFINITY];
  for (
    let at = Math.max(0, place - ms(300));
    at + frame <= Math.min(talk.length, place + ms(300));
    at += ms(10)
  ) {
    const power = talk.subarray(at, at + frame).reduce((sum, sample) => sum + sample * sample, 0);
    if (power < least) [best, least] = [at + frame / 2, power];
  }
  return best;
}

/** A stop cut into the middle of other talk, hardly a breath around it. */
export function stopInTalk(stop: Clip, other: Clip, grammar: Spoken['saying']['grammar']): Spoken {
  const sound = levelled(soundOf(stop));
  const word = wordIn(sound);
  const talk = levelled(soundOf(other));
  const cut = pauseNear(talk, Math.floor(talk.length / 2));
  const before = talk.subarray(Math.max(0, cut - longestTalk), cut);
  const pieces = [
    new Float32Array(ms(200)),
    before,
    gap,
    sound.subarray(Math.max(0, word.from - faintStart), word.to + faintEnd),
    gap,
    talk.subarray(cut, cut + longestTalk),
    new Float32Array(ms(300)),
  ];
  const stopEnd = pieces.slice(0, 4).reduce((sum, { length }) => sum + length, 0) - faintEnd;
  return {
    saying: { grammar, says: stop.text, means: { kind: 'stop' }, speaker: stop.speaker },
    speech: concatenate(pieces),
    speechEndMs: (stopEnd / speechRateHz) * 1000,
  };
}
