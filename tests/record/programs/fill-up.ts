/**
 * Appends entries until the disk refuses one, goes on for ten more, saves the record elsewhere and tells the
 * story as one line of JSON. To be run under a soft limit on the size of files, which it lifts before the
 * rescue. Run as: fill-up.ts FILE RESCUE-FILE
 */
import { execFileSync } from 'node:child_process';
import { openNewLog, RecordError } from '../../../src/record/index.ts';
import { systemClock } from './system-clock.ts';

const [path = '', rescue = ''] = process.argv.slice(2);
const log = await openNewLog(path, {}, systemClock);
const refusals: string[] = [];
while (refusals.length === 0 || log.unsavedEntries <= 10) {
  try {
    await log.append('event', { text: 'x'.repeat(1000) });
  } catch (error) {
    if (!(error instanceof RecordError)) throw error;
    refusals.push(`${error.code}: ${error.message}`);
  }
}
const { entries, unsavedEntries } = log;
execFileSync('prlimit', ['--pid', String(process.pid), '--fsize=unlimited']);
await log.saveTo(rescue);
await log.close();
process.stdout.write(`${JSON.stringify({ refusals, entries, unsavedEntries })}\n`);
