import { readFileSync } from 'node:fs';
import type { Firing } from '../../src/engineering/engine-sound/firing.ts';
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

/** What was heard of a recorded engine in each second, beside what its publisher states. */
export async function heardInRecording({ file, firing, fullScaleRpm }: Recording): Promise<RecordedSecond[]> {
  const { rateHz, sound, speed } = bothChannels(file);
  const resampler = createResampler();
  const samples = await resampler.next({ samples: sound, sampleRateHz: rateHz });
  resampler.close();
  const { heard } = heardIn(samples, firing);
  const seconds = Math.floor(sound.length / rateHz);
  return Array.from({ length: seconds }, (_, second) => {
    const last = heard.findLast(({ atS, claim }) => claim !== null && atS > second && atS <= second + 1);
    const atS = last?.atS ?? second + 0.5;
    return {
      atS,
      statedRpm: (speed[Math.round(atS * rateHz)] ?? 0) * fullScaleRpm,
      heardRpm: last?.claim?.rpm ?? null,
    };
  });
}
