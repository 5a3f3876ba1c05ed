import { Client } from 'pg';
import { ArchiveError } from './archive-error.ts';
import type { Store, StoreRow, StoreValue } from './store.ts';

/** Taken by whoever writes, in any database that holds an archive; an arbitrary number. */
const WRITER_LOCK = 7_310_425;

const CONNECT_MS = 10_000;

/** A connection string as it may be shown: without password. */
function shownName(place: string): string {
  try {
    const url = new URL(place);
    url.password = '';
    url.search = '';
    return url.toString();
  } catch {
    // Sockets in a percent-encoded folder are no URL to everybody.
    return place.replace(/:[^:@/]*@/, '@').replace(/\?.*$/, '');
  }
}

/**
 * The archive in a PostgreSQL database (any version that is still maintained).
 * @throws ArchiveError when there is no connection
 */
export async function openPostgres(place: string): Promise<Store> {
  const name = shownName(place);
  const told = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (error) {
      if (error instanceof ArchiveError) throw error;
      const message = error instanceof Error ? error.message || error.name : String(error);
      throw new ArchiveError(`${name}: the database says "${message}"; nothing more was done.`, error);
    }
  };
  const client = await told(async () => {
    const opened = new Client({ connectionString: place, connectionTimeoutMillis: CONNECT_MS });
    // A connection that breaks between two questions is told by the next one.
    opened.on('error', () => undefined);
    await opened.connect();
    return opened;
  });
  const query = async (sql: string, values: readonly StoreValue[] = []): Promise<readonly StoreRow[]> => {
    let place = 0;
    const text = sql.replaceAll('?', () => `$${++place}`);
    const bound = values.map(value => (value instanceof Uint8Array ? Buffer.from(value) : value));
    return (await client.query<StoreRow>(text, bound)).rows;
  };
  return {
    name,
    all: (sql, values) => told(() => query(sql, values)),
    async alone(work) {
      await told(() => query('BEGIN'));
      try {
        await told(() => query(`SELECT pg_advisory_xact_lock(${WRITER_LOCK})`));
        const result = await work();
        await told(() => query('COMMIT'));
        return result;
      } catch (error) {
        // The connection may be gone; then the server has rolled back.
        await client.query('ROLLBACK').catch(() => undefined);
        throw error;
      }
    },
    close: () => client.end(),
  };
}
