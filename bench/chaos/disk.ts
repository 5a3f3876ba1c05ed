import { execFile } from 'node:child_process';
import { mkdir, open, rm, statfs, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { promisify } from 'node:util';

const run = promisify(execFile);
/** The server takes records of tablets only where half of this is free. */
const SIZE = '1G';
const FLOODED_AT_ONCE_BYTES = 4 * 1024 * 1024;

/** A disk for the shop's folder alone, so that it can be full, and slow, and nothing else is. */
export interface Disk {
  readonly folder: string;
  /** In a word, for the table. */
  readonly kind: string;
  /** Leaves no room, until what comes back is called; null where the disk is not ours to fill. */
  readonly fill: (() => Promise<() => Promise<void>>) | null;
  /** Writes and syncs without a pause for so long. */
  flood(ms: number): Promise<void>;
  remove(): Promise<void>;
}

/**
 * A file of a gigabyte with a file system in it where that can be mounted (it takes root), else the disk in memory,
 * else a folder like any other, that cannot be filled.
 */
export async function openDisk(scratch: string): Promise<Disk> {
  const folder = join(scratch, 'disk');
  await mkdir(folder);
  const mounts: readonly (readonly [kind: string, mount: () => Promise<unknown>])[] = [
    ['ext4 in a file', () => loop(join(scratch, 'disk.img'), folder)],
    ['a disk in memory', () => run('mount', ['-t', 'tmpfs', '-o', `size=${SIZE}`, 'chaos', folder])],
  ];
  for (const [kind, mount] of mounts) {
    const isMounted = await mount().then(
      () => true,
      () => false,
    );
    if (isMounted)
      return {
        folder,
        kind,
        fill: () => fill(folder),
        flood: ms => flood(folder, ms),
        remove: async () => void (await run('umount', ['-l', folder])),
      };
  }
  const kind = 'a folder of a disk that others use, too';
  return { folder, kind, fill: null, flood: ms => flood(folder, ms), remove: async () => {} };
}

async function loop(image: string, folder: string): Promise<void> {
  await writeFile(image, '');
  await truncate(image, 1024 ** 3);
  await run('mkfs.ext4', ['-q', '-m', '0', image]);
  await run('mount', ['-o', 'loop', image, folder]);
}

async function fill(folder: string): Promise<() => Promise<void>> {
  const path = join(folder, 'filler');
  const { bavail, bsize } = await statfs(folder);
  // A little too much: fallocate takes nothing then, so it is asked for less and less.
  for (let bytes = bavail * bsize; bytes > 0; bytes -= 64 * bsize)
    if (
      await run('fallocate', ['-l', String(bytes), path]).then(
        () => true,
        () => false,
      )
    )
      break;
  const file = await open(path, 'a');
  try {
    for (;;) await file.write(Buffer.alloc(bsize));
  } catch {
    // Now it is full.
  } finally {
    await file.close();
  }
  return () => rm(path, { force: true });
}

async function flood(folder: string, ms: number): Promise<void> {
  const path = join(folder, 'flood');
  const untilMs = performance.now() + ms;
  const block = Buffer.alloc(FLOODED_AT_ONCE_BYTES, 1);
  while (performance.now() < untilMs) {
    try {
      const file = await open(path, 'w');
      await file
        .write(block)
        .then(() => file.sync())
        .finally(() => file.close());
    } catch {
      // It is full as well.
      await wait(100);
    }
  }
  await rm(path, { force: true });
}
