import { constants } from 'node:os';
import { resolve } from 'node:path';
import { type Command, Option } from 'commander';
import { languages } from '../../prompts/index.ts';
import { demoProfiles, fitForFirstFire, loadProfile } from '../profile/load.ts';
import type { Profile } from '../profile/schema.ts';
import { type OpenCode, startServer, stopAllOnFailure } from '../server/index.ts';
import { practiceJob } from '../session/demo-job.ts';
import { loadJobCard } from '../session/job-card-file.ts';
import { MODELS_FOLDER } from './model-command.ts';
import { OptionError, type RunOptions } from './run/options.ts';
import { greeting } from './serve-greeting.ts';
import { onEndSignals } from './signals.ts';

interface ServeCommandOptions extends Pick<RunOptions, 'profile' | 'job' | 'units' | 'language'> {
  readonly port: number;
  readonly host: string;
  readonly bay: readonly string[];
  readonly shop: string;
  readonly page: string;
  readonly archive?: string;
  readonly models: string;
}

const demos: readonly string[] = demoProfiles;
const MOST_BAYS = 50;

function parsePort(text: string): number {
  const port = Number(text);
  if (/^\d{1,5}$/.test(text) && port <= 65_535) return port;
  throw new OptionError(`Port "${text}" is none; give a number from 0 to 65535.`);
}

/** Adds `serve`: the tablet, the second person and the supervisor, each with their own face of one session. */
export function registerServe(program: Command): void {
  program
    .command('serve')
    .description(
      'serve the tablet, the second person and the supervisor; --profile, --job, --units and --language as above',
    )
    .option('--port <number>', 'port to listen at', parsePort, 8443)
    .option('--host <address>', 'address to listen at', '0.0.0.0')
    .option('--bay <name...>', 'names of the bays', ['bay 1'])
    .option('--shop <folder>', 'where the records are kept', 'first-fire-shop')
    .option('--page <folder>', 'where the built page is', 'dist-tablet')
    .addOption(
      new Option(
        '--archive <place>',
        'the archive of the shop: a file, or postgres://user@host/database (default: a file in its folder)',
      ).env('FIRST_FIRE_ARCHIVE'),
    )
    .option('--models <folder>', 'Vosk models that tablets may take', MODELS_FOLDER)
    .action(async (_own: unknown, command: Command) => {
      await serve(command.optsWithGlobals<ServeCommandOptions>());
    });
}

async function serve({
  port,
  host,
  bay,
  shop,
  page,
  archive,
  models,
  profile,
  job,
  units,
  language,
}: ServeCommandOptions): Promise<void> {
  const server = await startServer({
    port,
    host,
    bays: checkBays(bay),
    shop: resolve(shop),
    page: resolve(page),
    archive,
    models: resolve(models),
    usual: {
      profiles: await profilesFor(profile),
      job:
        job === undefined
          ? practiceJob(await loadProfile(profile), languages[language])
          : await loadJobCard(job),
      units: units ?? languages[language].usualUnits,
      language,
    },
    tell: sentence => console.log(sentence),
    onCodes: codes => console.log(codeTable(codes)),
  });
  const letFail = stopAllOnFailure(server, sentence => console.log(sentence));
  const end = ended();
  for (const line of greeting(server)) console.log(line);
  console.log(codeTable(server.codes()));
  await end;
  console.log('Ending; sessions that go on can be gone on with by serving the same folder again.');
  await server.close();
  letFail();
}

function checkBays(bays: readonly string[]): readonly string[] {
  const names = [...new Set(bays.map(name => name.trim()))];
  const wrong = names.find(name => !/^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,29}$/u.test(name));
  if (wrong !== undefined)
    throw new OptionError(`Bay "${wrong}" is no name; use up to 30 letters, digits and spaces.`);
  if (names.length > MOST_BAYS)
    throw new OptionError(`${names.length} bays are too many; one server takes ${MOST_BAYS}.`);
  return names;
}

/** The engine that was named first, then the invented ones. */
async function profilesFor(named: string): Promise<ReadonlyMap<string, Profile>> {
  const profiles = new Map<string, Profile>();
  for (const name of [named, ...demos]) {
    const profile = fitForFirstFire(await loadProfile(name), name);
    // A file is known by the name inside it: no path of this machine goes to the tablets.
    profiles.set(demos.includes(name) ? name : profile.name, profile);
  }
  return profiles;
}

const spaced = (code: string) => `${code.slice(0, 3)} ${code.slice(3)}`;

function codeTable(codes: readonly OpenCode[]): string {
  const lines = codes.map(({ bay, role, code }) => `  ${bay.padEnd(30)} ${role.padEnd(12)} ${spaced(code)}`);
  return ['Pairing codes, each for one device, for ten minutes:', ...lines].join('\n');
}

/** A second signal, after the first one, ends it at once. */
const ended = () =>
  new Promise<void>(resolveEnd => {
    let ending = false;
    onEndSignals(signal => {
      if (ending) process.exit(128 + constants.signals[signal]);
      ending = true;
      resolveEnd();
    });
  });
