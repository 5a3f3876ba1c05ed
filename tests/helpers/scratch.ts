import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder for one test, removed after it. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'first-fire-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
