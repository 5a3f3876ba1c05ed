import { blocksOf } from '../../src/voice/audio/blocks.ts';
import type { Heard } from '../../src/voice/ports.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import type { TimedEar } from './listener.ts';
import type { Placed, Scene } from './scene.ts';

export interface TimedReport {
  readonly heard: Heard;
  /** On the scene's own time line: when the sound was there, and the processor time of working on its last block. */
  readonly atMs: number;
}

export interface Outcome {
  readonly utterance: Placed;
  readonly reports: readonly TimedReport[];
}

/** How much processor time hearing has taken, and for how much sound. */
export const spent = { cpuMs: 0, soundMs: 0 };

/** Plays a scene to an ear that is never restarted in between, as in a session; what is reported, by utterance. */
export async function play({ ear, cpuMs }: TimedEar, scene: Scene): Promise<readonly Outcome[]> {
  const outcomes: Outcome[] = [];
  let playedMs = 0;
  let reports: TimedReport[] = [];
  let startedMs = 0;
  ear.onHeard(heard => reports.push({ heard, atMs: playedMs + cpuMs() - startedMs }));
  const hear = async (from: number, to: number) => {
    const samples = scene.samples.subarray(from, to);
    for (const block of blocksOf({ samples, sampleRateHz: speechRateHz })) {
      const blockMs = (block.samples.length / speechRateHz) * 1000;
      playedMs += blockMs;
      startedMs = cpuMs();
      await ear.hear(block);
      spent.cpuMs += cpuMs() - startedMs;
      spent.soundMs += blockMs;
    }
  };
  const [first] = scene.utterances;
  if (first) ear.listen(first.grammar);
  await hear(0, first?.fromSample ?? scene.samples.length);
  for (const utterance of scene.utterances) {
    ear.listen(utterance.grammar);
    reports = [];
    await hear(utterance.fromSample, utterance.toSample);
    outcomes.push({ utterance, reports });
  }
  ear.onHeard(() => {});
  return outcomes;
}
