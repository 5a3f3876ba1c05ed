import type { Context } from '../../../machines/context.ts';
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
