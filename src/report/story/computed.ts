import { ofKind, type Recorded } from '../../record/vocabulary/index.ts';
import type { ComputedStory } from '../model.ts';
import type { Replay } from '../replay.ts';

/** Phases in which a prompt carries figures that were calculated for this engine and this weather. */
const calculating = /^(fill|noFuelCrank|keyOn)\./;

/** The prompts that carried calculated figures, with the figures of the replayed session. */
export function computedOf(entries: readonly Recorded[], replay: Replay | undefined): ComputedStory[] {
  if (!replay) return [];
  const passed = new Map(entries.filter(ofKind('passed')).map(entry => [entry.data.step, entry.timeMs]));
  return replay.steps.flatMap(step => {
    const timeMs = passed.get(step.id);
    if (timeMs === undefined || !step.values || !calculating.test(step.id) || step.kind === 'reading')
      return [];
    // As it stood when the step was done: the last moment before it was passed.
    const moment = replay.moments.findLast(({ context }) => context.step === step.id) ?? replay.last;
    const said = {
      line: 'ask',
      step: step.id,
      values: step.values(moment.context),
      priority: 'prompt',
    } as const;
    return [{ step: step.id, timeMs, said }];
  });
}
