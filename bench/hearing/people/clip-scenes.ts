import { concatenate } from '../../../src/voice/concatenate.ts';
import { type Meaning, matcherOf } from '../../../src/voice/meaning.ts';
import type { Grammar } from '../../../src/voice/ports.ts';
import { speechRateHz } from '../../../src/voice/resample.ts';
import type { Level } from '../accuracy.ts';
import { levelled } from '../mix.ts';
import { type Saying, type Scene, type Spoken, sceneOfSpoken } from '../scene.ts';
import { type Clip, soundOf } from './recordings.ts';

/** A clip in a state that waits for a reply. */
export interface SaidClip {
  readonly clip: Clip;
  readonly grammar: Grammar;
  readonly means: Meaning | undefined;
}

const ms = (count: number) => Math.round((count * speechRateHz) / 1000);

/** A clip is cut off hard, often in the breath of its room: no click where it begins and ends. */
function faded(sound: Float32Array): Float32Array {
  const length = Math.min(ms(10), sound.length >> 1);
  return sound.map((sample, i) => sample * Math.min(1, (i + 1) / length, (sound.length - i) / length));
}

const frame = ms(10);
/** Frames this far under the loudest 10 ms are not the word that a clip is of, but its room. */
const wordDb = 26;

/** From the first sample of the word that a clip is of to its last, by its level. */
export function wordIn(sound: Float32Array): { readonly from: number; readonly to: number } {
  const powers = Array.from({ length: Math.floor(sound.length / frame) }, (_, i) =>
    sound.subarray(i * frame, (i + 1) * frame).reduce((sum, sample) => sum + sample * sample, 0),
  );
  const least = Math.max(0, ...powers) / 10 ** (wordDb / 10);
  const first = powers.findIndex(power => power >= least);
  const last = powers.findLastIndex(power => power >= least);
  return first < 0 ? { from: 0, to: sound.length } : { from: first * frame, to: (last + 1) * frame };
}

/** Silence around a clip, so that a reply has time to be reported before the next one begins. */
const before = new Float32Array(ms(200));
const after = new Float32Array(ms(300));
/** Figures that may go on are waited for. */
const afterFigures = new Float32Array(ms(1_500));

export function spokenClip({ clip, grammar, means }: SaidClip): Spoken {
  const sound = faded(levelled(soundOf(clip)));
  const saying: Saying = { grammar, says: clip.text, means, speaker: clip.speaker || clip.source };
  const endMs = ((before.length + wordIn(sound).to) / speechRateHz) * 1000;
  const waited = means?.kind === 'number' && clip.text.includes(' ') ? afterFigures : after;
  return { saying, speech: concatenate([before, sound, waited]), speechEndMs: endMs };
}

const mostOfScene = 24;

/** Clips in scenes of so many at most, those of one speaker together, each scene in another recorded noise. */
export function clipScenes(
  spoken: readonly Spoken[],
  level: Level,
  noises: readonly RecordedNoise[],
  most = mostOfScene,
): readonly Scene[] {
  const bySpeaker = [...spoken].sort((a, b) =>
    (a.saying.speaker ?? '') < (b.saying.speaker ?? '') ? -1 : 1,
  );
  const count = Math.ceil(bySpeaker.length / most);
  return Array.from({ length: count }, (_, i) => {
    const part = bySpeaker.slice(
      Math.floor((i * bySpeaker.length) / count),
      Math.floor(((i + 1) * bySpeaker.length) / count),
    );
    const noise = noises[i % noises.length];
    const inNoise = level === 'clean' || noise === undefined ? {} : { noise: { ...noise, snrDb: level } };
    return sceneOfSpoken(part, { voice: 'people', microphone: 'good', ...inNoise });
  });
}

/** A loop of a recorded noise. */
export interface RecordedNoise {
  readonly kind: string;
  readonly loop: Float32Array;
}

const machine =
  /engine|chainsaw|helicopter|compressor|truck|train|sawmill|plane|jet take|jackhammer|bus|boat/;
const leastNoiseS = 1.9;

/** Recorded machines, one loop for each recording that is long enough to go round. */
export const machineLoops = (clips: readonly Clip[]): readonly RecordedNoise[] =>
  clips
    .filter(({ kind, text }) => kind === 'noise' && machine.test(text))
    .filter(({ lengthSamples }) => lengthSamples >= leastNoiseS * speechRateHz)
    .map(clip => ({ kind: clip.text, loop: goingRound(soundOf(clip)) }));

/** Its end goes over into its beginning. */
function goingRound(sound: Float32Array): Float32Array {
  const overlap = ms(80);
  const loop = sound.slice(0, sound.length - overlap);
  for (let i = 0; i < overlap; i++) {
    const share = i / overlap;
    loop[i] = share * (sound[i] ?? 0) + (1 - share) * (sound[loop.length + i] ?? 0);
  }
  return loop;
}

/** A clip in a grammar that takes its words; undefined where the grammar does not. */
export function saidTo(clip: Clip, grammar: Grammar): SaidClip | undefined {
  const means = matcherOf(grammar).meaningOf(clip.text);
  return means === undefined ? undefined : { clip, grammar, means };
}
