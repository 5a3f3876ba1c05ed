export type StoreValue = string | number | Uint8Array | null;
export type StoreRow = Readonly<Record<string, unknown>>;

/** What the archive needs of a database. In SQL, values stand as `?`. */
export interface Store {
  /** How the place is named to people; never holds a password. */
  readonly name: string;
  all(sql: string, values?: readonly StoreValue[]): Promise<readonly StoreRow[]>;
  /** Runs work as one transaction, all or nothing, with no other writer beside it. */
  alone<T>(work: () => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/** The smaller of what both databases take in one statement (SQLite 32766, PostgreSQL 65535). */
const MOST_VALUES = 30_000;

/** Inserts rows, many in one statement. Rows all have as many values as there are columns. */
export async function insertAll(
  store: Store,
  table: string,
  columns: readonly string[],
  rows: readonly (readonly StoreValue[])[],
): Promise<void> {
  const together = Math.min(ROWS_TOGETHER, Math.floor(MOST_VALUES / columns.length));
  const row = `(${columns.map(() => '?').join(', ')})`;
  for (let start = 0; start < rows.length; start += together) {
    const some = rows.slice(start, start + together);
    const sql = `INSERT INTO ${table} (${columns.join(', ')}) VALUES ${some.map(() => row).join(', ')}`;
    await store.all(sql, some.flat());
  }
}

/** Fewer round trips to a server; more rows in one statement gain nothing. */
const ROWS_TOGETHER = 100;
