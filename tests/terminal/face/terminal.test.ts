import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { widthOf } from '../../../src/terminal/face/text.ts';
import { Tmux, type TmuxOptions } from '../../helpers/tmux.ts';

const PROGRAM = fileURLToPath(new URL('../programs/face.ts', import.meta.url));
const HINT = 'Esc = STOP';

let folder: string;
let terminal: Tmux | undefined;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'first-fire-face-'));
});

afterEach(() => {
  terminal?.close();
  terminal = undefined;
  rmSync(folder, { recursive: true, force: true });
});

/** A shell that has said something and has noted its settings, and now runs the face. */
async function runFace(options: Partial<TmuxOptions> = {}): Promise<Tmux> {
  terminal = new Tmux({ columns: 80, rows: 24, ...options });
  terminal.enter('BEFORE=$(stty -a); printf "said %s\\n" before');
  await terminal.shows('said before');
  terminal.enter(`sh -c 'echo $$ > ${folder}/pid; exec ${process.execPath} --import tsx ${PROGRAM}'`);
  await terminal.shows(HINT);
  return terminal;
}

/** The shell is there again as it was: its settings, its cursor, its lines. */
async function expectClean(face: Tmux): Promise<void> {
  await face.ended();
  face.enter('test "$BEFORE" = "$(stty -a)" && echo settings are "the same"');
  const screen = await face.shows('settings are the same');
  expect(screen).toContain('said before');
  expect(screen).not.toContain(HINT);
  expect(face.fact('cursor_flag')).toBe('1');
  expect(face.fact('alternate_on')).toBe('0');
}

const signal = (name: NodeJS.Signals) =>
  process.kill(Number(readFileSync(join(folder, 'pid'), 'utf8')), name);

describe('the face in a real terminal', () => {
  it('takes typed lines and Escape, follows a resize, and leaves the terminal clean', async () => {
    const face = await runFace();
    expect(face.fact('cursor_flag')).toBe('0');
    face.enter('reading');
    await face.shows('*** ENGINE RUNNING ***');
    face.press('Escape');
    await face.shows('!!! STOPPED - KEY OFF');
    face.resize(60, 20);
    const small = await face.shows('Esc = STOP   Enter = send   Ctrl-C twice = leave\n');
    expect(small.trimEnd().split('\n')).toHaveLength(20);
    for (const line of small.split('\n')) expect(widthOf(line)).toBeLessThanOrEqual(60);
    face.resize(120, 40);
    const large = await face.shows('PRACTICE ONLY');
    expect(large.trimEnd().split('\n')).toHaveLength(40);
    // The size is among the settings that are compared.
    face.resize(80, 24);
    face.press('C-c');
    await face.shows('Ctrl-C again leaves');
    face.press('C-c');
    await face.shows('The face is closed.');
    await expectClean(face);
  });

  it('leaves the terminal clean after a crash, and the error can be read', async () => {
    const face = await runFace({ rows: 50 });
    face.enter('crash');
    await face.shows('thrown on purpose');
    await expectClean(face);
  });

  it.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)(
    'leaves the terminal clean after %s, and ends by it',
    async name => {
      const face = await runFace();
      signal(name);
      await face.ended();
      face.enter('printf "ended with %s\\n" $?');
      const codes = { SIGTERM: 143, SIGINT: 130, SIGHUP: 129 };
      await face.shows(`ended with ${codes[name]}`);
      await expectClean(face);
    },
  );

  it('writes no colours where NO_COLOR is set, and turns banners over instead', async () => {
    const face = await runFace({ env: { NO_COLOR: '1' } });
    face.enter('reading');
    await face.shows('*** ENGINE RUNNING ***');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences are what is looked for
    const styles = new Set([...face.styledScreen().matchAll(/\x1b\[([\d;]*)m/g)].map(([, codes]) => codes));
    const codes = new Set([...styles].flatMap(each => each?.split(';') ?? []));
    expect(
      [...codes].filter(code => /^[349]\d$|^10\d$/.test(code) && code !== '39' && code !== '49'),
    ).toEqual([]);
    expect(codes).toContain('7');
  });

  it('writes plain lines where TERM is dumb', async () => {
    terminal = new Tmux({ columns: 80, rows: 24, env: { TERM: 'dumb' } });
    terminal.enter(`${process.execPath} --import tsx ${PROGRAM}`);
    await terminal.shows('Say: "coolant full" | "not yet"');
    terminal.enter('stopped');
    await terminal.shows('== STOPPED - KEY OFF');
    expect(terminal.fact('alternate_on')).toBe('0');
    expect(terminal.fact('cursor_flag')).toBe('1');
  });
});

describe('the face without a terminal', () => {
  it('writes plain lines without control codes and reads lines from its input', () => {
    const { stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', PROGRAM], {
      input: 'resting\nstopped\ncrash\n',
      encoding: 'utf8',
    });
    expect(stdout).toContain('Crank until pressure: 01:23 left\n');
    expect(stdout).toContain('== STOPPED - KEY OFF');
    expect(stdout.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
    expect(stderr).toContain('thrown on purpose');
  });
});
