import type { JobCard } from '../../machines/context.ts';
import { faultSentence } from '../profile/parse.ts';
import { jobCardSchema, jobDetails } from '../record/vocabulary/index.ts';
import { bothAreOne } from './two-people.ts';

/** A job card that cannot be used: a line for each fault. */
export class JobCardError extends Error {
  override readonly name = 'JobCardError';
}

/** @throws JobCardError naming each field that is missing, wrong or unknown, or where one person stands for two */
export function parseJobCard(data: unknown, source: string): JobCard {
  const parsed = jobCardSchema.safeParse(data);
  if (parsed.success) {
    const one = bothAreOne(parsed.data);
    if (one === null) return parsed.data;
    throw new JobCardError(`Job card ${source}: ${one}`);
  }
  const faults = parsed.error.issues.map(issue => faultSentence(issue, data, 'the card'));
  const holds = `It holds vehicle, engine, technician, second and supervisor, and may hold ${jobDetails.join(', ')}.`;
  throw new JobCardError(`Job card ${source}: ${[...faults, holds].join('\n')}`);
}
