import { stat } from 'node:fs/promises';
import { readLog } from '../../record/index.ts';
import { readHeader } from '../../session/header.ts';
import type { SessionRow } from '../protocol/index.ts';

const ENDS = { signedOff: 'signedOff', ended: 'ended' } as const;
const isEnd = (outcome: unknown): outcome is keyof typeof ENDS =>
  typeof outcome === 'string' && Object.hasOwn(ENDS, outcome);

/** The name of a record that did not verify when it was sent in. */
export const DAMAGED = '.damaged';

/** The name of a record that goes on, elsewhere, from one of the laptop's own. */
export const FORK = '.fork';

const UPLOAD = 'upload-';

/** The name under which a record that was sent in is kept, by the SHA-256 of its content. */
export const uploadName = (digest: string) => `${UPLOAD}${digest.slice(0, 32)}`;

/** Whether a tablet sent it in that had run without the server. */
export const isUpload = (id: string) => id.startsWith(UPLOAD);

export const isFork = (id: string) => id.endsWith(FORK);

/** Whether its row tells of this text. */
export const tellsOf = (text: string, { vehicle, engine, profile }: SessionRow) =>
  `${vehicle}\n${engine}\n${profile}`.toLowerCase().includes(text.toLowerCase());

/** What the list of sessions says of one record. Never throws: a record that cannot be read is damaged. */
async function sessionRow(id: string, path: string): Promise<SessionRow> {
  const row = {
    id,
    startedAt: null,
    vehicle: null,
    engine: null,
    profile: null,
    entries: 0,
    uploaded: isUpload(id),
    fork: isFork(id),
  };
  try {
    const { entries, fault, tornBytes } = await readLog(path);
    const [opened] = entries;
    const header = opened ? readHeader(opened.data) : null;
    const closed = entries.findLast(entry => entry.kind === 'closed')?.data.outcome;
    // A torn last line is what a power loss leaves, and no damage.
    const damaged = (fault !== undefined && tornBytes === undefined) || id.endsWith(DAMAGED);
    return {
      ...row,
      startedAt: opened?.at ?? null,
      vehicle: header?.job.vehicle ?? null,
      engine: header?.job.engine ?? null,
      profile: header?.profile.name ?? null,
      entries: entries.length,
      state: damaged ? 'damaged' : isEnd(closed) ? ENDS[closed] : 'brokenOff',
    };
  } catch {
    return { ...row, state: 'damaged' };
  }
}

/** Changes when the file does. */
export async function markOf(path: string): Promise<string> {
  const { size, mtimeMs } = await stat(path);
  return `${size} ${mtimeMs}`;
}

/** A row, with a mark that changes when the record does. */
export interface ListedRow extends SessionRow {
  readonly mark: string;
}

/** Rows that are made anew only when their file has changed. */
export class RowBook {
  readonly #known = new Map<string, { readonly mark: string; readonly row: SessionRow }>();

  async rowOf(id: string, path: string): Promise<ListedRow> {
    const mark = await markOf(path);
    const known = this.#known.get(id);
    if (known?.mark === mark) return { ...known.row, mark };
    const row = await sessionRow(id, path);
    this.#known.set(id, { mark, row });
    return { ...row, mark };
  }
}
