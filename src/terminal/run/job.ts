import type { JobCard } from '../../../machines/context.ts';
import { jobDetails } from '../../record/vocabulary/index.ts';
import { demoJob } from '../../session/demo-job.ts';
import { parseJobCard } from '../../session/job-card.ts';
import { loadJobCard } from '../../session/job-card-file.ts';
import type { RunOptions } from './options.ts';

/**
 * The job card of the file, or the invented one, with what the command line says besides.
 * @throws JobCardError when the file cannot be read, or something is wrong on the card
 */
export async function jobCardOf(options: RunOptions): Promise<JobCard> {
  const card = options.job === undefined ? demoJob : await loadJobCard(options.job);
  const said = jobDetails.flatMap(detail => {
    const text = options[detail];
    return text === undefined ? [] : [[detail, text] as const];
  });
  return parseJobCard({ ...card, ...Object.fromEntries(said) }, 'on the command line');
}
