import { writeFile } from 'node:fs/promises';
import type { Command } from 'commander';
import { loadProfile, ProfileError } from '../../profile/load.ts';
import { parseProfile } from '../../profile/parse.ts';
import { languageOf, printAll } from './command-parts.ts';
import { surveyLines, surveyLog, writeBus } from './from-bus.ts';
import { terminalTalk } from './io.ts';
import { type NewOptions, newEngine } from './new.ts';
import { exists, writeProfile } from './profile-file.ts';

const SCHEMA_FILE = 'docs/engine-profile.schema.json';
const FIELDS_FILE = 'docs/engine-profile.md';

const more = (value: string, before: readonly string[]): readonly string[] => [...before, value];

/** Adds `new`: the interview. */
export function registerNew(engine: Command): void {
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
}

/** Adds `copy`: a profile to be changed by hand. */
export function registerCopy(engine: Command): void {
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
}

/** Adds `from-bus`: what a running vehicle tells. */
export function registerFromBus(engine: Command): void {
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
}

/** Adds `schema`: what a profile may hold, for other programs. */
export function registerSchema(engine: Command): void {
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
}
