import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import { readLog, verifyLog } from '../../src/record/index.ts';
import { startFirstFire, startScript } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { Tmux } from '../helpers/tmux.ts';

const ASKED = 'Say: "card is right"';
const NOBODY = 'Nobody can answer any more: there are no keys and there is no microphone.';
const newLog = () => join(scratchFolder(), 'record.jsonl');
const byKeys = (log: string) => ['--no-mic', '--silent', '--log', log];
const resumeHint = (log: string, options = '--silent --no-mic') =>
  `Left before sign-off; go on with: npm start -- resume ${log} ${options}`;

/** A folder with a recorder in it as the program looks for, that hears a quiet room. */
function silentRecorder(): string {
  const folder = scratchFolder();
  const script = '#!/bin/sh\nwhile head -c 640 /dev/zero; do sleep 0.02; done\n';
  writeFileSync(join(folder, 'parec'), script, { mode: 0o755 });
  return folder;
}

/** The record is whole, and says that nobody could answer. */
async function expectLeft(log: string): Promise<void> {
  expect(await verifyLog(log)).toMatchObject({ ok: true });
  const { entries } = await readLog(log);
  expect(entries.filter(({ kind }) => kind === 'problem').map(({ data }) => data.sentence)).toContain(NOBODY);
}

/** As long as a program may take to end on a busy machine, and shorter than the forty seconds that it is left in. */
const ENDS_WITHIN_MS = 25_000;

it('a session that is left while time runs ends then, and not when that time is over', async () => {
  const session = startFirstFire(['rehearse', '--by-itself', '--speed', '3', '--log', newLog()], {
    keys: 'typed',
  });
  await session.tells('Bleeding the coolant');
  session.signal('SIGINT');
  session.signal('SIGINT');
  expect(await Promise.race([session.ended, sleep(ENDS_WITHIN_MS)])).toMatchObject({ exitCode: 4 });
});

describe('a session without a terminal', () => {
  it('ends with exit code 4, a sentence and the hint to resume when nobody is at the keys', async () => {
    const log = newLog();
    const { exitCode, stdout, stderr } = await startFirstFire(byKeys(log)).ended;
    expect(exitCode, stderr).toBe(4);
    expect(stdout).toContain(NOBODY);
    expect(stdout).toContain(resumeHint(log));
    await expectLeft(log);
  });

  it('takes the lines of a pipe, and ends in the same way at its end', async () => {
    const log = newLog();
    const session = startFirstFire(byKeys(log), { keys: 'typed' });
    await session.tells(ASKED);
    session.type('card is right');
    await session.tells('Say: "understood"');
    session.closeKeys();
    const { exitCode, stdout, stderr } = await session.ended;
    expect(exitCode, stderr).toBe(4);
    expect(stdout).toContain(resumeHint(log));
    await expectLeft(log);
  });

  it('can be resumed from there', async () => {
    const log = newLog();
    await startFirstFire(byKeys(log)).ended;
    const again = startFirstFire(['resume', log, '--no-mic', '--silent'], { keys: 'typed' });
    await again.tells('Say: ');
    again.closeKeys();
    expect((await again.ended).exitCode).toBe(4);
    expect(await verifyLog(log)).toMatchObject({ ok: true });
  });

  it('says that there is no microphone, and ends, where neither that nor keys are there', async () => {
    const log = newLog();
    // There are no recorders where there is nothing.
    const session = startFirstFire(['--silent', '--log', log], { env: { PATH: '/nowhere' } });
    const { exitCode, stdout, stderr } = await session.ended;
    expect(exitCode, stderr).toBe(4);
    expect(stdout).toMatch(/PROBLEM: No sound recorder[\s\S]*PROBLEM: Nobody can answer any more/);
    await expectLeft(log);
  });

  it('goes on by voice where there is a microphone, and says so', async () => {
    const log = newLog();
    const env = { PATH: `${silentRecorder()}:${process.env.PATH}` };
    const session = startFirstFire(['--silent', '--log', log], { env });
    await session.tells('PROBLEM: The keys have ended; it goes on by voice.');
    session.signal('SIGINT');
    const { exitCode, stdout } = await session.ended;
    expect(exitCode).toBe(4);
    expect(stdout).not.toContain(NOBODY);
    expect(stdout).toContain(resumeHint(log, '--silent'));
  });

  it('of a rehearsal is gone on with as one, and says that its engine is not there any more', async () => {
    const log = newLog();
    await startFirstFire(['rehearse', ...byKeys(log)]).ended;
    const { stdout } = await startFirstFire(['resume', log, '--no-mic', '--silent']).ended;
    expect(stdout).toContain('*REHEARSAL*');
    expect(stdout).toContain('the model of its engine is gone');
  });

  it.each(['SIGTERM', 'SIGHUP'] as const)(
    'closes its record and tells how to resume before %s ends it',
    async sent => {
      const log = newLog();
      const session = startFirstFire(byKeys(log), { keys: 'typed' });
      await session.tells(ASKED);
      session.signal(sent);
      const { signal, stderr } = await session.ended;
      expect(signal).toBe(sent);
      expect(stderr).toContain(resumeHint(log));
      expect(await verifyLog(log)).toMatchObject({ ok: true });
    },
  );

  it('is left by one Ctrl-C, even where npm hands it on a second time at once', async () => {
    const log = newLog();
    const session = startFirstFire(byKeys(log), { keys: 'typed' });
    await session.tells(ASKED);
    session.signal('SIGINT');
    session.signal('SIGINT');
    const { exitCode, stdout } = await session.ended;
    expect(stdout).toContain(resumeHint(log));
    expect(exitCode).toBe(4);
    expect(await verifyLog(log)).toMatchObject({ ok: true });
  });

  it('tells how to resume through npm too, which tells of the signal instead of the exit code', async () => {
    const log = newLog();
    const session = startFirstFire(byKeys(log), { keys: 'typed', npm: true });
    await session.tells(ASKED);
    session.signal('SIGINT');
    expect((await session.ended).stdout).toContain(resumeHint(log));
    expect(await verifyLog(log)).toMatchObject({ ok: true });
  });
});

