/**
 * Appends bursts of entries of all sizes for ever, and says on the standard output which ones are on the disk.
 * Run as: append-until-killed.ts FILE
 */
import { openNewLog } from '../../../src/record/index.ts';
import { systemClock } from './system-clock.ts';

const [path = ''] = process.argv.slice(2);
const log = await openNewLog(path, {}, systemClock);

const append = async (text: string): Promise<void> => {
  const entry = await log.append('event', { text });
  // Pipes are written synchronously by Node on POSIX systems: a line said is a line sent.
  process.stdout.write(`${entry.seq} ${entry.hash}\n`);
};

for (let burst = 0; ; burst++) {
  const sizes = Array.from({ length: 1 + (burst % 7) }, (_, i) => (burst * 977 + i * 33_331) % 60_000);
  await Promise.all(sizes.map(size => append('x'.repeat(size))));
}
