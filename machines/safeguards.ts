import type { StepId } from '../prompts/types.ts';
import type { Context } from './context.ts';
import type { Step } from './steps.ts';

/**
 * What was made safe by a step, and is so no longer once a later one is said: all that stands between the two is done
 * under it. Common practice, no published source.
 */
const takenAwayBy: Partial<Record<StepId, readonly StepId[]>> = {
  'barOver.toolOut': ['barOver.isolated'],
  'noFuelCrank.manual': ['job.autoStart'],
  'noFuelCrank.restored': ['noFuelCrank.disabled', 'noFuelCrank.proved'],
  'signOff.handBack': ['job.autoStart', 'job.breaker', 'fill.jacketHeater'],
};

const safeguardsOf = (taker: StepId): readonly StepId[] => takenAwayBy[taker] ?? [];

/** What was given back at the end: where hands go in, or the engine turns, once more after that, it is taken again. */
export const GIVEN_BACK = safeguardsOf('signOff.handBack');

type Known = Pick<Context, 'takenAway'>;

/** What the session knows once a step is passed: whether that took away what was made safe before. */
export const afterPassing = (step: StepId, { takenAway }: Known): Known => ({
  takenAway: safeguardsOf(step).length > 0 ? [...new Set([...takenAway, step])] : takenAway,
});

/** All is off, and with that the mode switch of a set where it starts nothing. */
export const onceAllIsOff = ({ takenAway }: Known): Known => ({
  takenAway: takenAway.filter(id => id !== 'noFuelCrank.manual'),
});

/** What is on the list anew is asked for before anything else hangs on it. */
export const stillTakenAway = (done: readonly StepId[], { takenAway }: Known): readonly StepId[] =>
  takenAway.filter(taker => safeguardsOf(taker).some(id => done.includes(id)));

/**
 * The safeguards that have to be asked for anew, where these steps are done: of those under which the next step is
 * done, all that a later step has taken away since.
 */
export function safeguardsLost(
  steps: readonly Step[],
  context: Context,
  done: readonly StepId[],
): readonly StepId[] {
  const place = (id: StepId) => steps.findIndex(step => step.id === id);
  const known = { ...context, done };
  const next = steps.findIndex(({ id, when }) => (when?.(known) ?? true) && !done.includes(id));
  const lost = context.takenAway
    .filter(taker => place(taker) > next)
    .flatMap(safeguardsOf)
    .filter(id => done.includes(id) && place(id) < next);
  return [...new Set(lost)];
}
