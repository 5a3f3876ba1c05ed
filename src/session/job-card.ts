import { z } from 'zod';
import type { JobCard } from '../../machines/context.ts';

const text = z.string().trim().min(1).max(80);

export const jobCardSchema = z.strictObject({
  vehicle: text,
  engine: text,
  technician: text,
  second: text,
  supervisor: text,
});

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
    `Job card ${source}: ${faults.join('; ')}. It holds vehicle, engine, technician, second and supervisor.`,
  );
}
