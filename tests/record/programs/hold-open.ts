/**
 * Opens a record (`new` or `reopen`), says in one line how that went, and holds it until the standard input ends.
 * Run as: hold-open.ts FILE new|reopen
 */
import { openNewLog, RecordError, reopenLog } from '../../../src/record/index.ts';
import { systemClock } from './system-clock.ts';

const [path = '', mode] = process.argv.slice(2);
try {
  const log =
    mode === 'new'
      ? await openNewLog(path, {}, systemClock)
      : (await reopenLog(path, () => ({ clock: systemClock }))).log;
  process.stdout.write('open\n');
  for await (const _ of process.stdin);
  await log.close();
} catch (error) {
  if (!(error instanceof RecordError)) throw error;
  process.stdout.write(`${error.code}: ${error.message}\n`);
}
