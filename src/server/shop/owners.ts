import { appendFile } from 'node:fs/promises';
import { z } from 'zod';
import { OWNER_ONLY, readOwn } from '../state-file.ts';

const ownerSchema = z.object({
  /** Of the session. */
  id: z.string(),
  bay: z.string(),
  /** The device that sent it in; null for what the laptop itself recorded. */
  device: z.string().nullable(),
  /** Hash of its first entry, which all versions of one record share; empty where that is not sound. */
  chain: z.string(),
  /** The session of a tablet, held without the laptop, from a copy of whose record this one goes on. */
  copiedFrom: z.string().exactOptional(),
});

/** To which bay and device a session belongs. */
export type Owner = Readonly<z.infer<typeof ownerSchema>>;

/** The sessions of the shop by whom they belong to, in a file that only grows. */
export class Owners {
  readonly #path: string;
  readonly #byId = new Map<string, Owner>();

  private constructor(path: string) {
    this.#path = path;
  }

  /** A line that cannot be read, torn by a power loss, makes its session the supervisor's alone. */
  static async open(path: string): Promise<Owners> {
    const owners = new Owners(path);
    for (const line of ((await readOwn(path)) ?? '').split('\n')) {
      const owner = parseOwner(line);
      if (owner) owners.#byId.set(owner.id, owner);
    }
    return owners;
  }

  of(id: string): Owner | undefined {
    return this.#byId.get(id);
  }

  /** All that share a first entry. */
  ofChain(chain: string): readonly Owner[] {
    return chain === '' ? [] : [...this.#byId.values()].filter(owner => owner.chain === chain);
  }

  async add(owner: Owner): Promise<void> {
    this.#byId.set(owner.id, owner);
    // A line of its own, whatever a power loss left before it.
    await appendFile(this.#path, `\n${JSON.stringify(owner)}\n`, { mode: OWNER_ONLY, flush: true });
  }
}

function parseOwner(line: string): Owner | null {
  try {
    return ownerSchema.parse(JSON.parse(line));
  } catch {
    return null;
  }
}
