import type { Command } from 'commander';
import { VoiceError } from '../../voice/errors.ts';
import { type SpeakerProfile, shipped } from '../../voice/speaker-profile/profile.ts';
import { candidates, choose } from '../../voice/speaker-profile/trial.ts';
import { SPEAKERS_FOLDER } from '../run/options.ts';
import { keepProfile } from './profile-file.ts';
import { heldOutPrompts, trainingPrompts } from './prompts.ts';

interface SetupOptions {
  readonly from?: string;
  readonly device?: string;
  readonly speakers: string;
}

/** Adds `voice-setup NAME`: about two minutes of reading aloud. */
export function registerVoiceSetup(program: Command): void {
  program
    .command('voice-setup')
    .description('measure how a person is heard, and keep what helps in a file of their own (English)')
    .argument('<name>', 'whose voice; use it later with --speaker')
    .option('--from <folder>', 'a folder of WAV files, one for each prompt, instead of the microphone')
    .option('--device <name>', 'the microphone to use, as the system names it')
    .option('--speakers <folder>', 'where the files of people are kept', SPEAKERS_FOLDER)
    .action((name: string, _own: unknown, command: Command) =>
      setUp(name, command.optsWithGlobals<SetupOptions>()),
    );
}

async function setUp(name: string, { from, device, speakers }: SetupOptions): Promise<void> {
  const prompts = [...trainingPrompts, ...heldOutPrompts];
  const { readAloud, readingsFrom } = await import('./read-aloud.ts');
  const { tryOut } = await import('./listen.ts');
  const { summary, trialLines } = await import('./report.ts');
  if (from === undefined) console.log('Read each prompt aloud, as you would at the engine.');
  const readings =
    from === undefined
      ? await readAloud(prompts, device, line => console.log(line))
      : await readingsFrom(from, prompts);
  const training = readings.slice(0, trainingPrompts.length);
  const heldOut = readings.slice(trainingPrompts.length);
  const before = await tryOut(shipped, training, heldOut);
  if (!Number.isFinite(before.levels.speechDbfs) || !Number.isFinite(before.levels.noiseDbfs))
    throw new VoiceError(
      'soundUnusable',
      'Hardly anything was heard, so nothing was measured; check the microphone and read again.',
    );
  console.log('With the shipped settings:');
  for (const line of trialLines(prompts, [...before.training, ...before.heldOut])) console.log(line);
  const [, ...others] = candidates(before.levels.speechDbfs);
  const tried = [];
  for (const adaptation of others) tried.push(await tryOut(adaptation, training, heldOut));
  const profile: SpeakerProfile = {
    schema: 'first-fire-speaker/1',
    name,
    measuredAt: new Date().toISOString(),
    language: 'en',
    levels: before.levels,
    ...choose(before, tried),
  };
  const path = await keepProfile(speakers, profile);
  for (const line of summary(profile)) console.log(line);
  console.log(`Written to ${path}; use it with: npm start -- --speaker ${name}`);
}
