import { readFile } from 'node:fs/promises';
import type { JobCard } from '../../machines/context.ts';
import { systemCause } from '../files/cause.ts';
import { readJson } from '../files/json.ts';
import { JobCardError, parseJobCard } from './job-card.ts';

/** @throws JobCardError when the file cannot be read, is not JSON or is not a job card */
export async function loadJobCard(path: string): Promise<JobCard> {
  let content: string;
  try {
    content = await readFile(path, 'utf8');
  } catch (error) {
    throw new JobCardError(
      `Job card ${path} cannot be read: ${systemCause(error)}; give the path of a JSON file.`,
    );
  }
  const json = readJson(content);
  if (!json.ok)
    throw new JobCardError(`Job card ${path} is not JSON: ${json.why}; correct it or leave it out.`);
  return parseJobCard(json.data, path);
}
