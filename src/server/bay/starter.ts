import { randomUUID } from 'node:crypto';
import { rename } from 'node:fs/promises';
import { isDeepStrictEqual } from 'node:util';
import { z } from 'zod';
import type { JobCard } from '../../../machines/context.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import type { Profile } from '../../profile/schema.ts';
import { type Entry, RecordError } from '../../record/index.ts';
import { inventedOn } from '../../session/demo-job.ts';
import { JobCardError, parseJobCard } from '../../session/job-card.ts';
import { ResumeError } from '../../session/resume.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Deed } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import type { Place, Shop } from '../shop/shop.ts';
import { readJson, readOwn, writeWhole } from '../state-file.ts';
import { BroughtEngines } from './brought-engines.ts';
import type { Mouths } from './remote-voice.ts';
import { type MakeClock, type RecordNews, Run } from './run.ts';

/** What sessions begin with where the technician does not say otherwise. */
export interface Usual {
  /** By name, the usual one first. */
  readonly profiles: ReadonlyMap<string, Profile>;
  readonly job: JobCard;
  readonly units: UnitSystem;
  readonly language: LanguageCode;
}

/** A session that is gone on with, and what its record held. */
export interface Resumed {
  readonly run: Run;
  readonly entries: readonly Entry[];
}

const placesSchema = z.record(z.string(), z.string());
/** Stands for a session of which nothing is known but that there may have been one. */
const UNKNOWN = '';

/** Which bay had which session. A file that cannot be read is kept aside, and any bay may have had one. */
async function readPlaces(
  file: string,
  bays: readonly string[],
  tell: (sentence: string) => void,
): Promise<Readonly<Record<string, string>>> {
  const places = await readJson(file, placesSchema);
  if (places !== null || (await readOwn(file)) === null) return places ?? {};
  const aside = `${file}.unreadable-${randomUUID()}`;
  await rename(file, aside);
  tell(`Which session was in which bay cannot be read; what there is of it is kept in ${aside}.`);
  const unknown = Object.fromEntries(bays.map(bay => [bay, UNKNOWN]));
  await writeWhole(file, JSON.stringify(unknown));
  return unknown;
}

/** Begins sessions, and goes on with those that broke off: which bay had which is kept in a file. */
export class Starter {
  readonly #shop: Shop;
  readonly #usual: Usual;
  readonly #placesFile: string;
  readonly #makeClock: MakeClock;
  readonly #tell: (sentence: string) => void;
  readonly #brought: BroughtEngines;
  #places: Readonly<Record<string, string>> = {};
  /** The last session of each bay. */
  readonly #latest = new Map<string, Run>();
  #writing: Promise<void> = Promise.resolve();

  private constructor(
    shop: Shop,
    usual: Usual,
    placesFile: string,
    brought: BroughtEngines,
    makeClock: MakeClock,
    tell: (sentence: string) => void,
  ) {
    this.#brought = brought;
    this.#shop = shop;
    this.#usual = usual;
    this.#placesFile = placesFile;
    this.#makeClock = makeClock;
    this.#tell = tell;
  }

  /**
   * @param files what it keeps for itself: which bay has which session, and the engines that tablets brought
   * @param bays that are served
   * @param tell says in the terminal why a session cannot be gone on with
   */
  static async open(
    shop: Shop,
    usual: Usual,
    files: { readonly places: string; readonly engines: string },
    bays: readonly string[],
    makeClock: MakeClock,
    tell: (sentence: string) => void,
  ): Promise<Starter> {
    const brought = await BroughtEngines.open(files.engines, tell);
    const starter = new Starter(shop, usual, files.places, brought, makeClock, tell);
    starter.#places = await readPlaces(files.places, bays, tell);
    return starter;
  }

  get usual(): Omit<Usual, 'profiles'> {
    const { job, units, language } = this.#usual;
    return { job, units, language };
  }

