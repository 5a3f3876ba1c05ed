import { Command } from 'commander';
import { linesBySentence } from '../../prompts/by-sentence.ts';
import { languages } from '../../prompts/index.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import { nearest } from './nearest.ts';
import { registerRun } from './run/commands.ts';

// The development build of the terminal library checks everything twice.
process.env.NODE_ENV ??= 'production';

/** Errors that are sentences for the user already; anything else is a fault of the program and shows its trace. */
const forUsers = [
  'ArchiveError',
  'DeskError',
  'JobCardError',
  'OptionError',
  'ProfileError',
  'RecordError',
  'RehearsalError',
  'ReportError',
  'ResumeError',
  'ServeError',
  'SigningError',
  'VoiceError',
];

// Whoever reads may leave ("| head"): what is being done is still done to its end.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });

const program = new Command('npm start --').description(
  'Leads a technician by voice through the first start of a new or rebuilt diesel engine.',
);
program.addHelpText(
  'after',
  `
A session ends with exit code 0 when it is signed off, 3 when it is over without sign-off, 4 when it was left
(Ctrl-C twice, or nobody can answer any more) and can be resumed, 1 when it could not run, and by the
signal where one ended it (SIGTERM, SIGHUP); its record is closed each time. A rehearsal ends the same way, but with 5
where a fault was missed, or an answer given that the engine contradicts. What "verify" ends with, "verify --help" says.`,
);
// With a main job of its own a program has no command "help" by itself.
program.helpCommand('help [command]', 'display help for a command');
registerRun(program);
if (!isMainJob(process.argv.slice(2))) {
  await registerOthers();
  refuseUnknown(process.argv.slice(2));
}

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof Error && forUsers.includes(error.name)) console.error(inLanguage(error.message));
  else console.error(error);
  process.exitCode = 1;
}

/** What is wrong, in the language that was asked for, as far as it is worded there. */
function inLanguage(message: string): string {
  const { language } = program.opts<{ language: LanguageCode }>();
  return linesBySentence(message, languages[language].bySentence).join(' ');
}

/** The main job is called without a command; what only the others need is then not loaded. */
function isMainJob([first]: readonly string[]): boolean {
  return first === undefined || (first.startsWith('-') && first !== '--help' && first !== '-h');
}

/** The main job takes no words of its own: the first one is a command, or misspelt. */
function refuseUnknown([first, second]: readonly string[]): void {
  const known = [...program.commands.map(command => command.name()), 'help'];
  const named = first === 'help' ? second : first;
  if (named === undefined || named.startsWith('-') || known.includes(named)) return;
  const meant = nearest(named, known);
  const hint = meant === null ? '' : ` did you mean "${meant}"? If not,`;
  program.error(`"${named}" is no command;${hint} the commands are ${known.join(', ')}.`);
}

async function registerOthers(): Promise<void> {
  const others = await Promise.all([
    import('./verify-command.ts').then(({ registerVerify }) => registerVerify),
    import('./report-command.ts').then(({ registerReport }) => registerReport),
    import('./signing-commands.ts').then(({ registerSigning }) => registerSigning),
    import('./archive-command.ts').then(({ registerArchive }) => registerArchive),
    import('./calc/register.ts').then(({ registerCalc }) => registerCalc),
    import('./rehearse/command.ts').then(({ registerRehearse }) => registerRehearse),
    import('./model-command.ts').then(({ registerModel }) => registerModel),
    import('./voice-setup/command.ts').then(({ registerVoiceSetup }) => registerVoiceSetup),
    import('./serve-command.ts').then(({ registerServe }) => registerServe),
    import('./devices-command.ts').then(({ registerDevices }) => registerDevices),
    import('./engine/command.ts').then(({ registerEngine }) => registerEngine),
  ]);
  for (const register of others) register(program);
}
