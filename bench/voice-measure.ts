import { blocksOf } from '../src/voice/audio/blocks.ts';
import type { Heard, Pcm, SoundRecognizer } from '../src/voice/ports.ts';

/** One thing reported while a sound was played to a recognizer at its own pace. */
export interface Report {
  readonly heard: Heard;
  /** When it was reported, on the sound's own time line, computing time and backlog included. */
  readonly atMs: number;
}

export interface Listening {
  readonly reports: readonly Report[];
  readonly soundMs: number;
  /** Processor time of this process while it listened. */
  readonly cpuMs: number;
}

const cpuMs = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/**
 * Plays a sound to a recognizer as a microphone would deliver it, without waiting: a block is there
 * when it has been recorded, and is worked on when the one before it is done; the work really takes
 * as long as it takes, the rest of the time is only counted.
 */
export async function listenTo(ear: SoundRecognizer, sound: Pcm): Promise<Listening> {
  const reports: Report[] = [];
  let recordedMs = 0;
  let doneMs = 0;
  let startedAt = 0;
  ear.onHeard(heard => {
    reports.push({ heard, atMs: Math.max(recordedMs, doneMs) + performance.now() - startedAt });
  });
  const cpuBeforeMs = cpuMs();
  for (const block of blocksOf(sound)) {
    recordedMs += (block.samples.length / block.sampleRateHz) * 1000;
    startedAt = performance.now();
    await ear.hear(block);
    doneMs = Math.max(recordedMs, doneMs) + performance.now() - startedAt;
  }
  ear.onHeard(() => {});
  return { reports, soundMs: recordedMs, cpuMs: cpuMs() - cpuBeforeMs };
}

/** When the last audible 10 ms of a clean recording ends: 40 dB below its loudest. */
export function speechEndMs({ samples, sampleRateHz }: Pcm): number {
  const frame = sampleRateHz / 100;
  const peaks = Array.from({ length: Math.floor(samples.length / frame) }, (_, i) =>
    samples.subarray(i * frame, (i + 1) * frame).reduce((most, s) => Math.max(most, Math.abs(s)), 0),
  );
  const loudest = Math.max(...peaks);
  return (peaks.findLastIndex(peak => peak > loudest / 100) + 1) * 10;
}

/** The value that a share of all values does not exceed; NaN when there are none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

export interface Tally {
  right: number;
  unclear: number;
  wrong: number;
  falseStop: number;
}

export const emptyTally = (): Tally => ({ right: 0, unclear: 0, wrong: 0, falseStop: 0 });

export const totalOf = ({ right, unclear, wrong, falseStop }: Tally): number =>
  right + unclear + wrong + falseStop;
