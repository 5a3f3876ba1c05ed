import { type Clip, clipsIn } from './recordings.ts';

const flag = '--people';

/** Folders of recordings of people, from the command line (`--people FOLDER ...`) or from FIRST_FIRE_PEOPLE (a:b). */
export function peopleFolders(args: readonly string[]): {
  readonly folders: readonly string[];
  /** The arguments without them. */
  readonly rest: readonly string[];
} {
  const folders: string[] = [];
  const rest: string[] = [];
  let inFolders = false;
  for (const arg of args) {
    if (arg.startsWith('--')) inFolders = arg === flag;
    if (arg === flag) continue;
    (inFolders ? folders : rest).push(arg);
  }
  const named = process.env.FIRST_FIRE_PEOPLE?.split(':').filter(folder => folder !== '') ?? [];
  return { folders: folders.length > 0 ? folders : named, rest };
}

export const notMeasured =
  'People were not measured: name folders of recordings by --people FOLDER ... or in FIRST_FIRE_PEOPLE.';

/** All clips of some folders. @throws RecordingsError */
export const clipsOf = (folders: readonly string[]): readonly Clip[] => folders.flatMap(clipsIn);
