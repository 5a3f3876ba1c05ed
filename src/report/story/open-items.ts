import type { GateStory, OpenItem, SkipStory } from '../model.ts';
import type { Recorded } from '../recorded.ts';
import type { Replay } from '../replay.ts';
import { passedSteps } from './gates.ts';

/** What somebody still has to do something about. */
export function openItemsOf(
  entries: readonly Recorded[],
  gates: readonly GateStory[],
  skips: readonly SkipStory[],
  replay: Replay | undefined,
): OpenItem[] {
  const accepted = new Map<string, OpenItem>();
  for (const entry of entries) {
    if (entry.kind !== 'faults') continue;
    for (const { spn, fmi, accepted: reason } of entry.data.faults)
      if (reason != null) accepted.set(`${spn}/${fmi}`, { kind: 'fault', spn, fmi, accepted: reason });
  }
  const gated = new Set(gates.flatMap(({ gate, missing }) => (gate === null ? [] : missing)));
  return [
    ...gates
      .filter(({ gate, met }) => gate !== null && !met)
      .map(({ gate }) => ({ kind: 'gate' as const, gate: gate ?? '' })),
    ...skips.map(({ step, reason }) => ({ kind: 'skip' as const, step, reason })),
    ...accepted.values(),
    ...[...passedSteps(entries, replay).values()]
      .filter(({ step, reopened }) => reopened && !gated.has(step))
      .map(({ step }) => ({ kind: 'reopened' as const, step })),
  ];
}
