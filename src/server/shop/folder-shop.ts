import { chmod, mkdir, readdir, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { recordName } from '../../session/record-keeping.ts';
import { OWNER_ONLY } from '../state-file.ts';
import { type ListedRow, markOf, RowBook, tellsOf } from './row.ts';

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
export class FolderShop {
  readonly #folder: string;
  readonly #rows = new RowBook();

  private constructor(folder: string) {
    this.#folder = folder;
  }

  static async open(folder: string): Promise<FolderShop> {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    return new FolderShop(folder);
  }

  /** Makes everything that lies in the folder its owner's alone, from before this was so, or copied here. */
  async protect(): Promise<void> {
    const files = await readdir(this.#folder, { withFileTypes: true });
    for (const file of files)
      if (file.isFile()) await chmod(join(this.#folder, file.name), OWNER_ONLY).catch(() => {});
  }

  /** Puts a file into the folder as the record of this session. */
  async put(draft: string, id: string): Promise<void> {
    await rename(draft, this.#pathFor(id));
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

  async list(find = ''): Promise<readonly ListedRow[]> {
    const ids = [...(await this.#ids())].sort().reverse().slice(0, MOST_LISTED);
    const rows = (await this.rowsOf(ids)).filter(row => tellsOf(find, row));
    return rows.sort((a, b) => (b.startedAt ?? '').localeCompare(a.startedAt ?? ''));
  }

  async rowsOf(ids: readonly string[]): Promise<ListedRow[]> {
    const rows: ListedRow[] = [];
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

  #pathFor(id: string): string {
    return join(this.#folder, `${id}${ENDING}`);
  }

  async #ids(): Promise<readonly string[]> {
    const files = await readdir(this.#folder, { withFileTypes: true });
    return files
      .filter(file => file.isFile() && file.name.endsWith(ENDING))
      .map(file => file.name.slice(0, -ENDING.length));
  }
}
