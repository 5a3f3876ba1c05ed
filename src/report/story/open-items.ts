import { isQuantity } from '../../engineering/quantities/table.ts';
import { ofKind, type Recorded } from '../../record/vocabulary/index.ts';
import type { GateStory, OpenItem, SkipStory } from '../model.ts';
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
    ...entries.filter(ofKind('barred')).map(({ data }) => ({ kind: 'barred' as const, line: data.why })),
    ...leftOpen(entries, replay),
    ...skips.map(({ step, reason }) => ({ kind: 'skip' as const, step, reason })),
    ...accepted.values(),
    ...[...passedSteps(entries, replay).values()]
      .filter(({ step, reopened }) => reopened && !gated.has(step) && applies(step, replay))
      .map(({ step }) => ({ kind: 'reopened' as const, step })),
  ];
}

/** What was noted and gone on with, and has neither come right nor been put back on the list since. */
function leftOpen(entries: readonly Recorded[], replay: Replay | undefined): OpenItem[] {
  if (replay)
    return replay.last.context.openItems.map(({ step, quantity, si, finding }) => ({
      kind: 'left',
      step,
      quantity,
      si,
      finding,
    }));
  let left: Extract<OpenItem, { readonly kind: 'left' }>[] = [];
  for (const { kind, data } of entries) {
    if (kind === 'leftOpen') {
      const { step, quantity, value, finding } = data;
      left.push({
        kind: 'left',
        step,
        quantity: quantity != null && isQuantity(quantity) ? quantity : undefined,
        si: value ?? undefined,
        finding: finding ?? undefined,
      });
    }
    if (kind === 'settled') left = left.filter(({ step }) => step !== data.step);
    if (kind === 'reopened') left = left.filter(({ step }) => !data.steps.some(id => id === step));
  }
  return left;
}

/** A step that was passed once may no longer be called for, as the watch over a code that is gone. */
function applies(id: string, replay: Replay | undefined): boolean {
  const step = replay?.steps.find(step => step.id === id);
  return replay === undefined || step?.when === undefined || step.when(replay.last.context);
}
