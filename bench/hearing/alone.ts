import { concatenate } from '../../src/voice/concatenate.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { grammarAt, speakerSets, startReplies } from './material.ts';
import { added, levelled, noiseAtSnr } from './mix.ts';
import { noiseOf, throughRadio } from './noises.ts';
import { type Clip, soundOf } from './people/recordings.ts';
import { readBackGrammar } from './read-back.ts';
import type { Scene } from './scene.ts';

const pieceS = 10;
/** As loud as beside speech at 5 dB. */
export const aloneDb = 5;

/** States of the procedure by turns, each second time one that reads back. */
function sceneOf(noise: string, sound: Float32Array, grammarOf: (i: number) => Grammar): Scene {
  const length = pieceS * speechRateHz;
  const pieces = Math.floor(sound.length / length);
  return {
    voice: '',
    noise,
    snrDb: aloneDb,
    samples: noiseAtSnr(sound, aloneDb),
    utterances: Array.from({ length: pieces }, (_, i) => ({
      grammar: i % 2 === 0 ? readBackGrammar : grammarOf(i),
      says: `noise: ${noise}`,
      means: undefined,
      fromSample: i * length,
      toSample: (i + 1) * length,
      speechEndMs: 0,
    })),
  };
}

/** People in a babble. */
const together = 6;

/**
 * A radio and babble with nobody near, never the same twice.
 * @param seconds of each of made voices, three times; of people twice as long, or as long as there is talk
 */
export async function aloneScenes(
  clips: readonly Clip[],
  seconds: number,
): Promise<Readonly<Record<string, () => readonly Scene[]>>> {
  const replies = await startReplies();
  const grammarOf = (i: number) => grammarAt(replies, i * 5);
  const { voices, seed } = speakerSets.development;
  const made = (kind: 'radio' | 'babble') => () =>
    [0, 11, 22].map(more =>
      sceneOf(kind, noiseOf(kind, seconds, seed + more, voices), i => grammarOf(i + more)),
    );
  const sentences = clips.filter(
    ({ kind, text, lengthSamples }) =>
      kind === 'talk' || (kind === 'speech' && text.split(' ').length >= 4 && lengthSamples > speechRateHz),
  );
  const ofPeople = (kind: string, make: (talk: readonly Float32Array[]) => Float32Array) => () => {
    const talk = sentences.map(clip => levelled(soundOf(clip)));
    const sound = talk.length === 0 ? new Float32Array(0) : make(talk);
    return [sceneOf(kind, sound.subarray(0, 2 * seconds * speechRateHz), grammarOf)];
  };
  return {
    'radio alone': made('radio'),
    'babble alone': made('babble'),
    'radio of people alone': ofPeople('radio', talk => throughRadio(concatenate(talk))),
    'babble of people alone': ofPeople('babble', talk => {
      // Several people at once, each with what every sixth clip holds.
      const people = Array.from({ length: together }, (_, k) =>
        concatenate(talk.filter((_, i) => i % together === k)),
      );
      const least = Math.min(...people.map(({ length }) => length));
      return people.map(each => each.subarray(0, least)).reduce(added);
    }),
  };
}
