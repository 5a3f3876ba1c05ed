import type { StopRecord } from '../../../machines/context.ts';
import type { Cause } from '../../../machines/vocabulary.ts';

/** What is known of a stop that the second person called in a step. @param found what was measured, if anything was */
export const stoppedAt = (step: StopRecord['step'], found: Cause | null): StopRecord => ({
  cause: null,
  found,
  by: 'second',
  atMs: 0,
  step,
  lateAfterS: null,
  also: [],
  longAway: false,
  secondCalled: false,
  firstMs: 0,
  insisted: false,
  drilled: [],
  lastDrilled: null,
});
