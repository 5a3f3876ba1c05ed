import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Command } from 'commander';
import { linesBySentence } from '../../../prompts/by-sentence.ts';
import { systemCause } from '../../files/cause.ts';
import { demoProfiles, loadProfile, ProfileError } from '../../profile/load.ts';
import { assumedFields, unfitFor } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';
import { checkSignature, readSignatures } from '../../record/index.ts';
import { OptionError } from '../run/options.ts';
import { checkProfile } from './check.ts';
import { languageOf, printAll, readerOf } from './command-parts.ts';
import { compareLines } from './compare.ts';
import { profileHash } from './profile-file.ts';
import { showLines } from './show.ts';

/** Adds `show`: what a profile says. */
export function registerShow(engine: Command): void {
  engine
    .command('show')
    .description(
      'the data sheet with where each value comes from, the procedure, and limits at three temperatures',
    )
    .argument('<name or file>')
    .action(async (name: string, _own: unknown, command: Command) => {
      printAll(showLines(await loadProfile(name), readerOf(command)));
      printAll(await signatureLines(name));
    });
}

/** Adds `check`: what is wrong with a profile. */
export function registerCheck(engine: Command): void {
  engine
    .command('check')
    .description('name every fault by its field, and what keeps it from the first fire of a real engine')
    .argument('<name or file>')
    .action(async (name: string, _own: unknown, command: Command) => {
      const language = languageOf(command);
      try {
        const { lines, good } = checkProfile(await loadProfile(name), name, language);
        printAll(lines);
        if (!good) process.exitCode = 1;
      } catch (error) {
        if (!(error instanceof ProfileError)) throw error;
        printAll(linesBySentence(error.message, language.bySentence));
        process.exitCode = 1;
      }
    });
}

/** Adds `compare`: what two profiles differ in. */
export function registerCompare(engine: Command): void {
  engine
    .command('compare')
    .description('what differs between two profiles')
    .argument('<one>')
    .argument('<other>')
    .action(async (one: string, other: string, _own: unknown, command: Command) => {
      printAll(compareLines(await loadProfile(one), await loadProfile(other), readerOf(command)));
    });
}

/** Adds `list`: which profiles there are. */
export function registerList(engine: Command): void {
  engine
    .command('list')
    .description('the profiles of a folder, and the invented ones')
    .argument('[folder]', 'where they lie', '.')
    .action(async (folder: string) => printAll(await listLines(folder)));
}

/** Who signed a profile, and whether it is still what was signed. */
async function signatureLines(name: string): Promise<string[]> {
  const hash = profileHash(await loadProfile(name));
  return (await readSignatures(name)).map(signature => checkSignature(signature, hash).sentence);
}

const summary = (place: string, profile: Profile) =>
  `${place}: ${profile.name}, version ${profile.version}, ${assumedFields(profile).length} assumed, ${
    profile.invented ? 'invented' : unfitFor(profile).length === 0 ? 'fit for a first fire' : 'not yet fit'
  }, ${profileHash(profile).slice(0, 16)}`;

async function listLines(folder: string): Promise<string[]> {
  let names: string[];
  try {
    names = (await readdir(folder)).filter(name => name.endsWith('.json')).sort();
  } catch (error) {
    throw new OptionError(
      `The folder ${folder} cannot be read: ${systemCause(error)}; name one with profiles.`,
    );
  }
  const own: string[] = [];
  for (const name of names) {
    const path = join(folder, name);
    if (!(await readFile(path, 'utf8')).includes('first-fire-profile/')) continue;
    try {
      own.push(summary(path, await loadProfile(path)));
    } catch (error) {
      if (!(error instanceof ProfileError)) throw error;
      const { length } = error.faults;
      own.push(`${path}: ${length} fault${length === 1 ? '' : 's'}; engine check ${path}`);
    }
  }
  const invented = await Promise.all(demoProfiles.map(async name => summary(name, await loadProfile(name))));
  return [...own, ...invented];
}
