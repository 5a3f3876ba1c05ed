import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { startProgram } from './children.ts';
import { tempFolder } from './support.ts';

const newPath = (): string => join(tempFolder(), 'session.jsonl');

describe('two programs on one record', () => {
  it('the second program is told so in one sentence, and may have it once the first is done', async () => {
    const path = newPath();
    const first = startProgram('hold-open', [path, 'new']);
    expect(await first.firstLine()).toBe('open');
    const second = startProgram('hold-open', [path, 'reopen']);
    expect(await second.firstLine()).toMatch(
      /^inUse: .* is being written already; close the program that does/,
    );
    await first.finish();
    const third = startProgram('hold-open', [path, 'reopen']);
    expect(await third.firstLine()).toBe('open');
    await third.finish();
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 2 });
  });

  it('of several that find the lock of a dead one, exactly one gets the record', async () => {
    const path = newPath();
    const dead = startProgram('hold-open', [path, 'new']);
    await dead.firstLine();
    dead.kill();
    await dead.finish();
    expect(existsSync(`${path}.lock`)).toBe(true);
    const programs = Array.from({ length: 4 }, () => startProgram('hold-open', [path, 'reopen']));
    const answers = await Promise.all(programs.map(program => program.firstLine()));
    expect(answers.filter(answer => answer === 'open')).toHaveLength(1);
    expect(answers.filter(answer => answer.startsWith('inUse: '))).toHaveLength(3);
    await Promise.all(programs.map(program => program.finish()));
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 2 });
  });
});

describe('a file that has reached the largest size allowed', () => {
  it('is told once, and the whole record is saved elsewhere', async ({ skip }) => {
    skip(spawnSync('prlimit', ['--version']).status !== 0, 'the command prlimit is not there');
    const folder = tempFolder();
    const [path, rescue] = [join(folder, 'session.jsonl'), join(folder, 'rescue.jsonl')];
    const program = startProgram('fill-up', [path, rescue], ['prlimit', '--fsize=20480:unlimited']);
    const story = JSON.parse(await program.firstLine());
    expect(story.refusals).toEqual([expect.stringMatching(/^disk: .*the largest size allowed/)]);
    expect(story.unsavedEntries).toBe(11);
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: story.entries - 11 });
    expect(await verifyLog(rescue)).toMatchObject({ ok: true, entries: story.entries });
  });
});
