import { readFile } from 'node:fs/promises';
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

/** @throws JobCardError when the file cannot be read, is not JSON or is not a job card */
export async function loadJobCard(path: string): Promise<JobCard> {
  let content: string;
  try {
    content = await readFile(path, 'utf8');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unreadable';
    throw new JobCardError(`Job card ${path} cannot be read (${code}); give the path of a JSON file.`);
  }
  try {
    return parseJobCard(JSON.parse(content), path);
  } catch (error) {
    if (error instanceof JobCardError) throw error;
    throw new JobCardError(`Job card ${path} is not JSON; correct it or leave it out.`);
  }
}
