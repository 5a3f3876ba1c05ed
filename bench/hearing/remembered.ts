import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  createNetworkDecoder,
  type NetworkDecoderOptions,
} from '../../src/voice/decoders/network/decoder.ts';
import { createCallSpotter } from '../../src/voice/ear/call-spotter.ts';
import { createEar } from '../../src/voice/ear/ear.ts';
import { createHearingNetwork } from '../../src/voice/ear/hearing-network.ts';
import type { HearingNetwork, Moment } from '../../src/voice/ear/moment.ts';
import { createNearSpeech, type NearSpeechSettings } from '../../src/voice/ear/near-speech.ts';
import { stepLength } from '../../src/voice/ear/sound.ts';
import { createStopSpotter, type SpotterSettings } from '../../src/voice/ear/stop-spotter.ts';
import { createPlainFrontEnd } from '../../src/voice/front-end.ts';
import { pronounceEnglish } from '../../src/voice/languages/pronunciations/english.ts';
import { momentMs, phonesLateMomentsOf } from '../../src/voice/phone-network/network.ts';
import { phonesOf } from '../../src/voice/phone-network/phones.ts';
import { readWeights, type Weights } from '../../src/voice/phone-network/weights.ts';
import type { SoundRecognizer } from '../../src/voice/ports.ts';
import { type Listener, processCpuMs } from './listener.ts';

/** What the network made of a sound, for each step of it: an ear can be tried many times on it. */
export type Remembered = readonly (readonly Moment[])[];

const outputs = phonesOf.en.length + 1;
const momentFloats = 2 * outputs + 1;
const cache = fileURLToPath(new URL('../../.cache/moments/', import.meta.url));
const networkFolder = new URL('../../src/voice/phone-network/', import.meta.url);

/** What is made of its outputs, and not by it. */
const afterTheNetwork = /^(search|traces|phone-graph|word-graph)\.ts$/;

/** All that decides what the network makes of a sound: its weights, and how they are reckoned with. */
const networkKey = (() => {
  const hash = createHash('sha256');
  for (const folder of ['', 'kernel/', 'model/']) {
    const files = readdirSync(new URL(folder, networkFolder)).filter(
      name => /\.(ts|wat|bin)$/.test(name) && !afterTheNetwork.test(name),
    );
    for (const name of files.sort()) hash.update(readFileSync(new URL(`${folder}${name}`, networkFolder)));
  }
  return hash.digest('hex');
})();
let weights: Weights | undefined;
const packagedWeights = (): Weights => {
  weights ??= readWeights(readFileSync(new URL('model/english.bin', networkFolder)));
  return weights;
};

interface Recalled {
  readonly steps: Remembered;
  /** Processor time that each step took, when it was listened to. */
  readonly stepCpuMs: readonly number[];
}

/** Listens to a sound with the packaged network, or remembers how it did. */
export const remember = (samples: Float32Array): Remembered => recall(samples).steps;

function recall(samples: Float32Array): Recalled {
  const bytes = new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength);
  const key = createHash('sha256').update(networkKey).update(bytes).digest('hex').slice(0, 32);
  const file = join(cache, `${key}.f32`);
  if (existsSync(file)) return unpacked(readFileSync(file));
  const network = createHearingNetwork(packagedWeights());
  const steps: (readonly Moment[])[] = [];
  const stepCpuMs: number[] = [];
  for (let at = 0; at + stepLength <= samples.length; at += stepLength) {
    const before = processCpuMs();
    steps.push(network.next(samples.subarray(at, at + stepLength)));
    stepCpuMs.push(processCpuMs() - before);
  }
  mkdirSync(cache, { recursive: true });
  writeFileSync(`${file}.${process.pid}`, packed({ steps, stepCpuMs }));
  renameSync(`${file}.${process.pid}`, file);
  return { steps, stepCpuMs };
}

/** Of each step what it took and how many moments it has, then of each moment its numbers. */
function packed({ steps, stepCpuMs }: Recalled): Float32Array {
  return Float32Array.from(
    steps.flatMap((moments, i) => [
      stepCpuMs[i] ?? 0,
      moments.length,
      ...moments.flatMap(({ phones, early, near }) => [...phones, ...early, near]),
    ]),
  );
}

function unpacked(file: Buffer): Recalled {
  const all = new Float32Array(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength));
  const steps: Moment[][] = [];
  const stepCpuMs: number[] = [];
  for (let at = 0; at < all.length; ) {
    stepCpuMs.push(all[at++] ?? 0);
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
  return { steps, stepCpuMs };
}

/** A network that says again what it said. */
function networkSaying(remembered: Remembered, onStep: (step: number) => void = () => {}): HearingNetwork {
  let step = 0;
  return {
    momentMs,
    phonesLateMoments: phonesLateMomentsOf(packagedWeights()),
    next() {
      onStep(step);
      return remembered[step++] ?? [];
    },
  };
}

export interface TrialSettings {
  readonly near?: NearSpeechSettings;
  readonly spotter?: SpotterSettings;
  readonly onDecision?: NetworkDecoderOptions['onDecision'];
  /** Called with the number of each step of the sound. */
  readonly onStep?: (step: number) => void;
}

/** The product's ear for one sound that the network has listened to already, with settings to be tried. */
export function earRemembering(
  remembered: Remembered,
  { near, spotter, onDecision, onStep }: TrialSettings,
): SoundRecognizer {
  const pronounce = pronounceEnglish;
  return createEar({
    frontEnd: createPlainFrontEnd(),
    decoder: createNetworkDecoder({
      pronounce,
      phonesLateMoments: phonesLateMomentsOf(packagedWeights()),
      ...(onDecision === undefined ? {} : { onDecision }),
    }),
    speech: createNearSpeech(near),
    stops: {
      network: networkSaying(remembered, onStep),
      spotter: createStopSpotter(pronounce, spotter),
      calls: createCallSpotter(pronounce),
    },
  });
}

/**
 * The product's ear, a new one for each scene: what the network makes of a scene is kept, so that other bounds are
 * measured on it in no time. What it took is counted each time.
 */
export const listenerRemembering: Listener = ({ samples }) => {
  const { steps, stepCpuMs } = recall(samples);
  let sparedMs = 0;
  const ear = earRemembering(steps, {
    onStep: step => {
      sparedMs += stepCpuMs[step] ?? 0;
    },
  });
  return { ear, cpuMs: () => processCpuMs() + sparedMs };
};
