import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readLog } from '../../src/record/index.ts';
import { firstFire } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';

const reply = 'audio-fixtures/sessions/replies/technician-card-is-right.wav';
/** Long enough for what is said before the first reply is awaited, in session time. */
const BEFORE_S = 35;
const AFTER_S = 3;

/** `pan`: what sox calls a mix of the channels that it was given, one for each that it writes. */
const channels = [
  ['mono', ['1']],
  // As from two microphones, of which nobody speaks into one.
  ['stereo', ['1', '0']],
] as const;

describe.each([8_000, 11_025, 16_000, 22_050, 44_100, 48_000, 96_000])('a recording at %d Hz', rateHz => {
  it.each(channels)('in %s is understood', async (_, pan) => {
    const folder = scratchFolder();
    const [wav, log] = [join(folder, 'heard.wav'), join(folder, 'record.jsonl')];
    const rate = ['-r', String(rateHz)];
    execFileSync('sox', [reply, ...rate, wav, 'remix', ...pan, 'pad', String(BEFORE_S), String(AFTER_S)]);
    const { stderr, exitCode } = await firstFire(['--hear', wav, '--fast', '--log', log]);
    expect(stderr).toBe('');
    const { entries } = await readLog(log);
    expect(entries.filter(({ kind }) => kind === 'heard').map(({ data }) => data)).toMatchObject([
      { text: 'card is right', kind: 'reply', via: 'voice' },
    ]);
    expect(exitCode).toBe(4);
  });
});
