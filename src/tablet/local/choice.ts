import { z } from 'zod';
import type { JobCard } from '../../../machines/context.ts';
import { languageCodes, languages, usualLanguage } from '../../../prompts/index.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import type { Profile } from '../../profile/schema.ts';
import { jobCardSchema } from '../../record/vocabulary/opened.ts';
import { demoJob, practiceJob } from '../../session/demo-job.ts';
import type { UnitSystem } from '../../session/units.ts';
import { keepEngine, keepInterview, madeEngines } from './made-engines.ts';

/** What is chosen before a session begins. */
export interface Choice {
  readonly profile: Profile;
  readonly job: JobCard;
  readonly units: UnitSystem;
  readonly language: LanguageCode;
}

/** What was chosen on this device last, to be begun with again, here or in the bay. */
const keptSchema = z.object({
  job: jobCardSchema.catch(demoJob),
  language: z.enum(languageCodes).catch(usualLanguage),
  /** Name of an engine profile. */
  profile: z.string().catch(''),
});
export type KeptChoice = Readonly<z.infer<typeof keptSchema>>;

const KEY = 'first-fire-choice';

/** What was chosen before; what cannot be read any more is as it was at first. Null where nothing was. */
export function loadChoice(): KeptChoice | null {
  try {
    const text = localStorage.getItem(KEY);
    return text === null ? null : keptSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** A browser that keeps nothing is no reason to refuse a choice. */
export function keepChoice(choice: KeptChoice): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(choice));
  } catch {
    // It holds for this visit.
  }
}

/** Engines that were loaded from files on this visit. */
let loaded: readonly Profile[] = [];

/** Engines that this device has besides those that come with the page: made here, and loaded from files. */
export const loadedProfiles = (): readonly Profile[] => {
  const made = madeEngines();
  return [...made.filter(({ name }) => !loaded.some(other => other.name === name)), ...loaded];
};

export function addProfile(profile: Profile): void {
  loaded = [...loaded.filter(({ name }) => name !== profile.name), profile];
}

/** An engine of this device of which the supervisor accepted something by name: kept in the place of what it was. */
export function engineAccepted(profile: Profile): void {
  keepEngine(profile);
  addProfile(profile);
}

/**
 * An engine that was described on this device: kept, and chosen for the session that comes next.
 * @returns whether the browser keeps it beyond this visit
 */
export function ownEngine(profile: Profile): boolean {
  const kept = keepEngine(profile);
  addProfile(profile);
  keepInterview(null);
  const { job, language } = loadChoice() ?? { job: demoJob, language: usualLanguage };
  // A card that nobody filled in is of this engine now.
  const card = job.technician === demoJob.technician ? practiceJob(profile, languages[language]) : job;
  keepChoice({ job: card, language, profile: profile.name });
  return kept;
}
