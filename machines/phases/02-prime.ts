import type { Profile } from '../../src/profile/schema.ts';
import { withinRange } from '../limits/readings.ts';
import { confirm, hold, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';

const primer = { group: 'primer', ok: 'primerDone' } as const;

/** Fuel to the injection pump by hand: firm, screwed home, no weeps. */
const byHand = ({ fuel }: Profile): readonly Step[] => [
  reading(
    'prime.strokes',
    'primerStrokes',
    withinRange('primerStrokes', { min: 1, max: fuel.primer.maxStrokes }),
  ),
  confirm('prime.firm', 'primerFirm', { gate: 'fuelPrimed', together: primer }),
  confirm('prime.screwedHome', 'screwedHome', { gate: 'fuelPrimed', together: primer }),
];

/** By a pump of its own, until it draws no air any more. */
const byPump = ({ fuel }: Profile): readonly Step[] => [
  hold('prime.electric', () => fuel.primer.runS),
  confirm('prime.electricBled', 'noMoreAir', { gate: 'fuelPrimed' }),
];

/** Fuel to the injection pump, by hand or by a pump of its own, and no weeps. */
export const primeSteps = (profile: Profile): readonly Step[] => [
  ...(profile.fuel.primer.kind === 'electric' ? byPump(profile) : byHand(profile)),
  confirm('prime.noWeeps', 'noWeeps', { gate: 'fuelPrimed', by: 'second' }),
];
