import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** What is held by which tests, the part of a folder that has tests of its own after the folder. */
const TESTS: Readonly<Record<string, readonly string[]>> = {
  machines: [
    // The quick ones: what walks through every path, or through starts by chance, would notice more, but in minutes; all
    // that may be said in three starts takes seven seconds a mutant, and what a step says is held in kinds/ as well.
    'tests/machines/!(paths|random|recipes|said|snapshots|bus|voice).test.ts',
    'tests/machines/kinds/*.test.ts',
    'tests/machines/limits/!(readings|stated|plausible|gauges|outlook).test.ts',
    'tests/machines/{impossible,phases}/*.test.ts',
  ],
  'machines/kinds': ['tests/machines/kinds/*.test.ts'],
  'machines/phases': ['tests/machines/phases/*.test.ts'],
  'machines/limits': ['tests/machines/{limits,impossible}/*.test.ts'],
  'src/engineering': ['tests/engineering/*.test.ts', 'tests/published/{published,fmi}.test.ts'],
  'src/engineering/engine-sound': ['tests/engineering/engine-sound/*.test.ts'],
  'src/record': [
    // What is not here starts programs of its own, which no mutant reaches, or takes minutes.
    'tests/record/{bytes,disk,full-disk,fuzz,lines,lock,signing,verify,versions,writer}.test.ts',
    'tests/record/{canonical,edges,explained,holder,keys,told,vocabulary,whole-bytes}.test.ts',
    'tests/published/{record,ed25519}.test.ts',
  ],
  // Not the one that reads every wording against every other in each state.
  'src/session': ['tests/session/!(in-noise).test.ts'],
  'src/session/engine-ear': ['tests/session/engine-ear/*.test.ts'],
  'src/session/past-starts': ['tests/session/past-starts/*.test.ts'],
  'src/session/vehicle': ['tests/session/vehicle/!(frames|whole-start).test.ts'],
  'src/session/who-speaks': ['tests/session/who-speaks/*.test.ts'],
  'src/server/bay': ['tests/server/bay/*.test.ts'],
  'src/server/bay/commands': ['tests/server/bay/commands/*.test.ts'],
  'src/server/pairing': ['tests/server/pairing/*.test.ts'],
};

/** What a session joins to the machine is held by the tests that join it, too. */
const BESIDES: Readonly<Record<string, readonly string[]>> = {
  'machines/composition.ts': ['tests/machines/recipes.test.ts'],
  'machines/kinds/bus.ts': ['tests/machines/bus.test.ts', 'tests/session/vehicle/agreement.test.ts'],
  'machines/kinds/faults.ts': ['tests/session/vehicle/agreement.test.ts'],
  'machines/kinds/voice.ts': ['tests/machines/voice.test.ts'],
  // What is joined to a session is held by the tests that join it, too.
  'src/session/session.ts': [
    'tests/session/{past-starts,engine-ear}/*.test.ts',
    'tests/session/vehicle/agreement.test.ts',
  ],
  'src/session/in-noise.ts': ['tests/session/in-noise.test.ts'],
  'src/session/save-record.ts': ['tests/terminal/save-record.test.ts'],
};

/** The folders that the page has a row for. */
export const folders: readonly string[] = Object.keys(TESTS);

const isIn = (file: string, folder: string): boolean => file === folder || file.startsWith(`${folder}/`);

/** The tests of a source file, as globs: those of the innermost folder that has some; undefined outside of all. */
export function testsOf(file: string): readonly string[] | undefined {
  const folder = folders.findLast(folder => isIn(file, folder));
  const tests = folder === undefined ? undefined : TESTS[folder];
  return tests && [...tests, ...(BESIDES[file] ?? [])];
}

/** Every source file below a folder, or the file itself, in order of its name. */
export function sourcesIn(path: string): string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path, { recursive: true, encoding: 'utf8' })
    .map(name => join(path, name))
    .filter(name => /\.tsx?$/.test(name))
    .sort();
}
