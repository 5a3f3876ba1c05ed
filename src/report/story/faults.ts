import type { Profile } from '../../profile/schema.ts';
import { ofKind, type Recorded } from '../../record/vocabulary/index.ts';
import type { FaultStory } from '../model.ts';
import type { Replay } from '../replay.ts';

/** Each code that was read, with every judgement on it. */
export function faultsOf(
  entries: readonly Recorded[],
  profile: Profile | null,
  replay: Replay | undefined,
): FaultStory[] {
  const stories = new Map<string, FaultStory>();
  for (const { timeMs, data } of entries.filter(ofKind('faults'))) {
    for (const { spn, fmi, meaning, decision, accepted } of data.faults) {
      const key = `${spn}/${fmi}`;
      const before = stories.get(key);
      const last = before?.told.at(-1);
      const now = { timeMs, step: data.step, decision, ...(accepted == null ? {} : { accepted }) };
      // A round of codes names all that were read so far at each code: only news is told.
      const news =
        last?.step !== now.step || last.decision !== now.decision || last.accepted !== now.accepted;
      stories.set(key, {
        ...(before ?? {
          spn,
          fmi,
          meaning: meaning ?? '',
          because: profile?.faults.find(rule => rule.spn === spn && rule.fmi === fmi)?.because ?? '',
          presentAtEnd: presentAtEnd(replay, spn, fmi),
        }),
        told: [...(before?.told ?? []), ...(news ? [now] : [])],
      });
    }
  }
  const watchPassed = entries
    .filter(ofKind('passed'))
    .findLast(entry => entry.data.step === 'firstFire.transient');
  return [...stories.values()].map(story =>
    watchPassed && story.told.some(told => told.decision === 'watch' && told.timeMs < watchPassed.timeMs)
      ? { ...story, watchPassedMs: watchPassed.timeMs }
      : story,
  );
}

const presentAtEnd = (replay: Replay | undefined, spn: number, fmi: number) =>
  replay ? replay.last.context.faults.some(fault => fault.spn === spn && fault.fmi === fmi) : null;
