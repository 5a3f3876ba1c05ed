import { constants, copyFile, open, readFile, rm } from 'node:fs/promises';
import { setTimeout as wait } from 'node:timers/promises';
import type { Profile } from '../../profile/schema.ts';
import type { PastStarts } from '../../session/past-starts/beside-others.ts';
import type { Pairing } from '../pairing/pairings.ts';
import type { SessionRow, UploadAnswer } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import type { Verdict } from '../work/check-record.ts';
import { Lane } from '../work/lane.ts';
import { Checks } from './checks.ts';
import type { FolderShop } from './folder-shop.ts';
import type { ShopPlaces } from './index-of-shop.ts';
import { type Owner, Owners } from './owners.ts';
import { DAMAGED, FORK, isFork, isUpload, type ListedRow, markOf, uploadName } from './row.ts';

/** A list does not wait longer for records that nobody has looked at yet: they are shown as such. */
const LOOK_MS = 1500;

const SECOND_MS = 1000;

/** A session of the folder: its id, and its file. */
export interface Place {
  readonly id: string;
  readonly path: string;
  /** The session of a tablet whose record was copied here to be gone on with. */
  readonly copiedFrom?: string;
}

export interface ShopFiles {
  readonly owners: string;
  readonly checks: string;
}

/** Where a shop keeps its sessions. What is heavy is done by programs of their own: to ask the shop keeps nobody waiting. */
export class Shop {
  readonly #folder: FolderShop;
  readonly #places: ShopPlaces;
  readonly #owners: Owners;
  readonly #checks: Checks;
  readonly #lists: Lane;
  readonly #incoming: Lane;
  readonly #tell: (sentence: string) => void;
  /** Reports, and the entries of past sessions. */
  readonly reading = new Lane('reports', { mostWaiting: 16, forMs: 60 * SECOND_MS, heapMb: 1024 });

  private constructor(
    folder: FolderShop,
    places: ShopPlaces,
    owners: Owners,
    checks: Checks,
    incoming: Lane,
    tell: (sentence: string) => void,
  ) {
    this.#folder = folder;
    this.#places = places;
    this.#owners = owners;
    this.#checks = checks;
    this.#incoming = incoming;
    this.#lists = new Lane('lists', { mostWaiting: 16, forMs: 600 * SECOND_MS, heapMb: 1024 });
    this.#tell = tell;
  }

  /** @param files what the shop itself keeps: to whom sessions belong, and whether they can be believed */
  static async open(
    folder: FolderShop,
    places: ShopPlaces,
    files: ShopFiles,
    tell: (sentence: string) => void,
  ): Promise<Shop> {
    await folder.protect();
    const incoming = new Lane('records', { mostWaiting: 16, forMs: 60 * SECOND_MS, heapMb: 1024 });
    const owners = await Owners.open(files.owners);
    const checks = await Checks.open(files.checks, incoming, tell);
    return new Shop(folder, places, owners, checks, incoming, tell);
  }

  /** A place for the record of a session that begins in this bay: an id that is new, and its file. */
  newRecord(bay: string, at: Date): Promise<Place> {
    return this.#folder.newRecord(bay, at);
  }

  /** The laptop itself records this session, in this bay. */
  async isOf(
    bay: string,
    { id, copiedFrom }: Pick<Place, 'id' | 'copiedFrom'>,
    chain: string,
  ): Promise<void> {
    if (this.#owners.of(id)?.bay === bay) return;
    await this.#owners
      .add({ id, bay, device: null, chain, ...(copiedFrom === undefined ? {} : { copiedFrom }) })
      .catch((error: Error) =>
        this.#tell(
          `To which bay ${id} belongs could not be kept (${error.message}); only supervisors read it later.`,
        ),
      );
  }

  /** Has the archive take in what is new, without anybody waiting for it. */
  takeIn(): void {
    this.#lists.do('takeIn', { places: this.#places }).then(
      ({ told }) => {
        for (const sentence of told) this.#tell(sentence);
      },
      (error: unknown) => {
        // What the end of the server cut short is taken in by the next one.
        if (!this.#lists.isClosed) this.#tell(`The archive could not take in what is new: ${String(error)}`);
      },
    );
  }

