import type { Command } from 'commander';
import { OptionError } from '../run/options.ts';
import type { RehearseOptions } from './options.ts';

/** A number from the command line inside its range. */
const number =
  (name: string, min: number, max: number, whole: boolean) =>
  (text: string): number => {
    const value = text.trim() === '' ? Number.NaN : Number(text);
    if (value >= min && value <= max && (!whole || Number.isInteger(value))) return value;
    throw new OptionError(
      `--${name} is "${text}"; give a ${whole ? 'whole ' : ''}number from ${min} to ${max}.`,
    );
  };

const more = (value: string, before: readonly string[]): readonly string[] => [...before, value];

/** Adds `rehearse`: the whole start on a model of the engine, with faults. */
export function registerRehearse(program: Command): void {
  program
    .command('rehearse')
    .description(
      'practise the start on a model of the engine (--profile, --units, --silent, --no-mic, --log as for a start)',
    )
    .option('--fault <name[@phase]>', 'what goes wrong, and in which phase; may be given again', more, [])
    .option('--seed <number>', 'the same seed gives the same engine', number('seed', 0, 2 ** 31, true), 1)
    .option(
      '--speed <factor>',
      'how much faster time passes: always with --by-itself, else only while there is nothing but time to wait for',
      number('speed', 1, 60, false),
      1,
    )
    .option('--ambient <degC>', 'temperature around the engine', number('ambient', -40, 45, false), 5)
    .option('--by-itself', 'a virtual technician answers; nothing is spoken aloud', false)
    .option('--json <file>', 'also write the debrief to this file')
    .action(async (_own: unknown, command: Command) => {
      const { rehearse } = await import('./rehearse.ts');
      process.exitCode = await rehearse(command.optsWithGlobals<RehearseOptions>());
    });
}
