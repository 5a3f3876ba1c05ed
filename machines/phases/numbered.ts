import type { StepId } from '../../prompts/types.ts';
import type { Profile } from '../../src/profile/schema.ts';

/** What is done several times over is told apart by these, in step ids too: speeds of the sweep, looks after key-off. */
export const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'] as const;

/** The step at which each speed of a sweep is read, in the order of a profile's `sweeps`. */
export const sweepStepIds = ordinals.map(ordinal => `sweeps.${ordinal}` as const) satisfies readonly StepId[];

/** The speed, rpm, at which a step of the sweep is read; undefined for any other step, and for one too many. */
export const sweepRpm = (step: string, { sweeps }: Profile): number | undefined =>
  sweeps[(sweepStepIds as readonly string[]).indexOf(step)]?.rpm;
