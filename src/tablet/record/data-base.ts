/** One line of a record, as it will stand in the file. */
export interface KeptLine {
  readonly record: string;
  readonly seq: number;
  readonly line: string;
}

/** What is known of a record without reading it. */
export interface KeptRecord {
  readonly id: string;
  readonly startedAt: string;
  readonly vehicle: string;
  readonly profile: string;
  /** `open` until its session is over; then how it ended. */
  readonly state: 'open' | 'signedOff' | 'ended';
  /** Whether the laptop of the shop has it: kept, or marked because it does not verify, or cannot be confirmed. */
  readonly sent: false | 'kept' | 'marked' | 'doubted';
  /** The bay of whose session on the laptop this is a copy; absent or null for what was recorded here. */
  readonly copyOf?: string | null;
}

const NAME = 'first-fire';
const VERSION = 1;

/** An answer of the data base; rejects with its error. */
const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the data base gives no reason'));
  });

/** Settles when everything in the transaction is kept for good. */
export const kept = (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    const fail = () => reject(transaction.error ?? new Error('the data base gives no reason'));
    transaction.onabort = fail;
    transaction.onerror = fail;
  });

/** The page's own data base, made when it is not there yet. */
export async function openDataBase(): Promise<IDBDatabase> {
  const opening = indexedDB.open(NAME, VERSION);
  opening.onupgradeneeded = () => {
    opening.result.createObjectStore('lines', { keyPath: ['record', 'seq'] });
    opening.result.createObjectStore('records', { keyPath: 'id' });
  };
  return answerOf(opening);
}

/** All lines of one record, from the first on. */
export function linesOf(dataBase: IDBDatabase, record: string): Promise<KeptLine[]> {
  const store = dataBase.transaction('lines').objectStore('lines');
  return answerOf(store.getAll(IDBKeyRange.bound([record, 0], [record, Number.MAX_SAFE_INTEGER])));
}

export const allRecords = (dataBase: IDBDatabase): Promise<KeptRecord[]> =>
  answerOf(dataBase.transaction('records').objectStore('records').getAll());

export const recordOf = (dataBase: IDBDatabase, id: string): Promise<KeptRecord | undefined> =>
  answerOf(dataBase.transaction('records').objectStore('records').get(id));

/**
 * Keeps lines of a copy of the laptop's session. Of copies one is enough: those of other sessions, and this one once
 * its session is over, are on the laptop whole, and go.
 */
export async function keepCopy(
  dataBase: IDBDatabase,
  about: KeptRecord,
  lines: readonly KeptLine[],
): Promise<void> {
  const transaction = dataBase.transaction(['lines', 'records'], 'readwrite');
  const [records, store] = [transaction.objectStore('records'), transaction.objectStore('lines')];
  const all: KeptRecord[] = await answerOf(records.getAll());
  for (const { id, copyOf } of all) {
    if (!copyOf || (id === about.id && about.state === 'open')) continue;
    records.delete(id);
    store.delete(IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]));
  }
  if (about.state === 'open') {
    records.put(about);
    for (const line of lines) store.put(line);
  }
  await kept(transaction);
}

/** Changes what is known of a record; one that is not there is left alone. */
export async function noteOn(
  dataBase: IDBDatabase,
  id: string,
  change: Partial<Pick<KeptRecord, 'state' | 'sent' | 'copyOf'>>,
): Promise<void> {
  const transaction = dataBase.transaction('records', 'readwrite', { durability: 'strict' });
  const store = transaction.objectStore('records');
  const before: KeptRecord | undefined = await answerOf(store.get(id));
  if (before) store.put({ ...before, ...change });
  await kept(transaction);
}
