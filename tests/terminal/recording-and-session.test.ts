import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { readLog } from '../../src/record/index.ts';
import { startFirstFire } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';

/** Silence before and behind the word, in seconds: more than the session lasts. */
const padded = ['1', '600'];

it('a recording that goes on beyond the end of its session is not told to be over', async () => {
  const folder = scratchFolder();
  const [wav, log] = [join(folder, 'heard.wav'), join(folder, 'record.jsonl')];
  execFileSync('sox', ['audio-fixtures/sessions/replies/technician-stop.wav', wav, 'pad', ...padded]);
  const run = startFirstFire(['--hear', wav, '--silent', '--log', log], { keys: 'typed' });
  for (const [told, line] of [
    ['all is off, or still running?', 'all is off'],
    ['What was the cause?', 'end the session'],
    ['Correct?', 'yes'],
  ] as const) {
    await run.tells(told);
    run.type(line);
  }
  const { stdout } = await run.ended;
  expect(stdout).not.toContain('recording is over');
  const { entries } = await readLog(log);
  expect(entries.some(({ kind }) => kind === 'closed')).toBe(true);
  expect(entries.filter(({ kind }) => kind === 'problem')).toEqual([]);
});
