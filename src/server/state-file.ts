import { randomUUID } from 'node:crypto';
import { chmod, open, readFile, rename, rm } from 'node:fs/promises';
import type { z } from 'zod';

/** Files of the server are nobody else's to read. */
export const OWNER_ONLY = 0o600;

/** Writes a whole file or nothing, to the disk, readable by its owner only. */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const draft = `${path}.${randomUUID()}.new`;
  try {
    const file = await open(draft, 'wx', OWNER_ONLY);
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(draft, path);
  } catch (cause) {
    await rm(draft, { force: true });
    throw cause;
  }
}

/** The text of a file of ours, or null when there is none. Its rights are put right on the way. */
export async function readOwn(path: string): Promise<string | null> {
  try {
    await chmod(path, OWNER_ONLY);
    return await readFile(path, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}

/** What a JSON file of ours holds; null when there is none, or when it is not what it should be. */
export async function readJson<T>(path: string, schema: z.ZodType<T>): Promise<T | null> {
  const text = await readOwn(path);
  if (text === null) return null;
  try {
    const parsed = schema.safeParse(JSON.parse(text));
    return parsed.success ? parsed.data : null;
  } catch {
    // A file that is not JSON is worth as little as none: everybody pairs again.
    return null;
  }
}
