import type { JobCard } from '../../../machines/context.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import demoFour from '../../profile/demo/demo-four.json' with { type: 'json' };
import demoSix from '../../profile/demo/demo-six.json' with { type: 'json' };
import { parseProfile } from '../../profile/parse.ts';
import type { Profile } from '../../profile/schema.ts';
import type { UnitSystem } from '../../session/units.ts';

/** What is chosen before a session begins. */
export interface Choice {
  readonly profile: Profile;
  readonly job: JobCard;
  readonly units: UnitSystem;
  readonly language: LanguageCode;
}

/** The engines that come with the page, invented all of them. */
export const demoProfiles: readonly Profile[] = [
  parseProfile(JSON.stringify(demoSix), 'demo-six'),
  parseProfile(JSON.stringify(demoFour), 'demo-four'),
];
