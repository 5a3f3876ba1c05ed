import type { Profile } from '../../src/profile/schema.ts';
import { withinRange } from '../limits/readings.ts';
import { confirm, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';

const primer = { group: 'primer', ok: 'primerDone' } as const;

/** Fuel to the injection pump by hand: firm, screwed home, no weeps. */
export const primeSteps = ({ fuel }: Profile): readonly Step[] => [
  reading(
    'prime.strokes',
    'primerStrokes',
    withinRange('primerStrokes', { min: 1, max: fuel.primer.maxStrokes }),
  ),
  confirm('prime.firm', 'primerFirm', { gate: 'fuelPrimed', together: primer }),
  confirm('prime.screwedHome', 'screwedHome', { gate: 'fuelPrimed', together: primer }),
  confirm('prime.noWeeps', 'noWeeps', { gate: 'fuelPrimed', by: 'second' }),
];
