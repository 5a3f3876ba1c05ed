import { copyFileSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { firstFire } from '../helpers/first-fire.ts';

const folder = mkdtempSync(join(tmpdir(), 'bad-input-'));
const at = (name: string) => join(folder, name);
const anyReply = 'audio-fixtures/sessions/replies/technician-correct.wav';

beforeAll(() => {
  writeFileSync(at('text.wav'), 'this is no sound');
  writeFileSync(at('empty.wav'), '');
  writeFileSync(at('torn.wav'), readFileSync(anyReply).subarray(0, 300));
  // The rate in the header of an otherwise good file: one sample a second.
  const oddRate = Buffer.from(readFileSync(anyReply));
  oddRate.writeUInt32LE(1, 24);
  writeFileSync(at('rate.wav'), oddRate);
  writeFileSync(at('profile.json'), '{"schema":"first-fire-profile/1","name":""}');
  writeFileSync(at('cues.json'), '{"schema":"first-fire-cues/1","title":"t","made":"m","cues":[]}');
  writeFileSync(at('job.json'), '{"vehicle":"v"}');
  copyFileSync(anyReply, at('sound.jsonl'));
});

const log = () => ['--log', join(mkdtempSync(join(tmpdir(), 'log-')), 'r.jsonl')];

/** What is given, and what the one sentence has to name. */
const cases: readonly (readonly [what: string, args: readonly string[], names: RegExp])[] = [
  ['text that calls itself a WAV file', ['--hear', at('text.wav')], /text\.wav is not a WAV file/],
  ['an empty sound file', ['--hear', at('empty.wav')], /empty\.wav/],
  ['a sound file that breaks off', ['--hear', at('torn.wav')], /torn\.wav breaks off/],
  ['a sound file with an impossible rate', ['--hear', at('rate.wav')], /rate\.wav claims 1 samples a second/],
  [
    'a sound file that is not there',
    ['--hear', at('none.wav')],
    /none\.wav cannot be read: there is no such file or folder; check the path/,
  ],
  ['a recorded session without replies', ['--hear', at('cues.json')], /cues\.json/],
  [
    'a key that is not there',
    ['sign', at('sound.jsonl'), '--key', at('no.pem'), '--role', 'supervisor'],
    /^The key .*no\.pem cannot be read: there is no such file or folder; give the path of a PEM file/,
  ],
  ['a profile that is wrong', ['--profile', at('profile.json')], /profile\.json.*name: "" is not allowed/],
  [
    'a profile that is not there',
    ['--profile', 'demo-nine'],
    /demo-nine: cannot be read.*demo-six, demo-four/,
  ],
  ['a job card that lacks people', ['--job', at('job.json')], /job\.json: engine/],
  ['a folder for speech that is a file', ['--speak-to', at('text.wav')], /Speech cannot be written/],
  [
    'a record in a folder that is not there',
    ['--log', at('no/where.jsonl')],
    /where\.jsonl cannot be written/,
  ],
  ['a record to resume that is not ours', ['resume', at('sound.jsonl')], /not a record of this program/],
  ['a pace that only a file has', ['--fast'], /--fast needs --hear/],
  ['a command that is misspelt', ['rehears', ...log()], /"rehears" is no command; did you mean "rehearse"\?/],
  [
    'a command like no other',
    ['bogus', ...log()],
    /^"bogus" is no command; the commands are resume, verify/m,
  ],
  [
    'help for a command that is misspelt',
    ['help', 'verfy', ...log()],
    /"verfy" is no command; did you mean "verify"\?/,
  ],
  ['units that nobody uses', ['--units', 'furlongs'], /choose metric or us/],
];

describe('one clear sentence and a non-zero exit code for', () => {
  it.each(cases)('%s', async (_, args, names) => {
    const own = args.includes('--log') || args.includes('resume') ? args : [...args, ...log()];
    const { exitCode, stderr } = await firstFire(own);
    expect(stderr).toMatch(names);
    expect(stderr.trim().split('\n')).toHaveLength(1);
    expect(exitCode).toBeGreaterThan(0);
  });
});

describe('nothing is begun, and no record left,', () => {
  it.each([
    ['--hear', 'text.wav', []],
    ['--hear', 'none.wav', []],
    ['--hear', 'text.wav', ['rehearse']],
    ['--speak-to', 'text.wav', []],
    ['--keep-audio', 'text.wav', []],
    ['--json', 'no/where.json', ['rehearse', '--by-itself']],
  ] as const)('where %s %s cannot be used (%s)', async (option, name, command) => {
    const left = join(mkdtempSync(join(tmpdir(), 'log-')), 'r.jsonl');
    const { exitCode } = await firstFire([...command, option, at(name), '--silent', '--log', left]);
    expect(exitCode).toBe(1);
    expect(existsSync(left)).toBe(false);
  });
});
