import { readFile } from 'node:fs/promises';
import { systemCause } from '../files/cause.ts';
import { fitForFirstFire, ProfileError, parseProfile } from './parse.ts';
import type { Profile } from './schema.ts';

export { fitForFirstFire, ProfileError, parseProfile };

export const demoProfiles = ['demo-six', 'demo-four', 'demo-genset', 'demo-boat'] as const;
type DemoProfile = (typeof demoProfiles)[number];

const isDemo = (value: string): value is DemoProfile => demoProfiles.some(known => known === value);

/**
 * Loads an engine profile: the name of an invented demo profile, or the path of a JSON file.
 * @throws ProfileError when the file cannot be read or is not a valid profile
 */
export async function loadProfile(nameOrPath: string): Promise<Profile> {
  const path = isDemo(nameOrPath) ? new URL(`./demo/${nameOrPath}.json`, import.meta.url) : nameOrPath;
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    throw new ProfileError(nameOrPath, [
      `cannot be read: ${systemCause(error)}; give the path of a profile or one of ${demoProfiles.join(', ')}.`,
    ]);
  }
  return parseProfile(text, nameOrPath);
}
