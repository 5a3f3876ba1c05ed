import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { chaos } from './run.ts';
import { mustBeZero, table } from './table.ts';

/** `npm run chaos -- --minutes N [--bays N] [--seed N] [--write]`: exit code 1 where anything is not zero that must be. */
const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '2' },
    bays: { type: 'string', default: '3' },
    seed: { type: 'string', default: String(Math.floor(Math.random() * 1e6)) },
    write: { type: 'boolean', default: false },
  },
});
const [minutes, bays, seed] = [Number(values.minutes), Number(values.bays), Number(values.seed)];
if (!(minutes > 0) || !(bays >= 2 && bays <= 8) || !Number.isInteger(seed)) {
  console.error('Give --minutes a number above 0, --bays one from 2 to 8, --seed a whole number.');
  process.exit(2);
}
// The server is in a group of its own and the disk is mounted: nobody leaves without putting that away.
const ending = new AbortController();
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => ending.abort());
const outcome = await chaos({
  minutes,
  bays,
  seed,
  tell: sentence => console.log(sentence),
  ending: ending.signal,
});
const text = table(outcome);
console.log(`\n${text}`);
if (values.write)
  writeFileSync(
    new URL('../../docs/chaos.md', import.meta.url),
    `# Everything at once

Written by \`npm run chaos -- --minutes ${minutes} --bays ${bays} --seed ${seed} --write\`. One server, as its start script starts
it, with a disk and a clock of its own; in each bay two tablets that may lead, the second person's telephone and a
device that floods, each with the page's own connection on a real socket from an address of its own; one supervisor; one
session in a terminal; tablets that send in what they held alone. Starts are led on by allowed answers, mostly good ones,
while faults come one upon another. What is chosen follows from the seed; how fast everything is does not.

${text}`,
  );
process.exitCode = mustBeZero(outcome).every(([, count]) => count === 0) ? 0 : 1;
