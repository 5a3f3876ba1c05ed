import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { LanguageCode } from '../../../prompts/types.ts';
import { systemCause, systemCode } from '../../files/cause.ts';
import { readJson } from '../../files/json.ts';
import { type SpeakerProfile, speakerProfileSchema } from '../../voice/speaker-profile/profile.ts';
import { OptionError, type RunOptions } from '../run/options.ts';

/** @throws OptionError for a name that is no safe file name */
function pathOf(folder: string, name: string): string {
  if (/^[\p{L}\p{N}][\p{L}\p{N}_-]{0,39}$/u.test(name)) return join(folder, `${name}.json`);
  throw new OptionError(`Speaker "${name}" is no name; use up to 40 letters, digits, "-" and "_".`);
}

/** @throws OptionError when it cannot be written */
export async function keepProfile(folder: string, profile: SpeakerProfile): Promise<string> {
  const path = pathOf(folder, profile.name);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(path, `${JSON.stringify(profile, null, 2)}\n`);
  } catch (cause) {
    throw new OptionError(
      `The speaker's file ${path} cannot be written: ${systemCause(cause)}; choose another --speakers.`,
    );
  }
  return path;
}

/**
 * The profile of a person.
 * @throws OptionError, one sentence, when there is none, or it says what it may not
 */
export async function loadSpeaker(folder: string, name: string): Promise<SpeakerProfile> {
  const path = pathOf(folder, name);
  const unusable = (why: string): never => {
    throw new OptionError(`${path} cannot be used: ${why}; measure again: npm start -- voice-setup ${name}.`);
  };
  const text = await readFile(path, 'utf8').catch((error: unknown) => {
    if (systemCode(error) !== 'ENOENT') return unusable(systemCause(error));
    throw new OptionError(
      `There is no speaker "${name}" in ${folder}; measure first: npm start -- voice-setup ${name}.`,
    );
  });
  const json = readJson(text);
  if (!json.ok) return unusable(`it is not JSON, ${json.why}`);
  const parsed = speakerProfileSchema.safeParse(json.data);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  return unusable(`${issue?.path.join('.') || 'the file'}: ${issue?.message ?? 'wrong'}`);
}

/**
 * The profile that `--speaker` names; null where nobody is named.
 * @throws OptionError as `loadSpeaker` does, and where it was measured in another language
 */
export async function speakerOf(
  { speaker, speakers }: Pick<RunOptions, 'speaker' | 'speakers'>,
  language: LanguageCode,
): Promise<SpeakerProfile | null> {
  if (speaker === undefined) return null;
  const profile = await loadSpeaker(speakers, speaker);
  if (profile.language === language) return profile;
  throw new OptionError(
    `--speaker ${speaker}: this voice was measured in another language than the session's; leave --speaker out.`,
  );
}
