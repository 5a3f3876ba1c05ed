import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { Figures, FileFigures } from './figures.ts';
import { figuresOf, isTypesOnly, type Result, run } from './measure.ts';

const mutantSchema = z.looseObject({ fileName: z.string() });

const planSchema = z.object({ mutantPlans: z.array(z.looseObject({ mutant: mutantSchema })) });

const testedSchema = z.looseObject({
  fileName: z.string(),
  status: z.string(),
  location: z.looseObject({ start: z.looseObject({ line: z.number().int() }) }),
  mutatorName: z.string(),
  replacement: z.string(),
});

const readJson = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));

/** The path within the project of a file whose path ends with it. */
const within = (fileName: string): string => {
  const at = fileName.search(/(?:machines|src)\/(?!.*\/(?:machines|src)\/)/);
  return at < 0 ? fileName : fileName.slice(at);
};

/**
 * The figures of the files of which each mutant was tried, out of the events of a run, also of one that was ended
 * before its end; and how many files it did not get through. Throws on a folder that holds no such run.
 */
export function figuresOfEvents(folder: string): { figures: Figures; unfinished: readonly string[] } {
  const names = existsSync(folder) ? readdirSync(folder) : [];
  const plan = names.find(name => name.endsWith('-onMutationTestingPlanReady.json'));
  if (plan === undefined) throw new Error(`${folder} holds no run of mutants that has been planned.`);
  const planned = new Map<string, number>();
  for (const { mutant } of planSchema.parse(readJson(join(folder, plan))).mutantPlans) {
    const file = within(mutant.fileName);
    planned.set(file, (planned.get(file) ?? 0) + 1);
  }
  const tested = new Map<string, Result[]>();
  for (const name of names.filter(name => name.endsWith('-onMutantTested.json'))) {
    const result = testedSchema.parse(readJson(join(folder, name)));
    const file = within(result.fileName);
    tested.set(file, [...(tested.get(file) ?? []), result]);
  }
  const isThrough = (file: string): boolean => tested.get(file)?.length === planned.get(file);
  const files = [...planned.keys()];
  return {
    figures: Object.fromEntries(
      files.filter(isThrough).map(file => [file, figuresOf(file, tested.get(file) ?? [])]),
    ),
    unfinished: files.filter(file => !isThrough(file)),
  };
}

/**
 * Mutates several files that the same tests hold, in one run with `atOnce` mutants at a time, for a machine with many
 * processors: the tests are timed once and not for each file. What each mutant came to is written to `events` at once.
 */
export async function measureTogether(
  files: readonly string[],
  tests: readonly string[],
  atOnce: number,
  events: string,
): Promise<{ figures: Figures; unfinished: readonly string[] }> {
  const typesOnly = files.filter(isTypesOnly);
  mkdirSync(events, { recursive: true });
  await run(
    files.filter(file => !typesOnly.includes(file)),
    tests,
    {
      concurrency: atOnce,
      reporters: ['progress-append-only', 'event-recorder'],
      eventReporter: { baseDir: events },
      dryRunTimeoutMinutes: 20,
    },
  );
  const { figures, unfinished } = figuresOfEvents(events);
  const nothing = (): FileFigures => ({ killed: 0, timedOut: 0, survivors: [] });
  return {
    figures: { ...figures, ...Object.fromEntries(typesOnly.map(file => [file, nothing()])) },
    unfinished,
  };
}
