import { readFile } from 'node:fs/promises';
import type { JobCard } from '../../machines/context.ts';
import { JobCardError, parseJobCard } from './job-card.ts';

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
