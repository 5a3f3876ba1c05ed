import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { wholeSession } from '../archive/sessions.ts';
import { firstFire, startFirstFire } from '../helpers/first-fire.ts';
import { scratchFolderForAll } from '../helpers/scratch.ts';

let folder: string;
let log: string;
const at = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = scratchFolderForAll();
  log = at('whole.jsonl');
  await wholeSession(log);
});

describe('verify', () => {
  it('finds a record as it was written', async () => {
    const { exitCode, stdout, stderr } = await firstFire(['verify', log]);
    expect(stdout, stderr).toMatch(/all \d+ entries are as written/);
    expect(exitCode).toBe(0);
  });

  it('names the line that was changed, with exit code 1', async () => {
    const altered = at('altered.jsonl');
    writeFileSync(altered, readFileSync(log, 'utf8').replace('"kind":"said"', '"kind":"note"'));
    const { exitCode, stdout } = await firstFire(['verify', altered]);
    expect(stdout).toMatch(/[Ll]ine 2\b/);
    expect(exitCode).toBe(1);
  });

  it('has exit code 2 for a file that is not there', async () => {
    expect((await firstFire(['verify', at('none.jsonl')])).exitCode).toBe(2);
  });
});

it('report writes HTML, PDF, tables and JSON', async () => {
  const args = [
    '--csv',
    at('tables'),
    '--json',
    at('report.json'),
    '--html',
    at('r.html'),
    '--pdf',
    at('r.pdf'),
  ];
  const { exitCode, stdout, stderr } = await firstFire(['report', log, ...args]);
  expect(exitCode, stderr).toBe(0);
  expect(readFileSync(at('r.html'), 'utf8')).toMatch(/^<!doctype html>/i);
  expect(readFileSync(at('r.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  expect(readFileSync(at('r.pdf')).toString('latin1').trimEnd()).toMatch(/%%EOF$/);
  expect(readdirSync(at('tables'))).toEqual(expect.arrayContaining(['readings.csv', 'events.csv']));
  expect(JSON.parse(readFileSync(at('report.json'), 'utf8'))).toBeTypeOf('object');
  expect(stdout).toContain(at('r.pdf'));
});

it('report lays out names that are written from right to left', async () => {
  const job = at('job.json');
  const right = 'עדה דוגמה';
  writeFileSync(
    job,
    JSON.stringify({
      vehicle: 'Invented',
      engine: 'Invented',
      technician: right,
      second: 'Ben',
      supervisor: 'Cy',
    }),
  );
  const hebrew = at('hebrew.jsonl');
  expect((await firstFire(['--no-mic', '--silent', '--job', job, '--log', hebrew])).exitCode).toBe(4);
  const { exitCode, stderr } = await firstFire([
    'report',
    hebrew,
    '--pdf',
    at('hebrew.pdf'),
    '--html',
    at('h.html'),
  ]);
  expect(exitCode, stderr).toBe(0);
  expect(readFileSync(at('h.html'), 'utf8')).toContain(right);
});

it('sign signs a closed record with a key that it made, and verify checks it by the public one', async () => {
  expect((await firstFire(['keys', 'make', at('keys')])).exitCode).toBe(0);
  const signed = await firstFire(['sign', log, '--key', at('keys/signing-key.pem'), '--role', 'supervisor']);
  expect(signed.exitCode, signed.stderr).toBe(0);
  const checked = await firstFire(['verify', log, '--key', at('keys/public-key.pem')]);
  expect(checked.exitCode, checked.stdout).toBe(0);
});

it('archive keeps, finds, shows and compares', async () => {
  const archive = ['--archive', at('shop.sqlite')];
  const added = await firstFire(['archive', 'add', log, ...archive]);
  expect(added.exitCode, added.stderr).toBe(0);
  const found = await firstFire(['archive', 'find', '--json', ...archive]);
  const { sessions } = JSON.parse(found.stdout);
  expect(sessions).toHaveLength(1);
  const back = at('back.jsonl');
  const shown = await firstFire(['archive', 'show', sessions[0].id, '--log', back, ...archive]);
  expect(shown.exitCode, shown.stderr).toBe(0);
  expect(readFileSync(back, 'utf8')).toBe(readFileSync(log, 'utf8'));
  expect(shown.stdout).toMatch(/\d psi\b/);
  const compared = await firstFire([
    'archive',
    'compare',
    'oil-pressure-time',
    '--svg',
    at('plot.svg'),
    ...archive,
  ]);
  expect(compared.exitCode, compared.stderr).toBe(0);
});

describe('calc', () => {
  it('gives a number for a question, also through npm', async () => {
    const asked = ['calc', 'boil', '--share', '0.5', '--cap', '100', '--altitude', '0'];
    const { exitCode, stdout, stderr } = await startFirstFire(asked, { npm: true }).ended;
    expect(exitCode, stderr).toBe(0);
    expect(stdout).toMatch(/\d/);
  });

  it('reads a table from a pipe', async () => {
    const calc = startFirstFire(['calc', 'idle', '-', '--min', '650', '--max', '750'], { keys: 'typed' });
    for (let s = 0; s <= 20; s += 1) calc.type(`${s},${700 + (s % 2)}`);
    calc.closeKeys();
    const { exitCode, stdout, stderr } = await calc.ended;
    expect(exitCode, stderr).toBe(0);
    expect(stdout).toMatch(/steady/i);
  });

  it('says what is wrong with exit code 2', async () => {
    const { exitCode, stderr } = await firstFire([
      'calc',
      'idle',
      'no-such-file.csv',
      '--min',
      '650',
      '--max',
      '750',
    ]);
    expect(stderr).toMatch(/no-such-file\.csv cannot be read/);
    expect(exitCode).toBe(2);
  });
});

it('help names every command', async () => {
  const { exitCode, stdout } = await startFirstFire(['--help'], { npm: true }).ended;
  expect(exitCode).toBe(0);
  for (const command of [
    'resume',
    'verify',
    'report',
    'keys',
    'sign',
    'archive',
    'calc',
    'rehearse',
    'model',
    'serve',
  ])
    expect(stdout).toMatch(new RegExp(`^  ${command}\\b`, 'm'));
});