describe.each([
  ['a whole screen', 'xterm', 'Ctrl-C again leaves, any other key stays.', '1/14 Job'],
  ['TERM=dumb', 'dumb', 'Ctrl-C again leaves; type anything to stay.', ASKED],
])('a session in a terminal with %s', (_, term, warning, shown) => {
  /** Started by the command of the script in a shell, where it shows its first question. */
  async function session() {
    const log = newLog();
    const terminal = new Tmux({ columns: 200, rows: 50, env: { TERM: term } });
    onTestFinished(() => terminal.close());
    const [, ...words] = startScript;
    const run = [process.execPath, ...words, ...byKeys(log)].join(' ');
    terminal.enter(`${run}; printf 'ended with %s\\n' $?`);
    await terminal.shows(shown);
    return { log, terminal };
  }

  /** Left, with the hint, and the shell is there again. */
  async function expectEnd(terminal: Tmux, log: string): Promise<void> {
    const screen = await terminal.shows('ended with 4');
    expect(screen).toContain('Left before sign-off; go on with: npm start -- resume');
    expect(await verifyLog(log)).toMatchObject({ ok: true });
  }

  /** Ctrl-D ends the keys; on a whole screen it asks as Ctrl-C does, and Ctrl-C leaves. */
  async function leave(terminal: Tmux): Promise<void> {
    terminal.press('C-d');
    if (term === 'dumb') return;
    await terminal.shows(warning);
    terminal.press('C-c');
  }

  it('goes on after one Ctrl-C, and says what a second one does', async () => {
    const { log, terminal } = await session();
    terminal.press('C-c');
    await terminal.shows(warning);
    terminal.enter('card is right');
    await terminal.shows('understood');
    await leave(terminal);
    await expectEnd(terminal, log);
  });

  it('is left by the second Ctrl-C', async () => {
    const { log, terminal } = await session();
    terminal.press('C-c');
    await terminal.shows(warning);
    // At once the same signal is the one that npm hands on.
    await sleep(200);
    terminal.press('C-c');
    await expectEnd(terminal, log);
  });

  it('is left by Ctrl-D, on a whole screen once Ctrl-C says so too', async () => {
    const { log, terminal } = await session();
    await leave(terminal);
    await expectEnd(terminal, log);
  });
});

describe('whoever reads what is printed', () => {
  const readBy = (command: string, reader: string) =>
    spawnSync('sh', ['-c', `${startScript.join(' ')} ${command} | ${reader}`], {
      encoding: 'utf8',
      // Only what hangs is given up.
      timeout: 600_000,
    });

  it('may leave before its end, without a word about it', () => {
    const { stdout, stderr } = readBy('engine show demo-six', 'head -n 1');
    expect(stdout).toMatch(/^Demo six/);
    expect(stderr).toBe('');
  });

  it('may leave a session that has nobody else: its record is closed all the same', async () => {
    const log = newLog();
    readBy(`${byKeys(log).join(' ')} < /dev/null`, 'head -n 1');
    await expectLeft(log);
  });
});
