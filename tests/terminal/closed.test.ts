import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { firstFire } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Runs the program with a pipe for its keys, and answers each new "Say:" line that it prints.
 * @param answer what is typed; null ends the run
 * @returns its exit code
 */
function answering(
  args: readonly string[],
  answer: (choices: string) => string | null,
): Promise<number | null> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/terminal/cli.ts', ...args], {
    cwd: root,
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  let rest = '';
  let choices = '';
  let typed: string | null = null;
  let heard: 'nothing' | 'counted' | 'unclear' = 'nothing';
  const type = (text: string | null) => {
    typed = text;
    heard = 'nothing';
    if (text === null) child.kill('SIGTERM');
    else child.stdin.write(`${text}\n`);
  };
  child.stdout.on('data', (data: Buffer) => {
    const lines = `${rest}${data.toString()}`.split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) {
      if (line.startsWith('Say: ')) {
        choices = line.slice(5);
        type(answer(choices));
      } else if (/ heard /.test(line)) heard = / heard \?/.test(line) ? 'unclear' : 'counted';
      else if (/ says /.test(line)) {
        // Whoever types before the question is asked has to type again; and the same choices are printed once.
        if (heard === 'unclear') type(typed);
        else if (heard === 'counted' && choices.startsWith('"')) type(answer(choices));
      }
    }
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', resolve);
  });
}

const firstOf = (choices: string) => /"([^"]+)"/.exec(choices)?.[1] ?? '';

it('a session that breaks off is reported and resumed; closed, it is not gone on with', async () => {
  const log = join(scratchFolder(), 'log.jsonl');
  await answering(['--no-mic', '--silent', '--log', log], choices =>
    choices.includes('air temperature') ? null : firstOf(choices),
  );
  expect(await firstFire(['report', log])).toMatchObject({
    exitCode: 0,
    stdout: `${log}.html\n${log}.pdf\n`,
  });

  const ended = await answering(['resume', log, '--no-mic', '--silent'], choices =>
    choices.includes('end the session') ? 'end the session' : firstOf(choices),
  );
  expect(ended).toBe(3);
  expect(await firstFire(['verify', log])).toMatchObject({
    exitCode: 0,
    stdout: expect.not.stringMatching(/clock/),
  });
  expect((await firstFire(['report', log])).exitCode).toBe(0);

  const before = await readFile(log, 'utf8');
  const again = await firstFire(['resume', log, '--no-mic', '--silent']);
  expect([again.exitCode, again.stderr]).toEqual([
    1,
    `${log} is closed: its session was ended. Begin a new one.\n`,
  ]);
  expect(await readFile(log, 'utf8')).toBe(before);
});
