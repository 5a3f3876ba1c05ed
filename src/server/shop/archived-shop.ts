import { chmod, mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { addFiles } from '../../archive/add-files.ts';
import type { Archive } from '../../archive/archive.ts';
import { ArchiveError } from '../../archive/archive-error.ts';
import type { ArchivedOutcome } from '../../archive/card.ts';
import { openArchive } from '../../archive/open.ts';
import { pastStarts } from '../../archive/past-starts.ts';
import type { ArchivedSession } from '../../archive/schema.ts';
import type { Profile } from '../../profile/schema.ts';
import type { PastStarts } from '../../session/past-starts/beside-others.ts';
import type { SessionRow } from '../protocol/index.ts';
import { OWNER_ONLY } from '../state-file.ts';
import type { FolderShop } from './folder-shop.ts';
import { isFork, isUpload, type ListedRow, tellsOf } from './row.ts';

/** As many as a person looks through; a search finds the others. */
const MOST_LISTED = 200;

const states: Readonly<Record<ArchivedOutcome, SessionRow['state']>> = {
  'signed-off': 'signedOff',
  ended: 'ended',
  stopped: 'brokenOff',
  'broke-off': 'brokenOff',
  unknown: 'damaged',
};

/** An archive that is a file is nobody else's to read. */
async function openOwn(place: string): Promise<Archive> {
  const archive = await openArchive(place);
  for (const file of [place, `${place}-wal`, `${place}-shm`]) await chmod(file, OWNER_ONLY).catch(() => {});
  return archive;
}

const orNull = (text: string) => (text === '' ? null : text);

/**
 * A folder of records with the shop's archive behind it: what is in the folder is taken into the archive when
 * a record has come or is closed, and when somebody looks, and what only the archive has is listed and read too.
 */
export class ArchivedShop {
  readonly #folder: FolderShop;
  readonly #place: string;
  /** Records that only the archive has are unpacked here when they are read. */
  readonly #unpacked: string;
  readonly #tell: (sentence: string) => void;
  #opening: Promise<Archive> | null = null;
  #taking: Promise<unknown> = Promise.resolve();
  /** Marks of the files that the archive has taken in, by their id. */
  readonly #taken = new Map<string, string>();
  /** Files that are no records at all: nothing that the archive would keep. */
  readonly #strays = new Set<string>();
  /** Records that go on from one of the laptop's own without it: shown beside that one, never in its place. */
  #forks: readonly string[] = [];
  /** The file of an archived session, where the folder has one; the longest, where it has several. */
  readonly #files = new Map<string, { readonly id: string; readonly entries: number }>();

  /**
   * @param place of the archive; it is opened when it is first needed
   * @param unpacked a folder of the server's own
   */
  constructor(folder: FolderShop, place: string, unpacked: string, tell: (sentence: string) => void) {
    this.#folder = folder;
    this.#place = place;
    this.#unpacked = unpacked;
    this.#tell = tell;
  }

  /** The record of a session, out of the archive into a file; null when it has none of this id. */
  async unpack(id: string): Promise<string | null> {
    // An id of the archive is digits and nothing else: no name from outside becomes part of a path.
    if (!/^[0-9a-f]{64}$/.test(id)) return null;
    try {
      const archive = await this.#archive();
      const content = await archive.log((await archive.session(id)).id);
      await mkdir(this.#unpacked, { recursive: true, mode: 0o700 });
      const path = join(this.#unpacked, `${id}.jsonl`);
      await writeFile(path, content, { mode: OWNER_ONLY });
      return path;
    } catch (error) {
      if (error instanceof ArchiveError) return null;
      throw error;
    }
  }

  /**
   * What the earlier starts of this engine measured, those too that only the folder has yet; nothing, where the archive
   * cannot be used.
   */
  async pastStarts(profile: Profile): Promise<PastStarts> {
    try {
      await this.takeIn();
      return await pastStarts(await this.#archive(), { profile });
    } catch (error) {
      if (error instanceof ArchiveError) return {};
      throw error;
    }
  }

  /** The folder alone, where the archive cannot be used; then that is told. */
  async list(find: string): Promise<readonly ListedRow[]> {
    try {
      await this.takeIn();
      const archive = await this.#archive();
      const { sessions } = await archive.find(find === '' ? {} : { text: find }, MOST_LISTED);
      const rows = sessions.map(session => this.#rowOf(session));
      const forks = (await this.#folder.rowsOf(this.#forks)).filter(row => tellsOf(find, row));
      const strays = find === '' ? await this.#folder.rowsOf([...this.#strays]) : [];
      return [...rows, ...forks, ...strays];
    } catch (error) {
      if (!(error instanceof ArchiveError)) throw error;
      this.#tell(error.message);
      return this.#folder.list(find);
    }
  }

  /**
   * Takes into the archive what is new in the folder.
   * @throws ArchiveError when it cannot be used
   */
  async takeIn(): Promise<void> {
    const archive = await this.#archive();
    this.#taking = this.#taking.catch(() => {}).then(() => this.#takeIn(archive));
    await this.#taking;
  }

  async close(): Promise<void> {
    await this.#taking.catch(() => {});
    await this.#opening?.then(archive => archive.close()).catch(() => {});
    await rm(this.#unpacked, { recursive: true, force: true });
  }

  #archive(): Promise<Archive> {
    this.#opening ??= openOwn(this.#place).catch((error: unknown) => {
      // The next one who looks tries again.
      this.#opening = null;
      throw error;
    });
    return this.#opening;
  }

  async #takeIn(archive: Archive): Promise<void> {
    const all = await this.#folder.files();
    // What goes on from a session of the laptop on its own would take that session's place in the archive.
    this.#forks = all.map(({ id }) => id).filter(isFork);
    const files = all.filter(({ id }) => !isFork(id));
    const there = new Set(files.map(({ id }) => id));
    for (const [archived, { id }] of this.#files) if (!there.has(id)) this.#files.delete(archived);
    for (const id of this.#strays) if (!there.has(id)) this.#strays.delete(id);
    const changed = files.filter(({ id, mark }) => this.#taken.get(id) !== mark);
    const byPath = new Map(changed.map(file => [file.path, file]));
    for await (const added of addFiles(archive, [...byPath.keys()])) {
      const file = byPath.get(added.source);
      if (!file) continue;
      this.#taken.set(file.id, file.mark);
      if (added.kind === 'refused') {
        this.#strays.add(file.id);
        continue;
      }
      const { entries } = added.intake;
      const before = this.#files.get(added.decision.id);
      if (!before || before.entries <= entries) this.#files.set(added.decision.id, { id: file.id, entries });
    }
  }

  #rowOf({ id, started, vehicle, engine, profile, outcome, state, entries }: ArchivedSession): ListedRow {
    const file = this.#files.get(id)?.id ?? id;
    return {
      id: file,
      startedAt: orNull(started),
      vehicle: orNull(vehicle),
      engine: orNull(engine),
      profile: orNull(profile),
      state: state === 'broken' ? 'damaged' : states[outcome],
      entries,
      uploaded: isUpload(file),
      fork: false,
      mark: this.#taken.get(file) ?? id,
    };
  }
}
