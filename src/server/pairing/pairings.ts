import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { z } from 'zod';
import { type Role, roleSchema } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import { readJson, writeWhole } from '../state-file.ts';

/** A working day: after that a device pairs again, unless a session keeps it. */
export const PAIRED_FOR_MS = 12 * 3_600_000;
/** More devices than this in one bay are a mistake, or mischief. */
export const MOST_DEVICES_IN_A_BAY = 16;
/** Devices of a bay whose time has run out are known for so many more: they may stop a session that goes on. */
export const MOST_RUN_OUT_IN_A_BAY = 64;

const pairingSchema = z.object({
  device: z.string(),
  name: z.string(),
  role: roleSchema,
  bay: z.string(),
  expiresAtMs: z.number(),
  /** SHA-256 of the token; the token itself is only with the device. */
  tokenHash: z.string(),
});
const fileSchema = z.object({ pairings: z.array(pairingSchema) });

/** One paired device. */
export type Pairing = Readonly<z.infer<typeof pairingSchema>>;

const hashOf = (token: string) => createHash('sha256').update(token).digest('hex');

/** The devices that are paired, kept in a file, so that a restart of the server unpairs nobody. */
export class Pairings {
  readonly #path: string;
  readonly #nowMs: () => number;
  readonly #byHash = new Map<string, Pairing>();
  readonly #watchers = new Set<() => void>();
  #writing: Promise<void> = Promise.resolve();
  /** What the file holds is not what is so. */
  #isUnkept = false;

  private constructor(path: string, nowMs: () => number) {
    this.#path = path;
    this.#nowMs = nowMs;
  }

  /** @param nowMs wall clock: what it gives is compared with what a former run of the server wrote */
  static async open(path: string, nowMs: () => number): Promise<Pairings> {
    const pairings = new Pairings(path, nowMs);
    for (const pairing of (await readJson(path, fileSchema))?.pairings ?? [])
      pairings.#byHash.set(pairing.tokenHash, pairing);
    return pairings;
  }

  /** Pairs a device; the token is given out this once. Null when the bay is full. */
  async add(
    bay: string,
    role: Role,
    name: string,
  ): Promise<{ readonly token: string; readonly pairing: Pairing } | null> {
    if (this.ofBay(bay).length >= MOST_DEVICES_IN_A_BAY) return null;
    const token = randomBytes(32).toString('base64url');
    const pairing: Pairing = {
      device: randomUUID(),
      name,
      role,
      bay,
      expiresAtMs: this.#nowMs() + PAIRED_FOR_MS,
      tokenHash: hashOf(token),
    };
    this.#byHash.set(pairing.tokenHash, pairing);
    this.#dropOldest(bay);
    try {
      await this.#save();
    } catch (error) {
      // Its device never learns its token: nobody waits for what it would say.
      this.#byHash.delete(pairing.tokenHash);
      throw error;
    }
    return { token, pairing };
  }

  /** Whose token this is; null when it is nobody's, or nobody's any more. Found by its hash: the time tells nothing. */
  find(token: string): Pairing | null {
    const pairing = this.recall(token);
    return pairing && this.isGood(pairing) ? pairing : null;
  }

  /** As `find`, and also one that has run out; never one that was let go of. */
  recall(token: string): Pairing | null {
    return this.#byHash.get(hashOf(token)) ?? null;
  }

  /** Whether a device may come back: also one that has run out, never one that was let go of. */
  knows(device: string): boolean {
    return [...this.#byHash.values()].some(pairing => pairing.device === device);
  }

  /** The same pairing as it stands now; null when it was let go of. */
  current({ tokenHash }: Pairing): Pairing | null {
    return this.#byHash.get(tokenHash) ?? null;
  }

  /** Still paired: neither run out nor let go of. */
  isGood(pairing: Pairing): boolean {
    return this.leftMs(pairing) > 0;
  }

  /** How long it is good for; 0 when it has run out or was let go of. */
  leftMs(pairing: Pairing): number {
    return Math.max(0, (this.current(pairing)?.expiresAtMs ?? 0) - this.#nowMs());
  }

  /** Good for so long from now on, where that is longer than it is. One that was let go of stays let go of. */
  async renew(pairing: Pairing, forMs: number): Promise<void> {
    const current = this.current(pairing);
    const expiresAtMs = this.#nowMs() + forMs;
    if (!current || current.expiresAtMs >= expiresAtMs) return;
    this.#byHash.set(current.tokenHash, { ...current, expiresAtMs });
    await this.#save();
  }

  ofBay(bay: string): readonly Pairing[] {
    return this.all().filter(pairing => pairing.bay === bay);
  }

  /** All that are good. */
  all(): readonly Pairing[] {
    return [...this.#byHash.values()].filter(pairing => this.isGood(pairing));
  }

  /**
   * Lets go of a device, at once and for good; its connection learns of it.
   * @throws Refused when the disk does not take that: it holds until the server is started anew, and is tried again
   */
  async forget(device: string): Promise<void> {
    for (const pairing of [...this.#byHash.values()])
      if (pairing.device === device) this.#byHash.delete(pairing.tokenHash);
    for (const watcher of [...this.#watchers]) watcher();
    await this.#save().catch(() => {
      throw new Refused(
        'failed',
        'That device is let go of, but the laptop cannot keep that: make room on its disk before it is started anew.',
      );
    });
  }

  /** Writes down what could not be: to be called now and then. */
  async keepAgain(): Promise<void> {
    if (this.#isUnkept) await this.#save().catch(() => {});
  }

  /** Called when a device was let go of. */
  watch(watcher: () => void): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  #dropOldest(bay: string): void {
    const runOut = [...this.#byHash.values()].filter(each => each.bay === bay && !this.isGood(each));
    const tooMany = runOut.sort((a, b) => b.expiresAtMs - a.expiresAtMs).slice(MOST_RUN_OUT_IN_A_BAY);
    for (const { tokenHash } of tooMany) this.#byHash.delete(tokenHash);
  }

  #save(): Promise<void> {
    const pairings = [...this.#byHash.values()];
    const written = this.#writing.then(() => writeWhole(this.#path, JSON.stringify({ pairings })));
    this.#writing = written.then(
      () => {
        this.#isUnkept = false;
      },
      () => {
        this.#isUnkept = true;
      },
    );
    return written;
  }
}
