import { randomUUID } from 'node:crypto';
import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { verifyLog } from '../../record/index.ts';
import { recordName } from '../../session/record-keeping.ts';
import type { SessionRow, UploadAnswer } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import { OWNER_ONLY } from '../state-file.ts';
import { DAMAGED, markOf, RowBook, tellsOf, uploadName } from './row.ts';
import type { Shop } from './shop.ts';

const ENDING = '.jsonl';
/** As many as a person looks through; the archive finds the others. */
const MOST_LISTED = 200;

/** The bay in the name of a file, whatever it is called. */
const plain = (bay: string) =>
  bay
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '') || 'bay';

/** A shop that is a folder of records. */
export class FolderShop implements Shop {
  readonly #folder: string;
  readonly #rows = new RowBook();

  private constructor(folder: string) {
    this.#folder = folder;
  }

  static async open(folder: string): Promise<FolderShop> {
    await mkdir(folder, { recursive: true });
    return new FolderShop(folder);
  }

  async newRecord(bay: string, at: Date): Promise<{ readonly id: string; readonly path: string }> {
    const taken = new Set(await this.#ids());
    const first = `${recordName(at)}-${plain(bay)}`;
    let id = first;
    for (let more = 2; taken.has(id); more += 1) id = `${first}-${more}`;
    return { id, path: this.#pathFor(id) };
  }

  async pathOf(id: string): Promise<string | null> {
    // Only what the folder itself lists is ever opened: no name from outside becomes part of a path.
    const found = (await this.#ids()).find(known => known === id);
    return found === undefined ? null : this.#pathFor(found);
  }

  async idOf(path: string): Promise<string | null> {
    return (await this.#ids()).find(id => this.#pathFor(id) === path) ?? null;
  }

  async list(find = ''): Promise<readonly SessionRow[]> {
    const ids = [...(await this.#ids())].sort().reverse().slice(0, MOST_LISTED);
    const rows = (await this.rowsOf(ids)).filter(row => tellsOf(find, row));
    return rows.sort((a, b) => (b.startedAt ?? '').localeCompare(a.startedAt ?? ''));
  }

  async rowsOf(ids: readonly string[]): Promise<SessionRow[]> {
    const rows: SessionRow[] = [];
    for (const id of ids) rows.push(await this.#rows.rowOf(id, this.#pathFor(id)));
    return rows;
  }

  /** All records, each with a mark that changes when its file does. */
  async files(): Promise<readonly { readonly id: string; readonly path: string; readonly mark: string }[]> {
    return Promise.all(
      (await this.#ids()).map(async id => {
        const path = this.#pathFor(id);
        return { id, path, mark: await markOf(path) };
      }),
    );
  }

  async close(): Promise<void> {}

  #pathFor(id: string): string {
    return join(this.#folder, `${id}${ENDING}`);
  }

  async keep(content: Buffer): Promise<UploadAnswer> {
    const name = uploadName(content);
    const ids = await this.#ids();
    const before = ids.find(id => id === name || id === `${name}${DAMAGED}`);
    if (before !== undefined) return { ...answer(before, before === name), again: true };
    const draft = join(this.#folder, `${randomUUID()}.part`);
    try {
      await writeFile(draft, content, { flag: 'wx', mode: OWNER_ONLY, flush: true });
      const verification = await verifyLog(draft);
      if (!verification.ok && (verification.problem === 'notOurs' || verification.problem === 'unreadable'))
        throw new Refused('malformed', 'What was sent is not a record of first-fire; nothing was kept.');
      const id = verification.ok ? name : `${name}${DAMAGED}`;
      await rename(draft, this.#pathFor(id));
      return { ...answer(id, verification.ok), again: false };
    } finally {
      await rm(draft, { force: true });
    }
  }

  async #ids(): Promise<readonly string[]> {
    const files = await readdir(this.#folder, { withFileTypes: true });
    return files
      .filter(file => file.isFile() && file.name.endsWith(ENDING))
      .map(file => file.name.slice(0, -ENDING.length));
  }
}

const answer = (id: string, verified: boolean) => ({
  id,
  verified,
  sentence: verified
    ? 'The record was verified and kept.'
    : 'The record was altered or is not whole; it was kept and is marked as damaged.',
});