  /** What the shop's earlier starts of this engine measured, by figure; nothing, where that cannot be told now. */
  pastStarts(profile: Profile): Promise<PastStarts> {
    return this.#lists.do('pastStarts', { places: this.#places, profile }).catch(() => ({}));
  }

  /**
   * The record to go on with for a session of this bay. What a tablet held without the laptop is gone on with in a
   * copy: what was sent in stays as it came. The copy is the laptop's own only once it is gone on with; where it is
   * not, `discard` takes it away.
   * @throws Refused when there is none such in this bay, or what was sent in cannot be believed, or is over; then
   *   nothing is copied
   */
  async toGoOnWith(bay: string, id: string): Promise<Place> {
    const owner = this.#owners.of(id);
    const path = owner?.bay === bay ? await this.#folder.pathOf(id) : null;
    if (!owner || path === null) throw new Refused('notFound', 'There is no such session in this bay.');
    if (owner.device === null) return { id, path };
    const check = await this.#incoming.do('check', { path });
    if (!check.isRecord || check.verdict !== 'confirmed')
      throw new Refused(
        'notNow',
        'That record cannot be believed, so nobody goes on with it; begin a new one.',
      );
    if (check.isOver) throw new Refused('notNow', 'That session is over; begin a new one.');
    const copy = await this.#folder.newRecord(bay, new Date());
    try {
      await copyFile(path, copy.path, constants.COPYFILE_EXCL);
      const file = await open(copy.path, 'r+');
      await file.sync().finally(() => file.close());
    } catch (error) {
      await this.discard(copy);
      throw error;
    }
    return { ...copy, copiedFrom: id };
  }

  /** Takes a copy away that could not be gone on with after all. */
  async discard({ path }: Place): Promise<void> {
    await rm(path, { force: true });
  }

  /** The file of a session in the folder, or null when there is none of this id. The id may come from anybody. */
  fileOf(id: string): Promise<string | null> {
    return this.#folder.pathOf(id);
  }

