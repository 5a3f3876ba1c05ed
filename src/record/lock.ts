import {
  closeSync,
  fsyncSync,
  ftruncateSync,
  linkSync,
  openSync,
  readFileSync,
  renameSync,
  unlinkSync,
  writeSync,
} from 'node:fs';
import { type FileHandle, open, rm, unlink } from 'node:fs/promises';
import { hostname } from 'node:os';
import { z } from 'zod';
import { systemCause, systemCode } from '../files/cause.ts';
import { RecordError } from './record-error.ts';

interface Lock {
  release(): Promise<void>;
}

const holderSchema = z.object({
  pid: z.int().positive(),
  host: z.string(),
  /** Tells a process from a later one with the same number; empty where the system does not say. */
  born: z.string(),
});
type Holder = z.infer<typeof holderSchema>;

/**
 * Takes the right to write `path`, kept in the file `<path>.lock`. The lock of a process that has died
 * (power loss, crash) is taken over.
 * @throws RecordError `inUse` when another process has it, `unwritable` when the folder takes no file
 */
export async function takeLock(path: string): Promise<Lock> {
  const lockPath = `${path}.lock`;
  const content = JSON.stringify({ pid: process.pid, host: hostname(), born: birthMark(process.pid) });
  const lock: Lock = { release: () => rm(lockPath, { force: true }) };
  for (;;) {
    try {
      await createWith(lockPath, content);
      return lock;
    } catch (error) {
      if (systemCode(error) !== 'EEXIST') {
        throw new RecordError(
          'unwritable',
          `${path} cannot be written: ${systemCause(error)}; choose another place.`,
          error,
        );
      }
    }
    const stale = takeOver(lockPath, content);
    if (stale === 'taken') return lock;
    if (stale === 'held') {
      throw new RecordError(
        'inUse',
        `${path} is being written already; close the program that does, or delete ${lockPath} if there is none.`,
      );
    }
  }
}

async function createWith(lockPath: string, content: string): Promise<void> {
  const file: FileHandle = await open(lockPath, 'wx', 0o600);
  try {
    await file.writeFile(content);
    // Else a power loss could leave an empty lock that nobody can tell to be stale.
    await file.sync();
  } catch (error) {
    await unlink(lockPath);
    throw error;
  } finally {
    await file.close();
  }
}

/**
 * Takes the place of a holder that has died, or makes room for the next attempt. Synchronous from the look to the
 * end, so that nothing of this process comes between them. Renaming first lets one of two processes that saw the
 * same stale lock notice that it came second; written over rather than made anew, for that takes no room on a full
 * disk.
 * @returns `held` by somebody who may live; `free`: to be tried again
 */
function takeOver(lockPath: string, content: string): 'taken' | 'held' | 'free' {
  const asidePath = `${lockPath}.${process.pid}`;
  try {
    const seen = readFileSync(lockPath, 'utf8');
    if (mayLive(seen)) return 'held';
    renameSync(lockPath, asidePath);
    if (readFileSync(asidePath, 'utf8') !== seen) {
      renameSync(asidePath, lockPath);
      return 'held';
    }
    const isTaken = writeOver(asidePath, content) && linkHere(asidePath, lockPath);
    unlinkSync(asidePath);
    return isTaken ? 'taken' : 'free';
  } catch (error) {
    // Somebody else removed it first: the next attempt to create it decides.
    return systemCode(error) === 'ENOENT' ? 'free' : 'held';
  }
}

function writeOver(path: string, content: string): boolean {
  const file = openSync(path, 'r+');
  try {
    writeSync(file, content, 0);
    ftruncateSync(file, Buffer.byteLength(content));
    fsyncSync(file);
    return true;
  } catch {
    return false;
  } finally {
    closeSync(file);
  }
}

/** Whole or not at all; false where somebody else was quicker, or the file system knows no second names. */
function linkHere(path: string, lockPath: string): boolean {
  try {
    linkSync(path, lockPath);
    return true;
  } catch {
    return false;
  }
}

/** When in doubt the holder counts as alive. */
function mayLive(content: string): boolean {
  const holder = parseHolder(content);
  if (holder === undefined || holder.host !== hostname()) return true;
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    return systemCode(error) !== 'ESRCH';
  }
  const born = birthMark(holder.pid);
  return born === '' || holder.born === '' || born === holder.born;
}

function parseHolder(content: string): Holder | undefined {
  try {
    return holderSchema.safeParse(JSON.parse(content)).data;
  } catch {
    return undefined;
  }
}

/** The boot and the tick at which a process began, on Linux; proc(5), field 22 of /proc/pid/stat. */
function birthMark(pid: number): string {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const status = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // The program's name, field 2, may hold blanks and brackets; the fields behind it do not.
    const startTick = status.slice(status.lastIndexOf(')') + 2).split(' ')[19];
    return `${boot}/${startTick}`;
  } catch {
    return '';
  }
}
