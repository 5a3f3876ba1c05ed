import { hearScenes, type Level, type SceneResult, scenesAt } from './accuracy.ts';
import type { Listener } from './listener.ts';
import { type SpeakerSet, stopReplies } from './material.ts';
import type { Saying } from './scene.ts';

/** A stop counts as heard until so long after the end of what was said. */
const stopWithinMs = 500;

export interface StopResult {
  readonly said: number;
  readonly heard: number;
  readonly heardInTime: number;
  /** From the end of the speech to the report; negative when it was reported before the end. */
  readonly latenciesMs: readonly number[];
  readonly missed: readonly string[];
}

/** How stop words are heard, alone and within other talk. */
export async function measureStops(
  level: Level,
  replies: readonly Saying[],
  set: SpeakerSet,
  listener: Listener,
): Promise<StopResult> {
  return stopResultOf(await hearScenes(scenesAt(level, stopReplies(replies), set), listener));
}

/** What became of the stops that scenes are made of. */
export function stopResultOf(results: readonly SceneResult[]): StopResult {
  const all = results.flatMap(({ scene, outcomes }) => outcomes.map(outcome => ({ scene, outcome })));
  const latencies = all.map(({ scene, outcome: { utterance, reports } }) => ({
    name: `${utterance.speaker ?? scene.voice} ${scene.noise} "${utterance.says}"`,
    lateMs: reports.find(({ heard }) => heard.kind === 'stop')?.atMs ?? Number.NaN,
    endMs: utterance.speechEndMs,
  }));
  const heard = latencies.filter(({ lateMs }) => !Number.isNaN(lateMs));
  const latenciesMs = heard.map(({ lateMs, endMs }) => lateMs - endMs);
  return {
    said: all.length,
    heard: heard.length,
    heardInTime: latenciesMs.filter(ms => ms <= stopWithinMs).length,
    latenciesMs,
    missed: latencies.filter(({ lateMs }) => Number.isNaN(lateMs)).map(({ name }) => name),
  };
}
