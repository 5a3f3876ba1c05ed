import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Command } from 'commander';
import { vi } from 'vitest';
import { registerReport } from '../../src/terminal/report-command.ts';
import { registerSigning } from '../../src/terminal/signing-commands.ts';
import { registerVerify } from '../../src/terminal/verify-command.ts';
import { goUntil } from '../helpers/session-rig.ts';
import { sessionFor, tempFolder } from './support.ts';

/** Runs one command as the command line does; gives what it printed and its exit code. */
export async function run(...words: readonly string[]): Promise<{ lines: string[]; code: number }> {
  const lines: string[] = [];
  const keep = (line: unknown) => void lines.push(String(line));
  const spies = [vi.spyOn(console, 'log'), vi.spyOn(console, 'error')].map(spy =>
    spy.mockImplementation(keep),
  );
  const codeBefore = process.exitCode;
  process.exitCode = 0;
  const program = new Command('first-fire').exitOverride();
  registerReport(program);
  registerSigning(program);
  registerVerify(program);
  try {
    await program.parseAsync(words, { from: 'user' });
    return { lines, code: Number(process.exitCode) };
  } finally {
    process.exitCode = codeBefore;
    for (const spy of spies) spy.mockRestore();
  }
}

export const read = (path: string): string => readFileSync(path, 'utf8');

export const isPdf = (path: string): boolean => readFileSync(path).subarray(0, 5).toString() === '%PDF-';

/** The record of a start in which all went well. */
export async function signedOff(): Promise<string> {
  const path = join(tempFolder(), 'log.jsonl');
  const rig = await sessionFor(path);
  await goUntil(rig);
  await rig.record.close();
  return path;
}
