import type { Command } from 'commander';
import { languageCodes, languages, usualLanguage } from '../../../prompts/index.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import { type UnitSystem, unitSystems } from '../../session/units.ts';

/** Where the profiles of people are kept. */
export const SPEAKERS_FOLDER = 'first-fire-speakers';

/** Choices for running a session, as they come from the command line. */
export interface RunOptions {
  readonly profile: string;
  readonly job?: string;
  /** What the job card may hold besides, each over what its file says. */
  readonly serial?: string;
  readonly hours?: string;
  readonly oilUsed?: string;
  readonly coolantUsed?: string;
  readonly filterParts?: string;
  readonly hear?: string;
  readonly fast: boolean;
  readonly speakTo?: string;
  readonly silent: boolean;
  readonly mic: boolean;
  readonly device?: string;
  readonly bus?: string;
  readonly log?: string;
  readonly keepAudio?: string;
  readonly language: LanguageCode;
  /** The usual ones of the language when none are chosen. */
  readonly units?: UnitSystem;
  readonly speaker?: string;
  readonly speakers: string;
}

/** A choice on the command line that cannot be used: one sentence. */
export class OptionError extends Error {
  override readonly name = 'OptionError';
}

const parseUnits = (value: string): UnitSystem => {
  const found = unitSystems.find(system => system === value);
  if (found) return found;
  throw new OptionError(`Units "${value}" are not known; choose ${unitSystems.join(' or ')}.`);
};

const parseLanguage = (value: string): LanguageCode => {
  const found = languageCodes.find(code => code === value);
  if (found) return found;
  throw new OptionError(`Language "${value}" is not known; choose ${languageCodes.join(' or ')}.`);
};

/** Options of every command that hears and speaks. */
export const withVoiceOptions = (command: Command): Command =>
  command
    .option('--hear <file>', 'listen to a WAV file or a recorded session instead of a microphone')
    .option('--fast', 'with --hear: as fast as it can be understood, instead of in real time', false)
    .option('--speak-to <folder>', 'write what is said to WAV files instead of a loudspeaker')
    .option('--silent', 'say nothing aloud', false)
    .option('--no-mic', 'no microphone: keys only')
    .option('--device <name>', 'the microphone to use, as the system names it')
    .option('--bus <source>', 'the vehicle bus: a candump log, a CAN interface, or a serial adapter')
    .option('--keep-audio <file>', 'also keep all that is heard in one WAV file')
    .option('--speaker <name>', 'whose voice it is, after "voice-setup" with this name')
    .option('--speakers <folder>', 'where the files of people are kept', SPEAKERS_FOLDER);

export const withRunOptions = (command: Command): Command =>
  withVoiceOptions(
    command
      .option(
        '--profile <name or file>',
        'the engine: demo-six, demo-four, demo-genset, demo-boat, or the path of a profile',
        'demo-six',
      )
      .option('--job <file>', 'job card in JSON: vehicle, engine, technician, second, supervisor')
      .option('--serial <text>', 'for the job card: serial number of the engine, or VIN')
      .option('--hours <text>', 'for the job card: hours run')
      .option('--oil-used <text>', 'for the job card: the oil that was filled in')
      .option('--coolant-used <text>', 'for the job card: the coolant that was filled in')
      .option('--filter-parts <text>', 'for the job card: part numbers of the filters')
      .option('--log <file>', 'where the record goes (default: first-fire-<date and time>.jsonl here)')
      .option(
        '--language <code>',
        `the language of the session: ${languageCodes.join(', ')}`,
        parseLanguage,
        usualLanguage,
      )
      .option(
        '--units <system>',
        `units that are spoken and shown: us or metric (default: ${languageCodes.map(code => `${languages[code].usualUnits} in ${code}`).join(', ')})`,
        parseUnits,
      ),
  );
