import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const MAIN = fileURLToPath(new URL('../../helpers/calc-main.ts', import.meta.url));

const run = (args: readonly string[], input = '') => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', MAIN, 'calc', ...args], {
    input,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
};

describe('calc as a process', () => {
  test('reads standard input, writes the answer to standard output and exits with 0', () => {
    const readings = [0, 60, 120, 180, 240, 300].map(t => `${t},${95 - 85 * Math.exp(-t / 500)}`).join('\n');
    const { status, stdout, stderr } = run(['warmup', '--opens', '82', '--fully-open', '95'], readings);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/^warm-up: warming/);
  });

  test('says in one sentence on standard error what is wrong with a file, and exits with 2', () => {
    const { status, stdout, stderr } = run(['idle', 'no-such-file.csv', '--min', '650', '--max', '750']);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toBe(
      'The file no-such-file.csv cannot be read: there is no such file or folder; check its name, or give - for standard input.\n',
    );
  });
});
