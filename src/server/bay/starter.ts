import { z } from 'zod';
import type { JobCard } from '../../../machines/context.ts';
import type { Profile } from '../../profile/schema.ts';
import { type Entry, RecordError } from '../../record/index.ts';
import { JobCardError, parseJobCard } from '../../session/job-card.ts';
import { ResumeError } from '../../session/resume.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Deed } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import type { Shop } from '../shop/shop.ts';
import { readJson, writeWhole } from '../state-file.ts';
import type { Mouths } from './remote-voice.ts';
import { type MakeClock, type RecordNews, Run } from './run.ts';

/** What sessions begin with where the technician does not say otherwise. */
export interface Usual {
  /** By name, the usual one first. */
  readonly profiles: ReadonlyMap<string, Profile>;
  readonly job: JobCard;
  readonly units: UnitSystem;
}

const placesSchema = z.record(z.string(), z.string());

/** Begins sessions, and goes on with those that broke off: which bay had which is kept in a file. */
export class Starter {
  readonly #shop: Shop;
  readonly #usual: Usual;
  readonly #placesFile: string;
  readonly #makeClock: MakeClock;
  readonly #tell: (sentence: string) => void;
  #places: Record<string, string> = {};
  #writing: Promise<void> = Promise.resolve();

  private constructor(
    shop: Shop,
    usual: Usual,
    placesFile: string,
    makeClock: MakeClock,
    tell: (sentence: string) => void,
  ) {
    this.#shop = shop;
    this.#usual = usual;
    this.#placesFile = placesFile;
    this.#makeClock = makeClock;
    this.#tell = tell;
  }

  /** @param tell says in the terminal why a session cannot be gone on with */
  static async open(
    shop: Shop,
    usual: Usual,
    placesFile: string,
    makeClock: MakeClock,
    tell: (sentence: string) => void,
  ): Promise<Starter> {
    const starter = new Starter(shop, usual, placesFile, makeClock, tell);
    starter.#places = (await readJson(placesFile, placesSchema)) ?? {};
    return starter;
  }

  get profileNames(): string[] {
    return [...this.#usual.profiles.keys()];
  }

  /** @throws Refused when there is no such profile, the job card is wrong, or the record cannot be begun */
  async start(bay: string, deed: Extract<Deed, { do: 'begin' }>, mouths: Mouths): Promise<Run> {
    const name = deed.profile ?? this.profileNames[0] ?? '';
    const profile = this.#usual.profiles.get(name);
    if (!profile)
      throw new Refused(
        'notFound',
        `There is no profile "${name}" here; choose ${this.profileNames.join(' or ')}.`,
      );
    try {
      const job = deed.job ? parseJobCard(deed.job, 'sent') : this.#usual.job;
      const units = deed.units ?? this.#usual.units;
      const place = await this.#shop.newRecord(bay, new Date());
      const what = { profile, job, units };
      const run = await Run.start(place, what, this.#makeClock, mouths, this.#newsOf(bay));
      await this.#shop.isOf(bay, place.id, run.chain);
      await this.#isAt(bay, place.id);
      return run;
    } catch (error) {
      if (error instanceof JobCardError || error instanceof RecordError)
        throw new Refused('notNow', error.message);
      throw error;
    }
  }

  /** A record that was saved elsewhere is gone on with there, where that is in the shop; never with the torn one. */
  #newsOf(bay: string): RecordNews {
    return {
      rescued: async (path, sentence, chain) => {
        this.#tell(sentence);
        const id = await this.#shop.idOf(path);
        if (id !== null) await this.#shop.isOf(bay, id, chain);
        await this.#isAt(bay, id);
      },
      lost: sentence => this.#tell(sentence),
    };
  }

  async #isAt(bay: string, id: string | null): Promise<void> {
    const { [bay]: _, ...others } = this.#places;
    this.#places = id === null ? others : { ...others, [bay]: id };
    // One after another, and each with what is so by then: bays that begin together would forget one another.
    const written = this.#writing.then(() => writeWhole(this.#placesFile, JSON.stringify(this.#places)));
    this.#writing = written.catch((error: Error) =>
      this.#tell(`Which session is in which bay could not be kept (${error.message}); resume it by hand.`),
    );
    await this.#writing;
  }

  /** Null when the bay has no session that broke off. */
  async resume(
    bay: string,
    mouths: Mouths,
  ): Promise<{ readonly run: Run; readonly entries: readonly Entry[] } | null> {
    const id = Object.hasOwn(this.#places, bay) ? this.#places[bay] : undefined;
    const path = id === undefined ? null : await this.#shop.fileOf(id);
    if (id === undefined || path === null) return null;
    try {
      const resumed = await Run.resume({ id, path }, this.#makeClock, mouths, this.#newsOf(bay));
      await this.#shop.isOf(bay, id, resumed.run.chain);
      return resumed;
    } catch (error) {
      if (!(error instanceof RecordError || error instanceof ResumeError)) throw error;
      this.#tell(error.message);
      return null;
    }
  }
}
