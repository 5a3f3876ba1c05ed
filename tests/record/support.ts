import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type JsonObject, openNewLog, type RecordClock } from '../../src/record/index.ts';

/** A folder that is gone after the test. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'record-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A clock that moves when told to; both hands start at a fixed moment. */
export class HandClock implements RecordClock {
  wallMs = Date.UTC(2026, 10, 25, 9, 0, 0);
  steadyMs = 0;
  wall = (): Date => new Date(this.wallMs);
  monoMs = (): number => this.steadyMs;
  pass(ms: number): void {
    this.wallMs += ms;
    this.steadyMs += ms;
  }
}

/** Writes a record of `count` entries, 100 ms apart, and gives its lines. */
export async function writeRecord(
  path: string,
  count: number,
  dataOf: (index: number) => JsonObject = index => ({ value: index * 1.5, said: `reading ${index}` }),
): Promise<string[]> {
  const clock = new HandClock();
  const log = await openNewLog(path, { title: 'a test' }, clock);
  for (let i = 1; i < count; i++) {
    clock.pass(100);
    await log.append('reading', dataOf(i));
  }
  await log.close();
  return readLines(path);
}

export const readLines = (path: string): string[] => readFileSync(path, 'utf8').split('\n').slice(0, -1);

export const writeLines = (path: string, lines: readonly string[]): void =>
  writeFileSync(path, lines.map(line => `${line}\n`).join(''));

/**
 * Mounts a small file system of its own at a new folder inside `parent`.
 * @returns undefined where this user may not mount
 */
export function mountTmpfs(parent: string, options: string): string | undefined {
  const folder = mkdtempSync(join(parent, 'mount-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', options, 'none', folder], { stdio: 'ignore' });
  } catch {
    return undefined;
  }
  onTestFinished(() => {
    execFileSync('umount', ['--lazy', folder], { stdio: 'ignore' });
  });
  return folder;
}
