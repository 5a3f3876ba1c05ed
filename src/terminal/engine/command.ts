import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Command, Option } from 'commander';
import { linesBySentence } from '../../../prompts/by-sentence.ts';
import { languages } from '../../../prompts/index.ts';
import type { Language, LanguageCode } from '../../../prompts/types.ts';
import { systemCause } from '../../files/cause.ts';
import { acceptableNames, accepting } from '../../profile/accepting.ts';
import { demoProfiles, loadProfile, ProfileError } from '../../profile/load.ts';
import { parseProfile } from '../../profile/parse.ts';
import { acceptables, acceptedByName, assumedFields, unfitFor } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';
import {
  addSignature,
  checkSignature,
  readPrivateKey,
  readSignatures,
  type SigningRole,
  signHash,
  signingRoles,
} from '../../record/index.ts';
import type { UnitSystem } from '../../session/units.ts';
import { OptionError } from '../run/options.ts';
import { readText } from '../signing-commands.ts';
import { checkProfile } from './check.ts';
import { compareLines } from './compare.ts';
import { surveyLines, surveyLog, writeBus } from './from-bus.ts';
import { terminalTalk, wrapped } from './io.ts';
import { type NewOptions, newEngine } from './new.ts';
import { exists, profileHash, writeProfile } from './profile-file.ts';
import { showLines } from './show.ts';
import type { Reader } from './value-text.ts';

const more = (value: string, before: readonly string[]): readonly string[] => [...before, value];

const printAll = (lines: readonly string[]) => {
  for (const line of lines) console.log(wrapped(line, process.stdout.columns ?? Number.POSITIVE_INFINITY));
};

const languageOf = (command: Command): Language =>
  languages[command.optsWithGlobals<{ language: LanguageCode }>().language];

const readerOf = (command: Command): Reader => {
  const language = languageOf(command);
  const { units = language.usualUnits } = command.optsWithGlobals<{ units?: UnitSystem }>();
  return { language, units };
};

/** Adds `engine`: profiles of engines made, shown, checked, compared, copied, listed, accepted and signed. */
export function registerEngine(program: Command): void {
  const engine = program.command('engine').description('make and look after the profiles of engines');

  engine
    .command('new')
    .description('an interview with plate and manual in hand; one that was left is gone on with')
    .argument('[file]', 'where the profile goes', 'my-engine.json')
    .option('--all', 'ask also for the figures that hardly anybody looks up', false)
    .option('--voice', 'answer numbers, choices, yes and no by voice too; names by the keys', false)
    .option('--device <name>', 'the microphone to use, as the system names it')
    .option('--again <field>', 'ask this one again; may be given again', more, [])
    .action(async (file: string, _own: unknown, command: Command) => {
      // The main command has --device and --language too, and takes them wherever they stand.
      const options = command.optsWithGlobals<NewOptions & { voice: boolean; device?: string }>();
      const language = languageOf(command);
      const keys = terminalTalk();
      const io = options.voice
        ? await (await import('./open-voice.ts')).openVoice(keys, options, language)
        : keys;
      try {
        process.exitCode = await newEngine(file, options, io, language);
      } finally {
        io.close();
      }
    });

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

  engine
    .command('compare')
    .description('what differs between two profiles')
    .argument('<one>')
    .argument('<other>')
    .action(async (one: string, other: string, _own: unknown, command: Command) => {
      printAll(compareLines(await loadProfile(one), await loadProfile(other), readerOf(command)));
    });

  engine
    .command('copy')
    .description('a copy under another name, version 1, to be changed by hand')
    .argument('<from>')
    .argument('<to>', 'a file that is not there yet')
    .option('--name <name>', 'name of the copy')
    .action(async (from: string, to: string, { name }: { name?: string }) => {
      if (await exists(to)) throw new ProfileError(to, ['is there already; choose another file.']);
      const profile = await loadProfile(from);
      const copy = { ...profile, name: name ?? `${profile.name}, copy`.slice(0, 60), version: 1 };
      await writeProfile(to, parseProfile(JSON.stringify(copy), to));
      console.log(`Copied to ${to}.`);
    });

  engine
    .command('list')
    .description('the profiles of a folder, and the invented ones')
    .argument('[folder]', 'where they lie', '.')
    .action(async (folder: string) => printAll(await listLines(folder)));

  engine
    .command('accept')
    .description(
      'the supervisor accepts, by name (--by), what of the starter, coolant, heater and idle is only assumed',
    )
    .argument('<file>')
    .requiredOption('--by <name>', 'name of the supervisor')
    .addOption(
      new Option('--only <what...>', 'starter limit, coolant, heater, idle').choices([...acceptables]),
    )
    .action(async (file: string, { by, only }: { by: string; only?: readonly string[] }) => {
      if (by.trim() === '') throw new OptionError('--by wants the name of the supervisor.');
      const profile = await loadProfile(file);
      const open = unfitFor(profile).flatMap(unfit => (unfit.kind === 'notAccepted' ? [unfit.what] : []));
      const wanted = open.filter(what => only === undefined || only.includes(what));
      let accepted: Profile = profile;
      for (const what of wanted) accepted = accepting(accepted, what, by.trim());
      if (wanted.length === 0) {
        console.log('There is nothing to accept.');
        return;
      }
      await writeProfile(file, { ...accepted, version: profile.version + 1 });
      for (const what of wanted)
        console.log(
          `${by.trim()} accepts ${acceptableNames[what]} as assumed: ${acceptedByName[what].join(', ')}.`,
        );
    });

  engine
    .command('from-bus')
    .description('what the bus of the running vehicle gives, from a log of it, and what stays to be spoken')
    .argument('<log>', 'as "candump -L can0 > FILE" writes it')
    .option('--into <file>', 'write it into this profile, or into the interview that was begun for it')
    .action(async (log: string, { into }: { into?: string }) => {
      const survey = await surveyLog(log);
      printAll(surveyLines(survey));
      printAll(
        into === undefined
          ? ['Write it into a profile or an unfinished interview with --into FILE.']
          : await writeBus(survey, into),
      );
    });

  engine
    .command('schema')
    .description('the JSON Schema of a profile, for editors and other programs')
    .option('--write', `write it, and the page of all fields, to ${SCHEMA_FILE} and ${FIELDS_FILE}`, false)
    .action(async ({ write }: { write: boolean }) => {
      const { fieldsPage, jsonSchema } = await import('./schema.ts');
      const text = `${JSON.stringify(jsonSchema(), null, 2)}\n`;
      if (!write) {
        process.stdout.write(text);
        return;
      }
      await writeFile(SCHEMA_FILE, text);
      await writeFile(FIELDS_FILE, fieldsPage());
      console.log(`Written: ${SCHEMA_FILE}, ${FIELDS_FILE}.`);
    });

  engine
    .command('sign')
    .description('sign a profile as it is; any change of it later shows')
    .argument('<file>')
    .requiredOption('--key <file>', 'the private key, signing-key.pem')
    .addOption(new Option('--role <role>', 'whose key it is').choices(signingRoles).default('supervisor'))
    .action(async (file: string, { key, role }: { key: string; role: SigningRole }) => {
      const profile = await loadProfile(file);
      const signature = signHash(
        profileHash(profile),
        readPrivateKey(await readText(key), key),
        role,
        new Date(),
      );
      const path = await addSignature(file, signature);
      console.log(
        `Signed version ${profile.version} with the key ${signature.keyId} of the ${role}: ${path}.`,
      );
    });
}

const SCHEMA_FILE = 'docs/engine-profile.schema.json';
const FIELDS_FILE = 'docs/engine-profile.md';

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
