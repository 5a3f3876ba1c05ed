import { synthesize } from '../../audio-fixtures/synthesize.ts';
import { concatenate } from '../../src/voice/concatenate.ts';
import type { Meaning } from '../../src/voice/meaning.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { speechEndMs } from '../voice-measure.ts';
import { type MicrophoneKind, through } from './microphones.ts';
import { added, levelled, noiseAtSnr } from './mix.ts';

/** What is said to one grammar, and what it means; undefined when it answers nothing. */
export interface Saying {
  readonly grammar: Grammar;
  readonly says: string;
  readonly means: Meaning | undefined;
  /** Who says it, where several people say the utterances of a scene. */
  readonly speaker?: string;
}

/** What is said with its sound: levelled speech, with silence around. */
export interface Spoken {
  readonly saying: Saying;
  readonly speech: Float32Array;
  /** Within its sound. */
  readonly speechEndMs: number;
}

/** One utterance within a scene, from the first sample of its padding to the last. */
export interface Placed extends Saying {
  readonly fromSample: number;
  readonly toSample: number;
  readonly speechEndMs: number;
}

/** A stretch of sound as a microphone delivers it: utterances one after the other, in one noise. */
export interface Scene {
  readonly voice: string;
  /** Its kind, 'none' in a quiet room. */
  readonly noise: string;
  readonly snrDb: number;
  readonly samples: Float32Array;
  readonly utterances: readonly Placed[];
}

/** Noise alone first: a microphone is open long before anybody answers, and an ear learns what the noise is. */
const leadS = 3.5;
const gapS = 0.4;

export interface SceneOptions {
  readonly voice: string;
  readonly microphone: MicrophoneKind;
  /** A loop of noise of a kind, at any level; none for a quiet room. */
  readonly noise?: { readonly kind: string; readonly loop: Float32Array; readonly snrDb: number };
}

/** Puts utterances of a made voice one after the other into one noise. */
export function sceneOf(sayings: readonly Saying[], options: SceneOptions): Scene {
  const spoken = sayings.map((saying): Spoken => {
    const sound = synthesize(options.voice, saying.says);
    return { saying, speech: levelled(sound.samples), speechEndMs: speechEndMs(sound) };
  });
  return sceneOfSpoken(spoken, options);
}

/** Puts utterances one after the other into one noise, as `sceneOf`, whoever spoke them. */
export function sceneOfSpoken(spoken: readonly Spoken[], { voice, microphone, noise }: SceneOptions): Scene {
  const pieces: Float32Array[] = [new Float32Array(leadS * speechRateHz)];
  const utterances: Placed[] = [];
  let at = pieces[0]?.length ?? 0;
  for (const { saying, speech, speechEndMs } of spoken) {
    const end = at + speech.length + gapS * speechRateHz;
    const endMs = (at / speechRateHz) * 1000 + speechEndMs;
    utterances.push({ ...saying, fromSample: at, toSample: end, speechEndMs: endMs });
    pieces.push(speech, new Float32Array(gapS * speechRateHz));
    at = end;
  }
  const speech = concatenate(pieces);
  const mixed = noise === undefined ? speech : added(speech, looped(noise, speech.length));
  return {
    voice,
    noise: noise?.kind ?? 'none',
    snrDb: noise?.snrDb ?? Number.POSITIVE_INFINITY,
    samples: through(microphone, mixed),
    utterances,
  };
}

function looped(
  { loop, snrDb }: { readonly loop: Float32Array; readonly snrDb: number },
  length: number,
): Float32Array {
  const levelledNoise = noiseAtSnr(loop, snrDb);
  return Float32Array.from({ length }, (_, i) => levelledNoise[i % loop.length] ?? 0);
}
