import type { JobCard } from '../../../machines/context.ts';
import { languages } from '../../../prompts/index.ts';
import type { Profile } from '../../profile/schema.ts';
import { jobDetails } from '../../record/vocabulary/index.ts';
import { inventedOn, practiceJob } from '../../session/demo-job.ts';
import { JobCardError, parseJobCard } from '../../session/job-card.ts';
import { loadJobCard } from '../../session/job-card-file.ts';
import type { RunOptions } from './options.ts';

/**
 * The job card of the file, or an invented one for this engine, with what the command line says besides.
 * @throws JobCardError when the file cannot be read, or something is wrong on the card
 */
export async function jobCardOf(options: RunOptions, profile: Profile): Promise<JobCard> {
  const card =
    options.job === undefined
      ? practiceJob(profile, languages[options.language])
      : await loadJobCard(options.job);
  const said = jobDetails.flatMap(detail => {
    const text = options[detail];
    return text === undefined ? [] : [[detail, text] as const];
  });
  return parseJobCard({ ...card, ...Object.fromEntries(said) }, 'on the command line');
}

/**
 * The job card of a first fire.
 * @throws JobCardError also where a real engine would be started by invented people
 */
export async function startCardOf(options: RunOptions, profile: Profile): Promise<JobCard> {
  const job = await jobCardOf(options, profile);
  const invented = inventedOn(job, profile);
  if (invented !== null) throw new JobCardError(`Job card: ${invented} Name a card with --job.`);
  return job;
}
