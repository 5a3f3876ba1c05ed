import { readFileSync } from 'node:fs';
import type { Firing } from '../../src/engineering/engine-sound/firing.ts';
import { Listening, stepS } from '../../src/engineering/engine-sound/listening.ts';
import { Track } from '../../src/engineering/engine-sound/track.ts';
import { decodeWav } from '../../src/voice/audio/wav.ts';
import { createResampler } from '../../src/voice/resample.ts';
import { heardIn } from './measure.ts';

/** A recorded engine whose speed lies beside it, as the second channel of the file. */
export interface Recording {
  readonly file: string;
  readonly firing: Firing;
  /** The speed that the highest sample of the second channel stands for. */
  readonly fullScaleRpm: number;
}

export interface RecordedSecond {
  readonly atS: number;
  readonly statedRpm: number;
  readonly heardRpm: number | null;
  /** What is likeliest at every moment, of an engine that has been followed so far, sure enough to be told or not. */
  readonly likeliestRpm: number;
  readonly certainty: number;
}

interface Stereo {
  readonly rateHz: number;
  readonly sound: Float32Array;
  readonly speed: Float32Array;
}

/** Two channels of 16-bit samples: our own WAV reader mixes them, and here they mean different things. */
function bothChannels(file: string): Stereo {
  const bytes = readFileSync(file);
  const { sampleRateHz } = decodeWav(bytes, file);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const at = bytes.indexOf('data') + 8;
  const frames = Math.floor(view.getUint32(at - 4, true) / 4);
  const channel = (offset: number) =>
    Float32Array.from({ length: frames }, (_, i) => view.getInt16(at + 4 * i + offset, true) / 32_768);
  return { rateHz: sampleRateHz, sound: channel(0), speed: channel(2) };
}

interface Likeliest {
  readonly atS: number;
  readonly likeliestRpm: number;
  readonly certainty: number;
}

/** The likeliest speed at each look, as of an engine that is known to run. */
function likeliestIn(samples: Float32Array, firing: Firing): Likeliest[] {
  const [listening, track] = [new Listening(firing), new Track(stepS)];
  listening.isNew = false;
  const all: Likeliest[] = [];
  listening.push(samples, ({ atS: toldS, said }) => {
    const belief = track.next(said);
    if (belief)
      all.push({
        atS: toldS - listening.lagS(belief.rpm),
        likeliestRpm: belief.rpm,
        certainty: belief.confidence,
      });
  });
  return all;
}

function nearest(all: readonly Likeliest[], atS: number) {
  const { likeliestRpm = Number.NaN, certainty = 0 } =
    all.toSorted((a, b) => Math.abs(a.atS - atS) - Math.abs(b.atS - atS))[0] ?? {};
  return { likeliestRpm, certainty };
}

/** What was heard of a recorded engine in each second, beside what its publisher states. */
export async function heardInRecording({ file, firing, fullScaleRpm }: Recording): Promise<RecordedSecond[]> {
  const { rateHz, sound, speed } = bothChannels(file);
  const resampler = createResampler();
  const samples = await resampler.next({ samples: sound, sampleRateHz: rateHz });
  resampler.close();
  const { heard } = heardIn(samples, firing);
  const likeliest = likeliestIn(samples, firing);
  const seconds = Math.floor(sound.length / rateHz);
  return Array.from({ length: seconds }, (_, second) => {
    const last = heard.findLast(({ atS, claim }) => claim !== null && atS > second && atS <= second + 1);
    const atS = last?.atS ?? second + 0.5;
    return {
      atS,
      statedRpm: (speed[Math.round(atS * rateHz)] ?? 0) * fullScaleRpm,
      heardRpm: last?.claim?.rpm ?? null,
      ...nearest(likeliest, atS),
    };
  });
}
