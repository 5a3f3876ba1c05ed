import type { Profile } from '../../src/profile/schema.ts';
import { keptOff } from '../controls.ts';
import { confirm } from '../step-makers.ts';
import type { Step } from '../steps.ts';

const free = { gate: 'turnsFreely' } as const;
const fed = { ...free, together: { group: 'oilFeeds', ok: 'oilFed' } } as const;

const portSteps = ({ prelube }: Profile): readonly Step[] =>
  prelube
    ? [confirm('barOver.prelube', 'prelubeDone', { ...fed, values: () => ({ port: prelube.port }) })]
    : [];

/**
 * Filled and primed, and before the starter: oil to where it is wanted, then the engine turned by hand. What binds, or
 * fluid that stands on a piston, is felt at the bar; the starter would only break something. Common practice, no
 * published source.
 */
export const barOverSteps = (profile: Profile): readonly Step[] => [
  confirm('barOver.isolated', 'starterIsolated', { ...free, words: { off: keptOff(profile, 'bar') } }),
  ...portSteps(profile),
  ...(profile.turbo ? [confirm('barOver.turboFeed', 'turboFed', fed)] : []),
  confirm('barOver.turned', 'turnsFree', {
    ...free,
    trouble: { reply: 'itBinds', cause: 'binds', named: true },
  }),
  confirm('barOver.toolOut', 'barringToolOut', free),
];
