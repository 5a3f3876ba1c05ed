import { z } from 'zod';
import { ProfileError, parseProfile } from '../../profile/parse.ts';
import type { Profile } from '../../profile/schema.ts';
import { readJson, writeWhole } from '../state-file.ts';

/** Profiles that the devices of one bay may have brought; the oldest goes where there are more. */
const MOST_BROUGHT = 8;

const keptSchema = z.record(z.string(), z.array(z.record(z.string(), z.unknown())));

/** Engine profiles that tablets brought, by bay; kept in a file of the server's own, so that a restart has them. */
export class BroughtEngines {
  readonly #file: string;
  readonly #tell: (sentence: string) => void;
  readonly #byBay = new Map<string, Map<string, Profile>>();
  #writing: Promise<void> = Promise.resolve();

  private constructor(file: string, tell: (sentence: string) => void) {
    this.#file = file;
    this.#tell = tell;
  }

  /** @param tell says in the terminal what can no longer be read, or not be kept */
  static async open(file: string, tell: (sentence: string) => void): Promise<BroughtEngines> {
    const engines = new BroughtEngines(file, tell);
    const kept = (await readJson(file, keptSchema)) ?? {};
    for (const [bay, profiles] of Object.entries(kept))
      for (const data of profiles)
        try {
          engines.#put(bay, parseProfile(JSON.stringify(data), String(data.name)));
        } catch (error) {
          if (!(error instanceof ProfileError)) throw error;
          tell(`An engine that ${bay} once brought is no longer one: ${error.message}`);
        }
    return engines;
  }

  names(bay: string): readonly string[] {
    return [...(this.#byBay.get(bay)?.keys() ?? [])];
  }

  of(bay: string, name: string): Profile | undefined {
    return this.#byBay.get(bay)?.get(name);
  }

  /** For sessions of this bay, in the place of one of the same name. */
  add(bay: string, profile: Profile): void {
    this.#put(bay, profile);
    this.#writing = this.#writing
      .then(() => writeWhole(this.#file, JSON.stringify(this.#data())))
      .catch((error: Error) =>
        this.#tell(
          `The engine ${profile.name} could not be kept (${error.message}); bring it again after a restart.`,
        ),
      );
  }

  /** Settles when everything is on the disk. */
  settled(): Promise<void> {
    return this.#writing;
  }

  #put(bay: string, profile: Profile): void {
    const own = this.#byBay.get(bay) ?? new Map<string, Profile>();
    this.#byBay.set(bay, own);
    own.delete(profile.name);
    own.set(profile.name, profile);
    const [oldest] = own.keys();
    if (own.size > MOST_BROUGHT && oldest !== undefined) own.delete(oldest);
  }

  #data(): Readonly<Record<string, readonly Profile[]>> {
    return Object.fromEntries([...this.#byBay].map(([bay, own]) => [bay, [...own.values()]]));
  }
}