  /** As `fileOf`, and out of the archive where only that has it. */
  async pathOf(id: string): Promise<string | null> {
    return (await this.#folder.pathOf(id)) ?? (await this.#lists.do('unpack', { places: this.#places, id }));
  }

  /** The session whose file this is, or null when it is none of the shop's. */
  idOf(path: string): Promise<string | null> {
    return this.#folder.idOf(path);
  }

  /** Whether a device may read of a session: the supervisor of all, others of their own bay's. */
  mayRead({ role, bay }: Pairing, id: string): boolean {
    return role === 'supervisor' || this.#owners.of(id)?.bay === bay;
  }

  /**
   * Sessions that this device may read of, the newest first.
   * @param find only those in which this text stands, whatever its case; all, where it is empty
   * @param going those that are going on
   */
  async list(
    reader: Pairing,
    find: string,
    going: ReadonlySet<string | null>,
  ): Promise<readonly SessionRow[]> {
    const { rows, told } = await this.#lists.do('list', { places: this.#places, find });
    for (const sentence of told) this.#tell(sentence);
    const own = rows.filter(({ id }) => this.mayRead(reader, id));
    const isOpen = (row: ListedRow) => going.has(row.id) && row.state === 'brokenOff' && !isFork(row.id);
    const unknown = own.filter(
      row => !isOpen(row) && row.state !== 'damaged' && this.#checks.of(row.id, row.mark) === undefined,
    );
    const looking = this.#checks.look(
      unknown.map(({ id, mark }) => ({ id, mark, path: () => this.pathOf(id) })),
    );
    const patience = new AbortController();
    await Promise.race([looking, wait(LOOK_MS, undefined, { signal: patience.signal }).catch(() => {})]);
    patience.abort();
    return own.map(({ mark, ...row }) => ({
      ...row,
      state: isOpen({ ...row, mark }) ? 'running' : stateBy(this.#checks.of(row.id, mark), row.state),
    }));
  }

  /**
   * Keeps a record that a tablet finished without the server, and takes its file away; marked where it cannot be
   * believed.
   * @throws Refused when it is no record at all, or a session of another bay or of the laptop itself; then nothing
   *   is kept
   */
  async keep(draft: string, { bay, device }: Pairing): Promise<UploadAnswer> {
    try {
      const check = await this.#incoming.do('check', { path: draft });
      if (!check.isRecord)
        throw new Refused('malformed', 'What was sent is not a record of first-fire; nothing was kept.');
      const own = await this.#refuseForeign(check.chain, bay);
      const { verdict } = check;
      if (own.length > 0) await this.#refuseNothingNew(draft, own);
      const mark = verdict === 'damaged' ? DAMAGED : own.length > 0 ? FORK : '';
      const id = `${uploadName(check.digest)}${mark}`;
      // Before it is kept: an end of the server between the two leaves no record that is nobody's.
      if (this.#owners.of(id) === undefined) await this.#owners.add({ id, bay, device, chain: check.chain });
      if ((await this.#folder.pathOf(id)) !== null) return answer(id, verdict, true);
      await this.#folder.put(draft, id);
      const path = await this.#folder.pathOf(id);
      if (path !== null) await this.#checks.note(id, await markOf(path), verdict);
      this.takeIn();
      return answer(id, verdict, false);
    } finally {
      await rm(draft, { force: true });
    }
  }

  async close(): Promise<void> {
    for (const lane of [this.reading, this.#lists, this.#incoming]) lane.close();
    await rm(this.#places.unpacked, { recursive: true, force: true });
  }

  /**
   * Versions of one record share their first entry, and belong to whom its first one did.
   * @returns the sessions of the laptop itself, in this bay, from which this one goes on
   */
  async #refuseForeign(chain: string, bay: string): Promise<readonly Owner[]> {
    if (chain === '') return [];
    const kin = this.#owners.ofChain(chain);
    const isForeign = kin.length > 0 ? kin.some(owner => owner.bay !== bay) : await this.#isInFolder(chain);
    if (isForeign) throw notYours();
    return kin.filter(owner => owner.device === null);
  }

  /** A tablet has nothing to tell of a session of the laptop but how it went on without it. */
  async #refuseNothingNew(draft: string, own: readonly Owner[]): Promise<void> {
    const sent = await readFile(draft);
    for (const { id } of own) {
      const path = await this.#folder.pathOf(id);
      if (path !== null && (await readFile(path)).subarray(0, sent.length).equals(sent)) throw notYours();
    }
  }

  /** Among the sessions of which nobody has noted whose they are: those of before, and those that were copied here. */
  async #isInFolder(chain: string): Promise<boolean> {
    const files = await this.#folder.files();
    const unnoted = files.filter(({ id }) => this.#owners.of(id) === undefined && !isUpload(id));
    const chains = await this.#incoming.do('chains', { paths: unnoted.map(({ path }) => path) });
    return chains.includes(chain);
  }
}

const notYours = () =>
  new Refused('notYours', 'This is a session of another bay, or of the laptop itself; nothing was kept.');

/** What a list says of a session; nothing good of one that was not found to be so. */
function stateBy(verdict: Verdict | undefined, state: SessionRow['state']): SessionRow['state'] {
  if (state === 'damaged' || verdict === 'damaged') return 'damaged';
  if (verdict === undefined) return 'unchecked';
  return verdict === 'confirmed' ? state : verdict;
}

const sentences: Readonly<Record<Verdict, string>> = {
  confirmed: 'The record was verified and kept.',
  notConfirmed: 'The record was kept and is marked as not confirmed: its events do not lead to what it says.',
  damaged: 'The record was altered or is not whole; it was kept and is marked as damaged.',
};

const answer = (id: string, verdict: Verdict, again: boolean): UploadAnswer => ({
  id,
  verified: verdict !== 'damaged',
  confirmed: verdict === 'confirmed',
  again,
  sentence: sentences[verdict],
});
