import type { JobCard } from '../../machines/context.ts';
import { jobCardSchema, jobDetails } from '../record/vocabulary/index.ts';

/** A job card that cannot be used: one sentence with every fault. */
export class JobCardError extends Error {
  override readonly name = 'JobCardError';
}

/** @throws JobCardError naming each field that is missing, wrong or unknown */
export function parseJobCard(data: unknown, source: string): JobCard {
  const parsed = jobCardSchema.safeParse(data);
  if (parsed.success) return parsed.data;
  const faults = parsed.error.issues.map(issue => `${issue.path.join('.') || 'the card'}: ${issue.message}`);
  throw new JobCardError(
    `Job card ${source}: ${faults.join('; ')}. It holds vehicle, engine, technician, second and supervisor, and may hold ${jobDetails.join(', ')}.`,
  );
}
