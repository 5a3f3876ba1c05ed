import { type Acceptable, acceptedByName } from './provenance.ts';
import type { Profile } from './schema.ts';

/** What may stay assumed where the supervisor accepts it by name, in English. */
export const acceptableNames: Readonly<Record<Acceptable, string>> = {
  starterLimit: 'the limits of the starter',
  coolant: 'the coolant',
  heater: 'the heater',
  idle: 'the idle',
};

/** The profile with the supervisor's name at what is accepted as assumed. */
export function accepting(profile: Profile, what: Acceptable, name: string): Profile {
  const provenance = { ...profile.provenance };
  for (const path of acceptedByName[what]) {
    const origin = provenance[path] ?? { from: 'assumed' as const };
    if (origin.from === 'assumed') provenance[path] = { ...origin, acceptedBy: name };
  }
  return { ...profile, provenance };
}
