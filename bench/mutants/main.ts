/**
 * `npm run mutants -- FOLDER ...`: measures the folders or files that are named and writes docs/mutants.md. With
 * no name it writes the page alone, from the figures of the runs before.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { readFigures, writeFigures } from './figures.ts';
import { folders, sourcesIn, testsOf } from './folders.ts';
import { measure } from './measure.ts';
import { mutantsPage } from './page.ts';

const writePage = (): void =>
  writeFileSync(new URL('../../docs/mutants.md', import.meta.url), mutantsPage(readFigures()));

const named = process.argv.slice(2).map(name => name.replace(/\/$/, ''));
const unknown = named.filter(name => !existsSync(name) || !testsOf(name));
if (unknown.length > 0) {
  console.error(
    `${unknown.join(', ')}: not in a folder whose tests are known; those are ${folders.join(', ')}.`,
  );
  process.exitCode = 2;
} else {
  const failed: string[] = [];
  for (const file of named.flatMap(sourcesIn)) {
    try {
      const figures = await measure(file, testsOf(file) ?? []);
      // After each file: what was measured stays when the run is ended.
      writeFigures({ ...readFigures(), [file]: figures });
      writePage();
      const { killed, timedOut, survivors } = figures;
      console.log(`${file}: ${killed + timedOut} noticed, ${survivors.length} not`);
    } catch (error) {
      // The others are measured all the same.
      failed.push(`${file}: ${error instanceof Error ? error.message : String(error)}`);
      console.error(failed.at(-1));
    }
  }
  writePage();
  if (failed.length > 0) {
    console.error(`Not measured:\n${failed.join('\n')}`);
    process.exitCode = 1;
  }
}
