import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openNewLog, type RecordLog, verifyLog } from '../../src/record/index.ts';
import { closeRecord, saveRecord } from '../../src/session/save-record.ts';
import { savePlace } from '../../src/terminal/run/save-words.ts';
import { firstFire } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { Tmux } from '../helpers/tmux.ts';
import { HandClock } from '../record/support.ts';

const nobody = async () => undefined;

/** A record whose file was taken away, so that its second entry is only in memory. */
async function inMemory(): Promise<{ log: RecordLog; folder: string }> {
  const folder = scratchFolder();
  const log = await openNewLog(join(folder, 'log.jsonl'), {}, new HandClock());
  rmSync(log.path);
  await expect(log.append('reading', { value: 42 })).rejects.toMatchObject({ code: 'disk' });
  expect(log.unsavedEntries).toBe(1);
  return { log, folder };
}

/** Where nothing can be written, whoever asks: a file in place of a folder. */
function noPlace(folder: string): string {
  writeFileSync(join(folder, 'file'), '');
  return join(folder, 'file', 'inside');
}

describe('a record that is only in memory', () => {
  it('is saved where the user says, under its own name in a folder, and goes on there', async () => {
    const { log, folder } = await inMemory();
    expect(await saveRecord(log, noPlace(folder))).toMatch(
      /cannot be written: part of the path is not a folder/,
    );
    expect(log.unsavedEntries).toBe(1);
    mkdirSync(join(folder, 'other'));
    const sentence = await saveRecord(log, join(folder, 'other'));
    expect(sentence).toBe(
      `The whole record is saved to ${join(folder, 'other', 'log.jsonl')}, and goes on there.`,
    );
    await log.append('reading', { value: 43 });
    expect(await closeRecord(log, nobody)).toBeUndefined();
    expect(await verifyLog(join(folder, 'other', 'log.jsonl'))).toMatchObject({ ok: true, entries: 3 });
  });

  it('is saved at the end in the first place that takes it, and the place is named', async () => {
    const { log, folder } = await inMemory();
    const sentence = await closeRecord(log, nobody, [noPlace(folder), folder]);
    expect(sentence).toBe(
      `${join(folder, 'log.jsonl')} could not be written to the end; the whole record is in ${log.path}: keep that file.`,
    );
    expect(await verifyLog(log.path)).toMatchObject({ ok: true, entries: 2 });
  });

  it('is asked about until a place takes it, when no usual one does', async () => {
    const { log, folder } = await inMemory();
    const asked: string[] = [];
    const answers = [noPlace(folder), join(folder, 'third.jsonl')];
    await closeRecord(
      log,
      async why => {
        asked.push(why);
        return answers.shift();
      },
      [noPlace(folder)],
    );
    expect(asked).toEqual([
      expect.stringMatching(/^1 entries are only in memory.*Nothing could be written to/),
      expect.stringMatching(/not a folder/),
    ]);
    expect(await verifyLog(join(folder, 'third.jsonl'))).toMatchObject({ ok: true, entries: 2 });
  });

  it('is an error in one sentence when nobody answers', async () => {
    const { log, folder } = await inMemory();
    await expect(closeRecord(log, nobody, [noPlace(folder)])).rejects.toMatchObject({ code: 'unsaved' });
    await saveRecord(log, join(folder, 'still.jsonl'));
    await log.close();
  });
});

describe('a record that a session is writing', () => {
  it('is not resumed by a second program, which says so in one sentence', async () => {
    const log = await openNewLog(join(scratchFolder(), 'log.jsonl'), {}, new HandClock());
    const second = await firstFire(['resume', log.path, '--no-mic', '--silent']);
    expect(second.exitCode).toBe(1);
    expect(second.stderr.trim()).toMatch(
      /^\S+log\.jsonl is being written already; close the program that does[^\n]*$/,
    );
    await log.append('reading', { value: 42 });
    await log.close();
  });
});

describe('a typed line', () => {
  it('asks to save only when it says so and names a place', () => {
    expect(savePlace('save to /media/stick')).toBe('/media/stick');
    expect(savePlace(' Save to  my folder/x.jsonl ')).toBe('my folder/x.jsonl');
    for (const line of ['save to', 'save', 'stop', 'do not save to /tmp', '42'])
      expect(savePlace(line)).toBeUndefined();
  });
});

describe('in a real terminal', () => {
  it('a lost disk is said, the session goes on, and the record is saved where the user types', async () => {
    const folder = scratchFolder();
    const terminal = new Tmux({ columns: 150, rows: 40 });
    onTestFinished(() => terminal.close());
    const [log, saved] = [join(folder, 'log.jsonl'), join(folder, 'saved.jsonl')];
    terminal.enter(`${process.execPath} --import tsx src/terminal/cli.ts --no-mic --silent --log ${log}`);
    await terminal.shows('type what you would ');
    rmSync(log);
    terminal.enter('say again');
    await terminal.shows('can no longer be written');
    await terminal.shows('type: save to');
    terminal.enter(`save to ${saved}`);
    await terminal.shows('goes on there');
    terminal.press('C-c');
    terminal.press('C-c');
    await terminal.ended();
    expect(terminal.screen()).toContain(`Record: ${saved}`);
    expect(await verifyLog(saved)).toMatchObject({ ok: true });
  });
});
