import type { Context, Reading } from '../../../machines/context.ts';
import { initialContext, procedureFor } from '../../../machines/first-start.ts';
import type { StepId } from '../../../prompts/types.ts';
import { isQuantity } from '../../../src/engineering/quantities/table.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { job } from '../helpers/driver.ts';
import type { Shown } from './sessions.ts';

function begun(profile: Profile): Context {
  const [first] = procedureFor(profile);
  if (!first) throw new Error('The procedure has steps.');
  return initialContext({ input: { profile, job } }, first);
}

/** Readings of one quantity in one step, by seconds of the session. */
export const readAt = (
  step: StepId,
  points: readonly (readonly [seconds: number, si: number])[],
  quantity: Reading['quantity'] = 'coolantTemperature',
): Reading[] => points.map(([seconds, si]) => ({ quantity, si, atMs: seconds * 1000, step }));

/** A session that has read these values off its gauges and nothing else. */
export const knowing = (profile: Profile, shown: Shown, more: Partial<Context> = {}): Context => ({
  ...begun(profile),
  readings: Object.entries(shown).flatMap(([quantity, si]) =>
    isQuantity(quantity) ? [{ quantity, si, atMs: 0, step: 'job.ambient' as const }] : [],
  ),
  ...more,
});
