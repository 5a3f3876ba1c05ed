import demoBoat from '../../profile/demo/demo-boat.json' with { type: 'json' };
import demoFour from '../../profile/demo/demo-four.json' with { type: 'json' };
import demoGenset from '../../profile/demo/demo-genset.json' with { type: 'json' };
import demoSix from '../../profile/demo/demo-six.json' with { type: 'json' };
import { parseProfile } from '../../profile/parse.ts';
import type { Profile } from '../../profile/schema.ts';

/** By the name that the laptop has for them, as `demoProfiles` of the loader lists them. */
const files = {
  'demo-six': demoSix,
  'demo-four': demoFour,
  'demo-genset': demoGenset,
  'demo-boat': demoBoat,
};

/** The engines that come with the page, invented all of them. */
export const demoEngines: readonly Profile[] = Object.entries(files).map(([name, data]) =>
  parseProfile(JSON.stringify(data), name),
);

/** The laptop's name for an engine that comes with the page; what else is chosen keeps its own. */
export const laptopNameOf = (engine: string): string =>
  Object.keys(files)[demoEngines.findIndex(({ name }) => name === engine)] ?? engine;
