import { whyEquivalent } from './equivalents.ts';
import type { Figures, FileFigures, Survivor } from './figures.ts';
import { folders, sourcesIn } from './folders.ts';

interface Sum {
  readonly mutants: number;
  readonly killed: number;
  readonly survived: number;
  readonly noCoverage: number;
  readonly timedOut: number;
  readonly equivalent: number;
}

const NOTHING: Sum = { mutants: 0, killed: 0, survived: 0, noCoverage: 0, timedOut: 0, equivalent: 0 };

function count(sum: Sum, file: string, { killed, timedOut, survivors }: FileFigures): Sum {
  const uncovered = survivors.filter(({ status }) => status === 'no coverage').length;
  return {
    mutants: sum.mutants + killed + timedOut + survivors.length,
    killed: sum.killed + killed,
    survived: sum.survived + survivors.length - uncovered,
    noCoverage: sum.noCoverage + uncovered,
    timedOut: sum.timedOut + timedOut,
    equivalent: sum.equivalent + survivors.filter(each => whyEquivalent(file, each) !== undefined).length,
  };
}

const percent = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)} %`;

function cells(sum: Sum): string {
  const { mutants, killed, survived, noCoverage, timedOut, equivalent } = sum;
  const noticed = killed + timedOut;
  const scores = [percent(noticed, mutants), equivalent, percent(noticed, mutants - equivalent)];
  return [mutants, killed, survived, noCoverage, timedOut, ...scores].join(' | ');
}

const code = (text: string): string => (text === '' ? 'nothing' : `\`\` ${text.replaceAll('|', '\\|')} \`\``);

function survivorRow(file: string, survivor: Survivor): string {
  const { line, text, mutator, replacement, status } = survivor;
  const why = whyEquivalent(file, survivor) ?? (status === 'no coverage' ? '**not covered**' : '**open**');
  return `| ${line} | ${mutator} | ${code(text)} | ${code(replacement)} | ${why} |`;
}

const COLUMNS =
  'mutants | killed | survived | not covered | timed out | score | equivalent | score without those';
const ALIGNED = '---:|---:|---:|---:|---:|---:|---:|---:|';

/** The page of all figures: a row a folder, a row a file, and each survivor with its line. */
export function mutantsPage(figures: Figures): string {
  const rows = folders.map(folder => {
    const sources = sourcesIn(folder);
    const measured = sources.filter(file => file in figures);
    const sum = measured.reduce(
      (before, file) => (figures[file] ? count(before, file, figures[file]) : before),
      NOTHING,
    );
    const extent = `${measured.length} of ${sources.length}`;
    return `| ${folder} | ${extent} | ${measured.length === 0 ? 'not measured | | | | | | |' : cells(sum)} |`;
  });
  const files = Object.entries(figures);
  const fileRows = files.map(([file, each]) => `| ${file} | ${cells(count(NOTHING, file, each))} |`);
  const survivors = files
    .filter(([, each]) => each.survivors.length > 0)
    .map(
      ([file, each]) => `### ${file}

| line | mutator | in | becomes | why no test notices |
|---:|---|---|---|---|
${each.survivors.map(survivor => survivorRow(file, survivor)).join('\n')}
`,
    );

  return `# Mutants

How many small faults, put into the program one at a time, the tests notice. Written by
\`npm run mutants -- FOLDER ...\` (a folder or a file; the mutators of Stryker, none switched off), which measures
what it is given anew, as far as it or its tests changed, and keeps the rest. Each file is held by the tests of
its own folder alone, or the quick ones of them (\`bench/mutants/folders.ts\`); with \`--quick N\` each file of them
is loaded anew in one process for each mutant, in place of a run of vitest. Held against such runs on
\`src/record/line-tail.ts\`, it told the same of each of its 86 mutants, in a seventh of the time. In one thing it asks
more: a mutant that acts while a machine is built is reached only by the first test of a file, which builds it for all of
them, and there every test behind that one is asked as well. A
folder's figures are those of its files that were measured, and say nothing of the others; a mutant whose tests do
not end in time ("timed out": an endless loop, or else a machine too busy to tell) counts as noticed. *Equivalent* are survivors that change nothing that could be
observed, each with a word why; the last column leaves them out. Where code has only moved since, a survivor stands at
its new line; where a file was tried again on fewer tests than hold it, or its mutants were given a time
(\`--within SECONDS\`), what was not noticed is listed all the same.

| folder | files measured | ${COLUMNS} |
|---|---:|${ALIGNED}
${rows.join('\n')}

## By file

| file | ${COLUMNS} |
|---|${ALIGNED}
${fileRows.join('\n')}

## Survivors

${survivors.join('\n')}`;
}