  profileNames(bay: string): string[] {
    return [...this.#usual.profiles.keys(), ...this.#brought.names(bay)];
  }

  /**
   * Takes in an engine profile that a tablet of this bay brings, for this bay.
   * @returns the name by which a session begins with it
   * @throws Refused when the laptop has another one of that name: nobody is to get another engine than they name
   */
  bring(bay: string, profile: Profile): string {
    for (const [name, own] of this.#usual.profiles)
      if (name === profile.name || own.name === profile.name) {
        if (isDeepStrictEqual(own, profile)) return name;
        throw new Refused(
          'notNow',
          `The laptop has another profile "${profile.name}"; give yours another name inside its file.`,
        );
      }
    this.#brought.add(bay, profile);
    return profile.name;
  }

  /** Settles when the profiles that were brought are on the disk. */
  enginesKept(): Promise<void> {
    return this.#brought.settled();
  }

  /** By the name in the list, or by the name inside the profile. */
  #profile(bay: string, name: string): Profile | undefined {
    const { profiles } = this.#usual;
    return (
      profiles.get(name) ??
      this.#brought.of(bay, name) ??
      [...profiles.values()].find(profile => profile.name === name)
    );
  }

  /** @throws Refused when there is no such profile, the job card is wrong, or the record cannot be begun */
  async start(bay: string, deed: Extract<Deed, { do: 'begin' }>, mouths: Mouths): Promise<Run> {
    const name = deed.profile ?? this.profileNames(bay)[0] ?? '';
    const profile = this.#profile(bay, name);
    if (!profile)
      throw new Refused(
        'notFound',
        `There is no profile "${name}" here; choose ${this.profileNames(bay).join(' or ')}.`,
      );
    try {
      const job = deed.job ? parseJobCard(deed.job, 'sent') : this.#usual.job;
      const invented = inventedOn(job, profile);
      if (invented !== null) throw new Refused('notNow', invented);
      const units = deed.units ?? this.#usual.units;
      const place = await this.#shop.newRecord(bay, new Date());
      const header = { profile, job, units, language: deed.language ?? this.#usual.language };
      const run = await Run.start(place, header, this.#makeClock, mouths, this.#newsOf(bay, place));
      await this.#takeIn(bay, place, run);
      return run;
    } catch (error) {
      if (error instanceof JobCardError || error instanceof RecordError)
        throw new Refused('notNow', error.message);
      throw error;
    }
  }

  /**
   * A record that was saved elsewhere is gone on with there, where that is in the shop; never with the torn one. Of a
   * session that is its bay's no more, as it was left or another one has begun, neither is by itself.
   */
  #newsOf(bay: string, { id: begun }: Place): RecordNews {
    return {
      rescued: async (path, sentence, chain) => {
        this.#tell(sentence);
        const id = await this.#shop.idOf(path);
        if (id !== null) await this.#shop.isOf(bay, { id }, chain);
        if (this.#places[bay] === begun) await this.#isAt(bay, id);
      },
      lost: sentence => this.#tell(sentence),
      closed: () => this.#shop.takeIn(),
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

  /** The session that broke off in this bay, empty where nobody knows which; null when there is none. */
  brokeOff(bay: string): string | null {
    return (Object.hasOwn(this.#places, bay) ? this.#places[bay] : undefined) ?? null;
  }

  /** Sessions that broke off in bays that are not served now, by bay. */
  elsewhere(bays: readonly string[]): readonly (readonly [bay: string, session: string])[] {
    return Object.entries(this.#places).filter(([bay]) => !bays.includes(bay));
  }

  /**
   * Null when the bay has no session that broke off, or one that was over.
   * @throws whatever keeps it from being gone on with
   */
  async resume(bay: string, mouths: Mouths): Promise<Resumed | null> {
    const id = this.brokeOff(bay);
    if (id === null) return null;
    const path = id === UNKNOWN ? null : await this.#shop.fileOf(id);
    if (path === null)
      throw new ResumeError(
        id === UNKNOWN
          ? 'Which one it was is not known.'
          : `The record of ${id} is not in the shop's folder.`,
      );
    try {
      return await this.#resumeAt(bay, { id, path }, mouths);
    } catch (error) {
      if (!(error instanceof ResumeError && error.isOver)) throw error;
      this.#tell(error.message);
      await this.#isAt(bay, null);
      return null;
    }
  }

  /** The session of this bay cannot be gone on with: a restart of the server finds it so again. */
  isLost(bay: string, id: string): Promise<void> {
    return this.#isAt(bay, id);
  }

  /** Somebody at the engine of a session that is lost has said that it is safe. */
  madeSafe(bay: string, by: string): Promise<void> {
    this.#tell(`${bay}: ${by} says that the engine of the session that was lost is off, and all is safe.`);
    return this.#isAt(bay, null);
  }

  /**
   * Goes on with a session of this bay by its id; one that a tablet held without the laptop in a record of the
   * laptop's own, behind what the tablet wrote.
   * @throws Refused when it is none of this bay's, cannot be believed, or cannot be gone on with
   */
  async goOn(bay: string, id: string, mouths: Mouths): Promise<Resumed> {
    const place = await this.#shop.toGoOnWith(bay, id);
    try {
      return await this.#resumeAt(bay, place, mouths);
    } catch (error) {
      if (place.copiedFrom !== undefined) await this.#shop.discard(place);
      if (!(error instanceof RecordError || error instanceof ResumeError)) throw error;
      throw new Refused('notNow', withoutPath(error.message, place));
    }
  }

  /** The session of this bay is left for another day: a restart of the server does not go on with it. */
  leave(bay: string): Promise<void> {
    return this.#isAt(bay, null);
  }

  async #resumeAt(bay: string, place: Place, mouths: Mouths): Promise<Resumed> {
    const resumed = await Run.resume(place, this.#makeClock, mouths, this.#newsOf(bay, place));
    await this.#takeIn(bay, place, resumed.run);
    return resumed;
  }

  /** Notes whose session this is, and where; a record of which that cannot be noted is not left open. */
  async #takeIn(bay: string, place: Place, run: Run): Promise<void> {
    const before = this.#latest.get(bay);
    // At once: the end of the one before is no end of this one, though it may be told while this one is being noted.
    this.#latest.set(bay, run);
    try {
      await this.#shop.isOf(bay, place, run.chain);
      await this.#isAt(bay, place.id);
    } catch (error) {
      if (before) this.#latest.set(bay, before);
      await run.close();
      throw error;
    }
    // What is over is no session that broke off, whatever becomes of its record.
    void run.over.then(() => (this.#latest.get(bay) === run ? this.#isAt(bay, null) : undefined));
    this.#besidePastStarts(run);
  }

  /** Nobody waits for it: what it measures is seconds or minutes away. */
  #besidePastStarts(run: Run): void {
    void this.#shop.pastStarts(run.session.parts.profile).then(past => run.session.holdBeside(past));
  }
}

/** Where the record is on the laptop is nobody's business but its own. */
const withoutPath = (sentence: string, { id, path }: Place) => sentence.replaceAll(path, id);
