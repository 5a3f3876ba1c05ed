import { DatabaseSync } from '@photostructure/sqlite';
import { ArchiveError } from './archive-error.ts';
import type { Store, StoreRow, StoreValue } from './store.ts';

/** How long to wait for another program that is writing. */
const BUSY_MS = 10_000;

/** Holds what is searched of 100,000 sessions, so that a second search reads nothing from the disk. */
const CACHE_KIB = 64_000;

const causes: readonly (readonly [pattern: RegExp, words: string])[] = [
  [/not a database|malformed|corrupt/i, 'is no archive, or is damaged; name another file'],
  [/readonly|read-only/i, 'can only be read; choose another place for the archive'],
  [/unable to open/i, 'cannot be opened; look whether its folder exists and may be written'],
  [/disk is full|full/i, 'cannot take more: the disk is full; nothing of this batch was added'],
  [/locked|busy/i, 'is in use by another program; try again when that is done'],
];

/**
 * The archive in one file. Transactions are on the disk when they are confirmed.
 * @throws ArchiveError when the file cannot be used
 */
export function openSqlite(path: string): Store {
  const asError = (error: unknown): ArchiveError => {
    const message = error instanceof Error ? error.message : String(error);
    const words = causes.find(([pattern]) => pattern.test(message))?.[1] ?? `cannot be used (${message})`;
    return new ArchiveError(`${path} ${words}.`, error);
  };
  const told = <T>(work: () => T): T => {
    try {
      return work();
    } catch (error) {
      throw asError(error);
    }
  };

  const database = told(() => {
    const opened = new DatabaseSync(path, { timeout: BUSY_MS });
    try {
      opened.exec(`PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA cache_size = -${CACHE_KIB}`);
      return opened;
    } catch (error) {
      opened.close();
      throw error;
    }
  });
  return {
    name: path,
    async all(sql: string, values: readonly StoreValue[] = []): Promise<readonly StoreRow[]> {
      return told(() =>
        database
          .prepare(sql)
          .all(...values)
          .map(row => ({ ...row })),
      );
    },
    async alone(work) {
      told(() => database.exec('BEGIN IMMEDIATE'));
      try {
        const result = await work();
        told(() => database.exec('COMMIT'));
        return result;
      } catch (error) {
        // SQLite has rolled back by itself after some errors, such as a full disk.
        if (database.isTransaction) database.exec('ROLLBACK');
        throw error;
      }
    },
    async close() {
      database.close();
    },
  };
}
