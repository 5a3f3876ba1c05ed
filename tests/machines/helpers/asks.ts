import { procedureFor } from '../../../machines/first-start.ts';
import type { Judge, Step } from '../../../machines/steps.ts';
import type { StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';

const withoutSums = (part: unknown): unknown => {
  if (Array.isArray(part)) return part.map(withoutSums);
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(
    Object.entries(part).flatMap(([key, own]) =>
      typeof own === 'function' ? [] : [[key, withoutSums(own)] as const],
    ),
  );
};

/** Who does most of it, and on what: left out of the lists of the tests. */
const USUAL: Readonly<Record<string, unknown>> = { by: 'technician', engine: 'off' };

/**
 * What each step of one phase asks, and of whom: all that stands in the step, but for what is worked out in the session,
 * the technician and the engine that stands.
 */
export const asksOf = (profile: Profile, phase: string): unknown[] =>
  procedureFor(profile)
    .filter(({ id }) => id.startsWith(`${phase}.`))
    .map(step =>
      Object.fromEntries(
        Object.entries(withoutSums(step) as object).filter(
          ([key, own]) => key !== 'kind' && USUAL[key] !== own,
        ),
      ),
    );

/** The ids of the steps of one phase, in their order. */
export const idsOf = (profile: Profile, phase: string): string[] =>
  procedureFor(profile).flatMap(({ id }) => (id.startsWith(`${phase}.`) ? [id] : []));

/** One step of the procedure, of the kind that it has to be. */
export function stepOf<Kind extends Step['kind']>(
  profile: Profile,
  id: StepId,
  kind: Kind,
): Extract<Step, { readonly kind: Kind }> {
  const isIt = (step: Step): step is Extract<Step, { readonly kind: Kind }> =>
    step.id === id && step.kind === kind;
  const step = procedureFor(profile).find(isIt);
  if (!step) throw new Error(`${profile.name} has no ${kind} ${id}.`);
  return step;
}

/** Whether each of these values, in SI, is inside the limits; null where the rule has no answer. */
export const met = (
  judge: Judge,
  context: Parameters<Judge>[0],
  ...values: readonly number[]
): (boolean | null)[] =>
  values.map(si => {
    const judgement = judge(context, si);
    return judgement.ok ? judgement.value.met : null;
  });
