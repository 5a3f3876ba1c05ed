import { stat } from 'node:fs/promises';
import { homedir, tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { RecordError, type RecordLog } from '../record/index.ts';

/**
 * Saves the whole record to a file, or to a folder under its own name, and goes on there.
 * @returns one sentence: where it is, or why it could not be saved
 */
export async function saveRecord(record: RecordLog, place: string): Promise<string> {
  const isFolder = await stat(place).then(
    found => found.isDirectory(),
    () => false,
  );
  const path = isFolder ? join(place, basename(record.path)) : place;
  try {
    await record.saveTo(path);
    return `The whole record is saved to ${path}, and goes on there.`;
  } catch (error) {
    if (error instanceof RecordError) return error.message;
    throw error;
  }
}

/** Beside the record, where the user is, at home, and where the system keeps what is passing. */
const usualPlaces = (record: RecordLog): string[] => [
  dirname(record.path),
  process.cwd(),
  homedir(),
  tmpdir(),
];

/**
 * Closes a record. One that is only in memory, because its disk failed, is saved to the first place that takes
 * it; where none does, `ask` is asked for places until one does, or gives up with undefined, as it does where nobody
 * can be asked.
 * @returns a sentence that names the place, when it is another than before
 * @throws RecordError `unsaved` when no place took it
 */
export async function closeRecord(
  record: RecordLog,
  ask: (why: string) => Promise<string | undefined> = async () => undefined,
  places = usualPlaces(record),
): Promise<string | undefined> {
  try {
    await record.close();
    return undefined;
  } catch (error) {
    if (!(error instanceof RecordError) || error.code !== 'unsaved') throw error;
    const before = record.path;
    await saveSomewhere(record, ask, places, error);
    await record.close();
    return `${before} could not be written to the end; the whole record is in ${record.path}: keep that file.`;
  }
}

async function saveSomewhere(
  record: RecordLog,
  ask: (why: string) => Promise<string | undefined>,
  places: readonly string[],
  unsaved: RecordError,
): Promise<void> {
  const name = basename(record.path).replace(/(\.jsonl)?$/, `.rescued-${process.pid}.jsonl`);
  for (const place of new Set(places)) {
    await saveRecord(record, join(place, name));
    if (record.unsavedEntries === 0) return;
  }
  let why = `${unsaved.message} Nothing could be written to ${places.join(', ')}.`;
  for (;;) {
    const place = await ask(why);
    if (place === undefined) throw new RecordError('unsaved', why);
    why = await saveRecord(record, place);
    if (record.unsavedEntries === 0) return;
  }
}
