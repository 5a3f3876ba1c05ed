import { z } from 'zod';
import { type Answers, keptSchema } from '../../interview/interview.ts';
import { ProfileError, parseProfile } from '../../profile/parse.ts';
import type { Profile } from '../../profile/schema.ts';

const ENGINES_KEY = 'first-fire-engines';
const INTERVIEW_KEY = 'first-fire-interview';

const texts = z.array(z.string());

/** What was read last, so that to show a list does not check every profile again. */
let read: { readonly text: string; readonly engines: readonly Profile[] } = { text: '', engines: [] };

/** Engines that were made on this device by an interview; one that can no longer be read is left out. */
export function madeEngines(): readonly Profile[] {
  const text = stored(ENGINES_KEY) ?? '';
  if (text !== read.text) read = { text, engines: enginesIn(text) };
  return read.engines;
}

/**
 * Keeps an engine on this device, in the place of an older one of its name.
 * @returns whether the browser keeps it beyond this visit
 */
export function keepEngine(profile: Profile): boolean {
  const others = madeEngines().filter(({ name }) => name !== profile.name);
  return store(ENGINES_KEY, JSON.stringify([...others, profile].map(each => JSON.stringify(each))));
}

/** The answers of an interview that was left on this device; none where there was none. */
export function keptInterview(): Answers {
  const parsed = keptSchema.safeParse(json(stored(INTERVIEW_KEY)));
  return parsed.success ? parsed.data.answers : {};
}

/** Null once it has made its engine. */
export function keepInterview(answers: Answers | null): void {
  store(INTERVIEW_KEY, answers === null ? '' : JSON.stringify({ schema: 'first-fire-interview/1', answers }));
}

function enginesIn(text: string): readonly Profile[] {
  const parsed = texts.safeParse(json(text));
  return (parsed.success ? parsed.data : []).flatMap(each => {
    try {
      return [parseProfile(each, 'this device')];
    } catch (error) {
      if (error instanceof ProfileError) return [];
      throw error;
    }
  });
}

function json(text: string | null): unknown {
  try {
    return JSON.parse(text ?? '');
  } catch {
    return null;
  }
}

/** A browser may keep nothing, and refuse even to be asked. */
function stored(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function store(key: string, text: string): boolean {
  try {
    localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}
