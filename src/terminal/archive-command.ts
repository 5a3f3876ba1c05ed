import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { languages } from '../../prompts/index.ts';
import { addFiles } from '../archive/add-files.ts';
import type { Archive } from '../archive/archive.ts';
import { ArchiveError } from '../archive/archive-error.ts';
import { outcomes } from '../archive/card.ts';
import { compareStarts } from '../archive/compare.ts';
import { comparisonPlot } from '../archive/comparison-plot.ts';
import { type Filter, isCalendarDay } from '../archive/filter.ts';
import { type MeasureName, measureNames } from '../archive/measures.ts';
import { openArchive } from '../archive/open.ts';
import { DEFAULT_PLACE } from '../archive/place.ts';
import { headerIn, measuredOnEngines, rehearsalsOf } from '../archive/rehearsals.ts';
import { systemCause } from '../files/cause.ts';
import { svgFile } from '../report/html/svg.ts';
import type { UnitSystem } from '../session/units.ts';
import { addedLine, addedSummary } from './archive/added.ts';
import { comparisonLines } from './archive/comparison.ts';
import { foundLines, type MarkedSession, shownLines } from './archive/sessions.ts';

interface PlaceOptions {
  readonly archive: string;
  readonly json?: boolean;
}

/** Adds `archive` to the command line: all sessions of the shop in one place. */
export function registerArchive(program: Command): void {
  const archive = program
    .command('archive')
    .description('keep, search and compare the records of all sessions');

  withPlace(archive.command('add'))
    .description(
      'add records; what is there already is left alone, and what does not verify is kept and marked',
    )
    .argument('<files...>', 'records, or folders of them')
    .action((files: string[], options: PlaceOptions) => {
      // Nothing to be kept makes no archive.
      if (!files.some(file => existsSync(file)))
        throw new ArchiveError(
          `Nothing is added: there is no ${files.join(', no ')}; name records, or folders of them.`,
        );
      return inArchive(options, own => add(own, files, options), 'make');
    });

  withFilter(withPlace(archive.command('find')))
    .description('list sessions, the latest first')
    .addOption(atMost('--limit <number>', 'how many to list at most', 50))
    .option('--unverified', 'only records that do not verify')
    .action((options: PlaceOptions & Filter & { limit: number }) =>
      inArchive(options, async own => {
        const { sessions, more } = await own.find(options, options.limit);
        const isRehearsal = rehearsalsOf(own);
        const marked: MarkedSession[] = [];
        for (const session of sessions) marked.push({ ...session, rehearsal: await isRehearsal(session.id) });
        print(options, { sessions: marked, more }, () => foundLines(marked, more));
      }),
    );

  withPlace(archive.command('show'))
    .description('show one session and what it measured')
    .argument('<id>', 'the first digits of its id')
    .option('--log <file>', 'also write its record to this file, to verify it or make its report')
    .action((id: string, options: PlaceOptions, command: Command) =>
      // The main command has --log too, and takes it wherever it stands.
      inArchive(options, own =>
        show(own, id, command.optsWithGlobals<PlaceOptions & { log?: string }>(), unitsOf(command)),
      ),
    );

  withFilter(withPlace(archive.command('compare')))
    .description('hold one measured value of the last starts against each other; outliers are marked')
    .argument('<measure>', `one of ${measureNames.join(', ')}`, measureName)
    .addOption(atMost('--last <number>', 'how many starts', 40))
    .option('--svg <file>', 'also draw a plot to this file')
    .action(
      (
        measure: MeasureName,
        options: PlaceOptions & Filter & { last: number; svg?: string },
        command: Command,
      ) =>
        inArchive(options, async own => {
          const units = unitsOf(command);
          const { starts, rehearsals } = await measuredOnEngines(own, measure, options, options.last);
          const comparison = compareStarts(measure, starts);
          if (options.svg !== undefined)
            await write(options.svg, svgFile(comparisonPlot(comparison, units), comparison.title));
          print(options, { ...comparison, rehearsals }, () => comparisonLines(comparison, rehearsals, units));
        }),
    );
}

