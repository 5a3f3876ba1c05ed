import type { Context } from '../../../machines/context.ts';
import { procedureFor } from '../../../machines/first-start.ts';
import type { StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { knowing } from '../limits/known.ts';
import { Driver } from './driver.ts';

type Value = Parameters<Driver['machine']['resolveState']>[0]['value'];

/** A session that stands in a state and knows this, whatever led there. */
export function standingIn(profile: Profile, value: Value, known: Partial<Context> = {}): Driver {
  const driver = new Driver(profile);
  driver.moment = driver.machine.resolveState({ value, context: knowing(profile, {}, known) });
  return driver;
}

/** The steps before this one, in their order. */
export const upTo = (profile: Profile, id: StepId): StepId[] => {
  const ids = procedureFor(profile).map(step => step.id);
  return ids.slice(0, ids.indexOf(id));
};

/** A session in a state of a step before which all is done. */
export function atStep(profile: Profile, id: StepId, state: string, known: Partial<Context> = {}): Driver {
  const [phase = '', step = ''] = id.split('.');
  const value = { procedure: { [phase]: { [step]: state } } };
  return standingIn(profile, value, { step: id, done: upTo(profile, id), ...known });
}
