import type { Command } from 'commander';
import { languages } from '../../../prompts/index.ts';
import type { Language, LanguageCode } from '../../../prompts/types.ts';
import type { UnitSystem } from '../../session/units.ts';
import { wrapped } from './io.ts';
import type { Reader } from './value-text.ts';

/** Prints lines no wider than the terminal. */
export const printAll = (lines: readonly string[]): void => {
  for (const line of lines) console.log(wrapped(line, process.stdout.columns ?? Number.POSITIVE_INFINITY));
};

/** The language of the main command, which takes it wherever it stands. */
export const languageOf = (command: Command): Language =>
  languages[command.optsWithGlobals<{ language: LanguageCode }>().language];

/** In whose language and units it is told. */
export const readerOf = (command: Command): Reader => {
  const language = languageOf(command);
  const { units = language.usualUnits } = command.optsWithGlobals<{ units?: UnitSystem }>();
  return { language, units };
};
