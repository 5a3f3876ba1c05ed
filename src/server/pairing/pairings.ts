import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { z } from 'zod';
import { type Role, roleSchema } from '../protocol/index.ts';
import { readJson, writeWhole } from '../state-file.ts';

/** A working day: after that a device pairs again. */
export const PAIRED_FOR_MS = 12 * 3_600_000;
/** More devices than this in one bay are a mistake, or mischief. */
export const MOST_DEVICES_IN_A_BAY = 16;

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
  #writing: Promise<void> = Promise.resolve();

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
    await this.#save();
    return { token, pairing };
  }

  /** Whose token this is; null when it is nobody's, or nobody's any more. Found by its hash: the time tells nothing. */
  find(token: string): Pairing | null {
    const pairing = this.#byHash.get(hashOf(token));
    return pairing && this.#isGood(pairing) ? pairing : null;
  }

  /** Still paired: neither run out nor let go of. */
  isGood(pairing: Pairing): boolean {
    return this.#byHash.has(pairing.tokenHash) && this.#isGood(pairing);
  }

  ofBay(bay: string): readonly Pairing[] {
    return [...this.#byHash.values()].filter(pairing => pairing.bay === bay && this.#isGood(pairing));
  }

  async forget(device: string): Promise<void> {
    for (const pairing of [...this.#byHash.values()])
      if (pairing.device === device) this.#byHash.delete(pairing.tokenHash);
    await this.#save();
  }

  #isGood({ expiresAtMs }: Pairing): boolean {
    return this.#nowMs() < expiresAtMs;
  }

  #save(): Promise<void> {
    const good = [...this.#byHash.values()].filter(pairing => this.#isGood(pairing));
    const written = this.#writing.then(() => writeWhole(this.#path, JSON.stringify({ pairings: good })));
    this.#writing = written.catch(() => {});
    return written;
  }
}
