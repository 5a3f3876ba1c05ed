import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { pageFolder } from './serve.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const cache = join(root, '.cache');
const stamp = join(cache, 'tablet-built');
const lock = join(cache, 'tablet-building');
const LOCK_STALE_MS = 5 * 60_000;
const LOOK_AGAIN_MS = 200;

/** All that the page is made of. */
function fingerprint(): string {
  const hash = createHash('sha256');
  const folders = ['src', 'machines', 'prompts'];
  for (const folder of folders) {
    const names = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).sort();
    for (const name of names) {
      const path = join(root, folder, name);
      if (statSync(path).isFile()) hash.update(name).update(readFileSync(path));
    }
  }
  for (const name of ['package-lock.json', 'vite.tablet.config.ts'])
    hash.update(readFileSync(join(root, name)));
  return hash.digest('hex');
}

/** Whether this process may build: no other does. The lock of one that died is taken over. */
function tookLock(): boolean {
  try {
    mkdirSync(lock);
    return true;
  } catch {
    const since = statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? 0;
    if (Date.now() - since > LOCK_STALE_MS) rmSync(lock, { recursive: true, force: true });
    return false;
  }
}

/** Builds the page unless what was built is of this very source; test files that run side by side build it once. */
export async function builtPage(): Promise<string> {
  mkdirSync(cache, { recursive: true });
  const wanted = fingerprint();
  const isBuilt = () => existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted;
  while (!isBuilt()) {
    if (!tookLock()) {
      await wait(LOOK_AGAIN_MS);
      continue;
    }
    try {
      rmSync(stamp, { force: true });
      await build({ configFile: join(root, 'vite.tablet.config.ts'), logLevel: 'error' });
      writeFileSync(stamp, wanted);
    } finally {
      rmSync(lock, { recursive: true, force: true });
    }
  }
  return pageFolder;
}
