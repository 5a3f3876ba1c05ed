import { createHash } from 'node:crypto';
import { constants } from 'node:fs';
import { access, readFile, rename, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import canonicalize from 'canonicalize';
import { systemCause } from '../../files/cause.ts';
import { readJson } from '../../files/json.ts';
import { type Answers, keptSchema } from '../../interview/interview.ts';
import { ProfileError } from '../../profile/load.ts';
import type { Profile } from '../../profile/schema.ts';

/** Where the JSON Schema lies beside the sources, as a profile names it. */
const SCHEMA_NAME = 'engine-profile.schema.json';

/** SHA-256 of what a profile says, whatever its layout: RFC 8785 before it is hashed. Where its schema lies says nothing. */
export function profileHash({ $schema: _, ...profile }: Profile): string {
  return createHash('sha256')
    .update(canonicalize(profile) ?? '')
    .digest('hex');
}

export const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

/** @throws ProfileError where nothing can be written beside this file: better before a question than after all of them */
export async function mayWrite(path: string): Promise<void> {
  await access(dirname(path), constants.W_OK).catch(error => refuseToWrite(path, error));
}

function refuseToWrite(path: string, error: unknown): never {
  throw new ProfileError(path, [`cannot be written: ${systemCause(error)}; choose a place that can be.`]);
}

/** Written whole beside it first, so that a full disk does not cost what was there. */
async function writeWhole(path: string, data: unknown): Promise<void> {
  try {
    await writeFile(`${path}.new`, `${JSON.stringify(data, null, 2)}\n`);
    await rename(`${path}.new`, path);
  } catch (error) {
    refuseToWrite(path, error);
  }
}

export const writeProfile = (path: string, { $schema: _, ...profile }: Profile): Promise<void> =>
  writeWhole(path, { $schema: SCHEMA_NAME, ...profile });

/** What was answered lies beside the profile that it makes. */
export const answersPath = (path: string): string => `${path.replace(/\.json$/, '')}.answers.json`;

export const keepAnswers = (path: string, answers: Answers): Promise<void> =>
  writeWhole(answersPath(path), { schema: 'first-fire-interview/1', answers });

/**
 * The answers kept beside a profile; none where there is no such file.
 * @throws ProfileError where it is there and cannot be used
 */
export async function keptAnswers(path: string): Promise<Answers> {
  const place = answersPath(path);
  if (!(await exists(place))) return {};
  const refuse = (why: string): never => {
    throw new ProfileError(place, [`cannot be gone on with (${why}); move it away to begin anew.`]);
  };
  const json = readJson(await readFile(place, 'utf8').catch(error => refuse(systemCause(error))));
  if (!json.ok) return refuse(json.why);
  const parsed = keptSchema.safeParse(json.data);
  if (parsed.success) return parsed.data.answers;
  const [issue] = parsed.error.issues;
  return refuse(`${issue?.path.join('.') ?? ''}: ${issue?.message ?? 'not valid'}`);
}