async function add(archive: Archive, files: readonly string[], options: PlaceOptions): Promise<void> {
  const counts = { new: 0, longer: 0, known: 0, refused: 0, unverified: 0 };
  for await (const added of addFiles(archive, files)) {
    counts[added.kind] += 1;
    const unverified = added.kind !== 'refused' && added.intake.state !== 'sound';
    if (unverified && added.kind !== 'known') counts.unverified += 1;
    if (added.kind === 'refused') process.exitCode = 1;
    const line = addedLine(added);
    if (line !== undefined && !options.json) console.log(line);
  }
  const total = await archive.counts();
  print(options, { ...counts, archive: total }, () => addedSummary(counts, total, archive.name));
}

async function show(
  archive: Archive,
  id: string,
  options: PlaceOptions & { log?: string },
  units: UnitSystem,
) {
  const session = await archive.session(id);
  const figures = await archive.figures(session.id);
  const log = await archive.log(session.id);
  if (options.log !== undefined) await write(options.log, log);
  const rehearsal = headerIn(log)?.rehearsal === true;
  print(options, { session, figures, rehearsal }, () => shownLines(session, figures, units, rehearsal));
}

/** Runs work on the archive and closes it whatever happens. */
async function inArchive(
  options: PlaceOptions,
  work: (archive: Archive) => Promise<void>,
  whenMissing: 'make' | 'refuse' = 'refuse',
): Promise<void> {
  const archive = await openArchive(options.archive, whenMissing === 'make');
  try {
    await work(archive);
  } finally {
    await archive.close();
  }
}

function print({ json }: PlaceOptions, value: unknown, lines: () => readonly string[]): void {
  if (json) console.log(JSON.stringify(value, null, 2));
  else for (const line of lines()) console.log(line);
}

async function write(path: string, content: string | Buffer): Promise<void> {
  try {
    // An archived record never writes over another file.
    await writeFile(path, content, { flag: typeof content === 'string' ? 'w' : 'wx' });
  } catch (error) {
    throw new ArchiveError(`${path} cannot be written: ${systemCause(error)}; choose another name.`, error);
  }
}

const withPlace = (command: Command): Command =>
  command
    .addOption(
      new Option('--archive <place>', 'a file (SQLite), or postgres://user@host/database')
        .env('FIRST_FIRE_ARCHIVE')
        .default(DEFAULT_PLACE),
    )
    .option('--json', 'everything for other programs');

const withFilter = (command: Command): Command =>
  command
    .option('--vehicle <text>', 'part of the vehicle, in any case, with or without accents')
    .option('--person <text>', 'part of the name of anybody who took part')
    .option('--engine <text>', 'part of the name of the engine or of its profile')
    .option('--from <day>', 'first day, as 2026-11-25 (UTC)', calendarDay)
    .option('--to <day>', 'last day, included', calendarDay)
    .addOption(new Option('--outcome <outcome>', 'how the session ended').choices(outcomes))
    .option('--text <text>', 'anything: names, stops, fault codes, skips, problems');

function calendarDay(value: string): string {
  if (isCalendarDay(value)) return value;
  throw new InvalidArgumentError('Give a day of the calendar as 2026-11-25.');
}

function measureName(value: string): MeasureName {
  const found = measureNames.find(name => name === value);
  if (found) return found;
  throw new InvalidArgumentError(`It is one of ${measureNames.join(', ')}.`);
}

const MOST_LISTED = 100_000;

const atMost = (flags: string, description: string, usual: number): Option =>
  new Option(flags, description).default(usual).argParser((value: string) => {
    const count = Number(value);
    if (Number.isInteger(count) && count >= 1 && count <= MOST_LISTED) return count;
    throw new InvalidArgumentError(`Give a whole number from 1 to ${MOST_LISTED}.`);
  });

/** The main command's --units, which stand before or behind the subcommand; without, those usual in English. */
const unitsOf = (command: Command): UnitSystem =>
  command.optsWithGlobals<{ units?: UnitSystem }>().units ?? languages.en.usualUnits;
