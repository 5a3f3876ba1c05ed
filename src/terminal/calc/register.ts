import { type Command, Option } from 'commander';
import { describeIssue, type Issue } from '../../engineering/result.ts';
import { type CalcIo, processIo } from './io.ts';
import { asJson, asText } from './present.ts';
import { parseQuantity, shown, typedUnits, type UnitSystem, unitLabel } from './quantities.ts';
import { parsePairs, parseTable } from './readings-text.ts';
import type { Inputs, NumberOption, Subject } from './subject.ts';
import { subjects } from './subjects/index.ts';
import { UsageError } from './usage-error.ts';

/** Exit code for input that cannot be used; a limit that is not met is an answer, and exits with 0. */
const EXIT_USAGE = 2;

/**
 * Adds `calc <subject>` to the program: one command for each subject, all with `--units` and `--json`.
 * Input that cannot be used ends in one sentence on standard error and exit code 2, set and not forced.
 */
export function registerCalc(program: Command, io: CalcIo = processIo): void {
  const calc = program
    .command('calc')
    .description('work out one figure of a first start, with its limit, margin and source');
  for (const each of subjects) registerSubject(calc, each, io);
}

function registerSubject(calc: Command, subject: Subject, io: CalcIo): void {
  const command = calc.command(subject.name).description(subject.summary);
  if (subject.pairs) command.argument('[file]', `${subject.pairs.help}; - or nothing for standard input`);
  command.addOption(
    new Option('--units <system>', 'units of numbers without one, and of the answer')
      .choices(['metric', 'us'])
      .default('metric'),
  );
  command.option('--json', 'print JSON, unrounded, for other programs', false);
  for (const option of Object.values(subject.numbers)) {
    command.option(`--${option.flag} <number>`, helpOf(option));
  }
  for (const { flag, help, choices, otherwise } of Object.values(subject.words)) {
    const option = new Option(`--${flag} <words>`, help);
    if (choices) option.choices([...choices]);
    command.addOption(otherwise === undefined ? option : option.default(otherwise));
  }
  command.action(async () => {
    try {
      await run(subject, command, io);
    } catch (error) {
      if (!(error instanceof UsageError)) throw error;
      io.complain(error.message);
      io.setExitCode(EXIT_USAGE);
    }
  });
}

function helpOf({ help, quantity, otherwise }: NumberOption): string {
  const units = typedUnits(quantity);
  const inUnits = units === '' ? '' : ` (${units})`;
  if (otherwise === undefined) return `${help}${inUnits}`;
  return `${help}${inUnits}; ${shown(otherwise, quantity, 'metric')} ${unitLabel(quantity, 'metric')}`
    .trimEnd()
    .concat(' if left out');
}

async function run(subject: Subject, command: Command, io: CalcIo): Promise<void> {
  const options: Readonly<Record<string, unknown>> = command.optsWithGlobals();
  const system: UnitSystem = options.units === 'us' ? 'us' : 'metric';
  const typed = (flag: string): string | undefined => {
    const value = options[flag.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase())];
    return typeof value === 'string' ? value : undefined;
  };
  const words = (key: string): string | undefined => typed(subject.words[key]?.flag ?? key);
  const inputs: Inputs<string, string> = {
    number: key => {
      const option = subject.numbers[key];
      if (!option) return undefined;
      const text = typed(option.flag);
      if (text === undefined) return option.otherwise;
      return parseQuantity(text, option.quantity, system, `--${option.flag}`);
    },
    words,
    table: (key, quantities) => {
      const text = words(key);
      return text === undefined
        ? []
        : parseTable(text, quantities, system, `--${subject.words[key]?.flag ?? key}`);
    },
    pairs: subject.pairs ? await readPairs(subject.pairs.quantities, command.args[0], system, io) : [],
  };
  const answer = subject.answer(inputs);
  if (!answer.ok) throw new UsageError(inUserWords(answer.issue, subject, typed));
  io.print(
    options.json === true ? asJson(subject.name, answer.figures, system) : asText(answer.figures, system),
  );
}

async function readPairs(
  quantities: Parameters<typeof parsePairs>[1],
  file: string | undefined,
  system: UnitSystem,
  io: CalcIo,
) {
  const standard = file === undefined || file === '-';
  const text = standard ? await io.readStandardInput() : await io.readFile(file);
  return parsePairs(text, quantities, system, standard ? 'standard input' : file);
}

/** Names the option instead of the calculation's input, with what was typed; limits stay in SI, as the rules have them. */
function inUserWords(issue: Issue, subject: Subject, typed: (flag: string) => string | undefined): string {
  const number = subject.numbers[issue.input];
  const given = number ? (typed(number.flag) ?? issue.given) : issue.given;
  const flag = number?.flag ?? subject.words[issue.input]?.flag;
  const input = flag === undefined ? issue.input : `--${flag}`;
  return describeIssue({ ...issue, input, ...(given !== undefined && { given }) });
}
