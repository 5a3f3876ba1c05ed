import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, onTestFinished } from 'vitest';

/** A folder for one test, removed after it. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'first-fire-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A folder for all tests of a file, removed after them; called where they begin. */
export function scratchFolderForAll(): string {
  const folder = mkdtempSync(join(tmpdir(), 'first-fire-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
