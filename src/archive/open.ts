import { existsSync } from 'node:fs';
import { Archive } from './archive.ts';
import { ArchiveError } from './archive-error.ts';
import type { Store } from './store.ts';

/** Whether a place names a PostgreSQL database rather than a file. */
const isPostgres = (place: string): boolean => /^postgres(ql)?:\/\//.test(place);

/** Each database's library is loaded only by those who use it. */
const openStore = async (place: string): Promise<Store> =>
  isPostgres(place)
    ? (await import('./postgres-store.ts')).openPostgres(place)
    : (await import('./sqlite-store.ts')).openSqlite(place);

/**
 * Opens the archive at a place: the path of a SQLite file, or the connection string of a PostgreSQL database
 * (postgres://user@host:port/database).
 * @param make whether a file that is not there is made
 * @throws ArchiveError
 */
export async function openArchive(place: string, make = true): Promise<Archive> {
  if (!make && !isPostgres(place) && !existsSync(place))
    throw new ArchiveError(
      `There is no archive at ${place}; add records with "archive add", or name another with --archive.`,
    );
  const store = await openStore(place);
  try {
    return await Archive.in(store);
  } catch (error) {
    await store.close();
    throw error;
  }
}
