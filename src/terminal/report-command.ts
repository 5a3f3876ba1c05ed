import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Command, Option } from 'commander';
import { systemCause } from '../files/cause.ts';
import { readRecorded } from '../record/vocabulary/index.ts';
import { buildDocument } from '../report/document/build.ts';
import { csvSchemas, eventsCsv, readingsCsv } from '../report/export/csv.ts';
import { toExport } from '../report/export/json.ts';
import { reportJsonSchema } from '../report/export/schema.ts';
import { gather } from '../report/gather.ts';
import { renderHtml } from '../report/html/page.ts';
import { renderPdf } from '../report/pdf/render.ts';
import { summarize } from '../report/summarize.ts';
import { readHeader } from '../session/header.ts';
import { type UnitSystem, unitSystems } from '../session/units.ts';

interface ReportOptions {
  readonly html?: string;
  readonly pdf?: string;
  readonly csv?: string;
  readonly json?: string;
  readonly units?: UnitSystem;
  readonly hash?: string;
}

/**
 * Adds `report LOG` to the command line. A record that does not verify is reported all the same, and said to
 * be so in the first line of everything; the exit code is then 1.
 */
export function registerReport(program: Command): void {
  program
    .command('report')
    .description("make the supervisor's report of a record: HTML and PDF beside it, unless files are named")
    .argument('<log>', 'the record')
    .option(
      '--hash <hash>',
      'a hash of the record that is known from elsewhere, to find it chained anew or cut off',
    )
    .option('--html <file>', 'where the HTML goes')
    .option('--pdf <file>', 'where the PDF goes')
    .option(
      '--csv <folder>',
      'a folder: readings.csv, events.csv and a JSON Schema of their columns go there',
    )
    .option('--json <file>', 'everything for other programs, with its JSON Schema beside it')
    .addOption(
      new Option('--units <system>', 'units of the report (default: as in the session)').choices(unitSystems),
    )
    .action((log: string, options: ReportOptions, command: Command) =>
      // The main command has --units too, with a default: only what was given here counts.
      makeReport(log, { ...options, ...unitsGiven(command) }),
    );
}

function unitsGiven(command: Command): Pick<ReportOptions, 'units'> {
  const source = command.getOptionValueSource('units') ?? command.parent?.getOptionValueSource('units');
  if (source !== 'cli') return {};
  const { units } = command.optsWithGlobals<{ units?: UnitSystem }>();
  return units === undefined ? {} : { units };
}

async function makeReport(log: string, options: ReportOptions): Promise<void> {
  if (options.csv !== undefined && /\.csv$/i.test(options.csv))
    throw new ReportError(`--csv ${options.csv}: three files go into a folder; name a folder.`);
  const input = await gather(log, options.hash === undefined ? {} : { lastHash: options.hash });
  const [opened] = input.entries;
  const units = options.units ?? (opened ? readHeader(opened.data)?.units : undefined) ?? 'metric';
  const model = summarize(input);
  const report = buildDocument(model, units);
  if (report.warning !== undefined) {
    console.log(process.stdout.isTTY ? `\u001b[31m${report.warning}\u001b[0m` : report.warning);
    process.exitCode = 1;
  }

  const named = options.html ?? options.pdf ?? options.csv ?? options.json;
  const html = options.html ?? (named === undefined ? `${log}.html` : undefined);
  const pdf = options.pdf ?? (named === undefined ? `${log}.pdf` : undefined);
  if (html !== undefined) await write(html, renderHtml(report));
  if (pdf !== undefined) await write(pdf, await renderPdf(report, new Date()));

  if (options.json === undefined && options.csv === undefined) return;
  const exported = toExport(model, readRecorded(input.entries).entries);
  const jsonText = (value: unknown) => `${JSON.stringify(value, null, 2)}\n`;
  if (options.json !== undefined) {
    await write(options.json, jsonText(exported));
    await write(`${options.json.replace(/\.json$/, '')}.schema.json`, jsonText(reportJsonSchema()));
  }
  if (options.csv !== undefined) {
    await makeFolder(options.csv);
    const { readings, events, verified } = exported;
    await write(join(options.csv, 'readings.csv'), readingsCsv(readings, verified));
    await write(join(options.csv, 'events.csv'), eventsCsv(events, verified));
    await write(join(options.csv, 'columns.schema.json'), jsonText(csvSchemas()));
  }
}

/** A file of the report that cannot be written: one sentence. */
class ReportError extends Error {
  override readonly name = 'ReportError';
}

async function write(path: string, content: string | Buffer): Promise<void> {
  try {
    await writeFile(path, content);
  } catch (error) {
    throw new ReportError(`${path} cannot be written: ${systemCause(error)}; choose another place.`);
  }
  console.log(path);
}

async function makeFolder(path: string): Promise<void> {
  try {
    await mkdir(path, { recursive: true });
  } catch (error) {
    throw new ReportError(`${path} cannot be made a folder: ${systemCause(error)}; choose another place.`);
  }
}
