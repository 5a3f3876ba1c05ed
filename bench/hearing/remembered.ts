import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  createNetworkDecoder,
  type NetworkDecoderOptions,
} from '../../src/voice/decoders/network/decoder.ts';
import { createEar } from '../../src/voice/ear/ear.ts';
import { createHearingNetwork } from '../../src/voice/ear/hearing-network.ts';
import type { HearingNetwork, Moment } from '../../src/voice/ear/moment.ts';
import { createNearSpeech, type NearSpeechSettings } from '../../src/voice/ear/near-speech.ts';
import { stepLength } from '../../src/voice/ear/sound.ts';
import { createStopSpotter, type SpotterSettings } from '../../src/voice/ear/stop-spotter.ts';
import { createPlainFrontEnd } from '../../src/voice/front-end.ts';
import { pronounceEnglish } from '../../src/voice/languages/pronunciations/english.ts';
import { momentMs, phonesLateMoments } from '../../src/voice/phone-network/network.ts';
import { phonesOf } from '../../src/voice/phone-network/phones.ts';
import { readWeights, type Weights } from '../../src/voice/phone-network/weights.ts';
import type { SoundRecognizer } from '../../src/voice/ports.ts';

/** What the network made of a sound, for each step of it: an ear can be tried many times on it. */
export type Remembered = readonly (readonly Moment[])[];

const outputs = phonesOf.en.length + 1;
const momentFloats = 2 * outputs + 1;
const cache = fileURLToPath(new URL('../../.cache/moments/', import.meta.url));
const model = new URL('../../src/voice/phone-network/model/english.bin', import.meta.url);

const bytes = readFileSync(model);
const modelKey = createHash('sha256').update(bytes).digest('hex');
let weights: Weights | undefined;

/** Listens to a sound with the packaged network, or remembers how it did. */
export function remember(samples: Float32Array): Remembered {
  const key = createHash('sha256').update(modelKey).update(samples).digest('hex').slice(0, 32);
  const file = join(cache, `${key}.f32`);
  if (existsSync(file)) return unpacked(readFileSync(file));
  weights ??= readWeights(bytes);
  const network = createHearingNetwork(weights);
  const made: (readonly Moment[])[] = [];
  for (let at = 0; at + stepLength <= samples.length; at += stepLength) {
    made.push(network.next(samples.subarray(at, at + stepLength)));
  }
  mkdirSync(cache, { recursive: true });
  writeFileSync(`${file}.${process.pid}`, packed(made));
  renameSync(`${file}.${process.pid}`, file);
  return made;
}

/** Of each step how many moments it has, then of each moment its numbers. */
function packed(remembered: Remembered): Float32Array {
  return Float32Array.from(
    remembered.flatMap(moments => [
      moments.length,
      ...moments.flatMap(({ phones, early, near }) => [...phones, ...early, near]),
    ]),
  );
}

function unpacked(file: Buffer): Remembered {
  const all = new Float32Array(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength));
  const steps: Moment[][] = [];
  for (let at = 0; at < all.length; ) {
    const count = all[at++] ?? 0;
    steps.push(
      Array.from({ length: count }, (_, i): Moment => {
        const from = at + i * momentFloats;
        return {
          phones: all.subarray(from, from + outputs),
          early: all.subarray(from + outputs, from + 2 * outputs),
          near: all[from + 2 * outputs] ?? 0,
        };
      }),
    );
    at += count * momentFloats;
  }
  return steps;
}

/** A network that says again what it said. */
function networkSaying(remembered: Remembered): HearingNetwork {
  let step = 0;
  return { momentMs, phonesLateMoments, next: () => remembered[step++] ?? [] };
}

export interface TrialSettings {
  readonly near?: NearSpeechSettings;
  readonly spotter?: SpotterSettings;
  readonly onDecision?: NetworkDecoderOptions['onDecision'];
}

/** The product's ear for one sound that the network has listened to already, with settings to be tried. */
export function earRemembering(
  remembered: Remembered,
  { near, spotter, onDecision }: TrialSettings,
): SoundRecognizer {
  const pronounce = pronounceEnglish;
  return createEar({
    frontEnd: createPlainFrontEnd(),
    decoder: createNetworkDecoder({
      pronounce,
      phonesLateMoments,
      ...(onDecision === undefined ? {} : { onDecision }),
    }),
    speech: createNearSpeech(near),
    stops: { network: networkSaying(remembered), spotter: createStopSpotter(pronounce, spotter) },
  });
}
