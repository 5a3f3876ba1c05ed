import { nothingTaken, type Taken, take } from './count.ts';
import type { Listener } from './listener.ts';
import { noiseLoop, type SpeakerSet } from './material.ts';
import type { MicrophoneKind } from './microphones.ts';
import { type NoiseKind, noiseKinds } from './noises.ts';
import { type Outcome, play } from './play.ts';
import { type Saying, type Scene, sceneOf } from './scene.ts';

/** Clean is a level too: without any noise. */
export type Level = number | 'clean';

/** The replies of one level: each voice says all of them, each part of them in another noise. */
export function scenesAt(
  level: Level,
  replies: readonly Saying[],
  set: SpeakerSet,
  microphone: MicrophoneKind = 'good',
  kinds: readonly NoiseKind[] = noiseKinds,
): readonly Scene[] {
  return set.voices.flatMap((voice, v) => {
    if (level === 'clean') return [sceneOf(replies, { voice, microphone })];
    return kinds
      .map((kind, k) => ({ kind, part: replies.filter((_, i) => (i + v) % kinds.length === k) }))
      .filter(({ part }) => part.length > 0)
      .map(({ kind, part }) =>
        sceneOf(part, { voice, microphone, noise: { kind, loop: noiseLoop(kind, set), snrDb: level } }),
      );
  });
}

export interface SceneResult {
  readonly scene: Scene;
  readonly taken: Taken;
  readonly outcomes: readonly Outcome[];
}

/** Lets somebody hear scenes one after the other; each begins with seconds of its noise, as a session does. */
export async function hearScenes(
  scenes: readonly Scene[],
  listener: Listener,
): Promise<readonly SceneResult[]> {
  const results: SceneResult[] = [];
  for (const scene of scenes) {
    const outcomes = await play(listener(scene), scene);
    const taken = nothingTaken();
    for (const outcome of outcomes) taken[take(outcome)]++;
    results.push({ scene, taken, outcomes });
  }
  return results;
}
