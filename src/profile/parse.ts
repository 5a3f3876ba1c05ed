import type { z } from 'zod';
import { readJson } from '../files/json.ts';
import { unjudgeableIn } from './judgeable.ts';
import { unfitFor } from './provenance.ts';
import { type Profile, profileSchema } from './schema.ts';

/** A profile that cannot be used; `faults` holds one sentence for each thing that is wrong, its message a line of each. */
export class ProfileError extends Error {
  readonly faults: readonly string[];
  constructor(source: string, faults: readonly string[]) {
    super(`Profile ${source}: ${faults.join('\n')}`);
    this.name = 'ProfileError';
    this.faults = faults;
  }
}

const pathText = (path: readonly PropertyKey[], whole: string) =>
  path.length === 0
    ? whole
    : path
        .map(part => (typeof part === 'number' ? `[${part}]` : String(part)))
        .join('.')
        .replaceAll('.[', '[');

const valueAt = (data: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, part) => (typeof value === 'object' && value !== null ? Reflect.get(value, part) : undefined),
    data,
  );

/** The schema's message without what the sentence says already: that it is wrong, and what was given. */
function allowedText(message: string): string {
  const text = message.replace(/^Invalid (input|option): /, '').replace(/, received .*$/, '');
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** What is wrong at one place of data from a file, as a sentence: path, what was given, what is allowed. */
export function faultSentence(issue: z.core.$ZodIssue, data: unknown, whole = 'the profile'): string {
  const where = pathText(issue.path, whole);
  if (issue.code === 'unrecognized_keys')
    return `${where}: ${issue.keys.map(key => `"${key}"`).join(', ')} is not a known key; remove it or correct its spelling.`;
  const given = valueAt(data, issue.path);
  if (given === undefined) return `${where}: is missing; ${allowedText(issue.message)}.`;
  const shown = JSON.stringify(given);
  const short = shown.length > 60 ? `${shown.slice(0, 57)}...` : shown;
  return `${where}: ${short} is not allowed; ${allowedText(issue.message)}.`;
}

/**
 * Reads a profile from JSON text.
 * @param source what the text is called in the error, usually the file's name
 * @throws ProfileError with one sentence per fault: path, what is wrong, what is allowed
 */
export function parseProfile(text: string, source: string): Profile {
  const json = readJson(text);
  if (!json.ok)
    throw new ProfileError(source, [
      `is not JSON: ${json.why}; correct it, or make a profile: npm start -- engine new.`,
    ]);
  const { data } = json;
  const parsed = profileSchema.safeParse(data);
  if (parsed.success) {
    const unjudgeable = unjudgeableIn(parsed.data);
    if (unjudgeable.length === 0) return parsed.data;
    throw new ProfileError(
      source,
      unjudgeable.map(({ path, message }) => `${pathText(path, 'the profile')}: ${message}.`),
    );
  }
  throw new ProfileError(
    source,
    parsed.error.issues.map(issue => faultSentence(issue, data)),
  );
}

/**
 * The profile, where it is fit for the first fire of a real engine; an invented one always is, as nothing burns in it.
 * @throws ProfileError with a sentence for each value that is only assumed and may not be
 */
export function fitForFirstFire(profile: Profile, source: string): Profile {
  const unfit = unfitFor(profile);
  if (unfit.length === 0) return profile;
  throw new ProfileError(source, [
    ...unfit.map(each =>
      each.kind === 'neverAssumed'
        ? `${each.field}: has to be read or measured before a real first fire.`
        : `${each.fields.join(', ')}: may stay assumed only where the supervisor accepts it by name.`,
    ),
    `Look at "engine check ${source}"; a rehearsal is possible as it is.`,
  ]);
}
