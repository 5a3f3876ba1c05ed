import { loadProfile } from '../../../src/profile/load.ts';
import { openNewLog } from '../../../src/record/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import { headerData } from '../../../src/session/header.ts';

/** A record with so many long entries that nobody reads it in a moment. */
export async function largeRecord(path: string, entries: number): Promise<void> {
  const profile = await loadProfile('demo-six');
  const log = await openNewLog(path, headerData({ profile, job: demoJob, language: 'en', units: 'us' }), {
    wall: () => new Date(),
    monoMs: () => 0,
  });
  const sentence = 'Nothing that anybody said. '.repeat(40);
  await Promise.all(Array.from({ length: entries }, () => log.append('problem', { sentence })));
  await log.close();
}
