import { uniform } from '../../audio-fixtures/random.ts';
import { soundRateHz } from '../../src/engineering/engine-sound/streams.ts';
import { EngineSound } from '../../src/rehearsal/sound/engine-sound.ts';
import type { SpeakerSet } from '../hearing/material.ts';
import { through } from '../hearing/microphones.ts';
import { added, atPower } from '../hearing/mix.ts';
import { noiseOf, speechOf } from '../hearing/noises.ts';

export const besides = [
  'quiet',
  'talk',
  'tools',
  'babble',
  'radio',
  'fan',
  'compressor',
  'otherEngine',
] as const;
/** What sounds beside the engine. */
export type Beside = (typeof besides)[number];

const LOOP_S = 20;
const made = new Map<string, Float32Array>();

/** A piston compressor that never pauses: an engine in all but name, of another speed. */
function compressor(seed: number): Float32Array {
  const random = uniform(seed + 9);
  const sound = new EngineSound({ cylinders: 2, strokes: 2 }, seed + 500);
  const rpm = 900 + 300 * random();
  return sound.next({ rpm, firing: false, starter: false }, LOOP_S * soundRateHz);
}

/** Another engine at the far end of the shop. */
function otherEngine(seed: number): Float32Array {
  const random = uniform(seed + 19);
  const sound = new EngineSound({ cylinders: seed % 2 === 0 ? 4 : 6, strokes: 4 }, seed + 900);
  const rpm = 650 + 500 * random();
  return sound.next({ rpm, firing: true, starter: false }, LOOP_S * soundRateHz);
}

const equal = (...sounds: readonly Float32Array[]) => sounds.map(sound => atPower(sound, 0.01)).reduce(added);

function make(kind: Exclude<Beside, 'quiet'>, { voices, seed }: SpeakerSet): Float32Array {
  switch (kind) {
    case 'talk':
      return through('reverberant', speechOf(voices[seed % voices.length] ?? '', LOOP_S, seed));
    case 'tools':
      return equal(
        noiseOf('wrench', LOOP_S, seed, voices),
        speechOf(voices[(seed + 1) % voices.length] ?? '', LOOP_S, seed + 1),
      );
    case 'babble':
      return noiseOf('babble', LOOP_S, seed, voices);
    case 'radio':
      return noiseOf('radio', LOOP_S, seed, voices);
    case 'fan':
      return noiseOf('fan', LOOP_S, seed, voices);
    case 'compressor':
      return compressor(seed);
    case 'otherEngine':
      return otherEngine(seed);
  }
}

/** A loop of what sounds beside an engine, the same for the same set and seed. */
export function noiseBeside(kind: Exclude<Beside, 'quiet'>, set: SpeakerSet): Float32Array {
  const key = `${kind} ${set.seed}`;
  const loop = made.get(key) ?? make(kind, set);
  made.set(key, loop);
  return loop;
}
