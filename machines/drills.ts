import type { StepId } from '../prompts/types.ts';

/** The steps in which each of the two says a stop word, to be heard (`machines/phases/00-job.ts`). */
const drills: readonly string[] = ['job.stopTechnician', 'job.stopSecond'] satisfies StepId[];

/** Whether a stop on the record is a word that was tried out: there, and without a cause. */
export const wasTriedOut = (step: string, cause: string | null | undefined): boolean =>
  cause == null && drills.includes(step);
