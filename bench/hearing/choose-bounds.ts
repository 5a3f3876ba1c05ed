import { appendFileSync, readFileSync } from 'node:fs';
import { type Evidence, evidenceOf, type LeastCertainty } from '../../src/voice/decoders/network/bounds.ts';
import type { NearSpeechSettings } from '../../src/voice/ear/near-speech.ts';
import type { Level } from './accuracy.ts';
import { type Row, rowsOfMadeVoices, rowsOfNobody, rowsOfPeople } from './bounds-rows.ts';
import { cameWith } from './judged.ts';
import { fitLogistic } from './logistic.ts';
import { notMeasured, peopleFolders } from './people/folders.ts';

const usage =
  'npm run hearing:bounds -- [--replies <count>] [--alone <seconds>] [--kinds <kind>,...] [--levels <level>,...] [--keep <file.jsonl>] [--from <file.jsonl>] [--begins <near>] [--ceases <near>] [--pre-roll <ms>] [--no-made] [--people <folder> ...]: hears the development set, and prints the weights of the evidence and what each bound would do';

/** Talk that is taken for a reply is worse than a reply that is asked for again. */
const talkWeight = 3;
/** Of all that is weighed, people have this share at least. */
const peopleShare = 0.5;

/** What is less likely than this is never taken, and is right by chance only. */
const hopelessPerPhone = -4;

function weigh(rows: readonly Row[]): Readonly<Record<keyof Evidence | 'constant', number>> {
  const observed = rows.flatMap(({ of, features, right, talk, stands }) =>
    features === null || stands === null || stands === 'stop' || features.perPhone < hopelessPerPhone
      ? []
      : [{ evidence: evidenceOf(features), right, made: of === 'made', weight: talk ? talkWeight : 1 }],
  );
  const weightOf = (made: boolean) =>
    observed.filter(each => each.made === made).reduce((sum, { weight }) => sum + weight, 0);
  const [ofMade, ofPeople] = [weightOf(true), weightOf(false)];
  const madeWeight = ofPeople > 0 ? Math.min(1, ((1 - peopleShare) / peopleShare) * (ofPeople / ofMade)) : 1;
  const names = Object.keys(observed[0]?.evidence ?? {}) as (keyof Evidence)[];
  const found = fitLogistic(
    observed.map(({ evidence, right, made, weight }) => ({
      inputs: names.map(name => evidence[name]),
      outcome: right,
      weight: made ? weight * madeWeight : weight,
    })),
  );
  return Object.fromEntries(
    ['constant', ...names].map((name, i) => [name, Number((found[i] ?? 0).toFixed(3))]),
  ) as Record<keyof Evidence | 'constant', number>;
}

const tried: Readonly<Record<keyof LeastCertainty, readonly number[]>> = {
  reply: [0.56, 0.65, 0.7, 0.75, 0.8, 0.83, 0.86, 0.9, 0.93],
  oneWordNumber: [0.35, 0.45, 0.56, 0.65, 0.7, 0.75, 0.83],
  agreement: [0.75, 0.83, 0.86, 0.9, 0.93, 0.95],
  stop: [0.4, 0.5, 0.56, 0.65, 0.75, 0.83, 0.9],
};

/** What each bound would do, beside the others as they are: of each kind and level that it changes. */
function curves(rows: readonly Row[]): void {
  const parts = [
    ...new Set(rows.map(({ of, level, talk }) => `${of}, ${level}${talk ? ', answers nothing' : ''}`)),
  ];
  const ofPart = (part: string) =>
    rows.filter(({ of, level, talk }) => `${of}, ${level}${talk ? ', answers nothing' : ''}` === part);
  for (const part of parts) {
    const these = ofPart(part);
    console.log(` ${part}: ${cameWith(these, {})}`);
    for (const [bound, values] of Object.entries(tried)) {
      const results = values.map(value => cameWith(these, { [bound]: value }));
      if (new Set(results).size === 1) continue;
      console.log(`   ${bound}: ${values.map((value, i) => `${value}: ${results[i]}`).join('; ')}`);
    }
  }
}

async function main(args: readonly string[]): Promise<void> {
  const { folders, rest } = peopleFolders(args);
  const option = (name: string) => (rest.includes(name) ? rest[rest.indexOf(name) + 1] : undefined);
  if (rest.includes('--help')) {
    console.log(usage);
    return;
  }
  const number = (name: string) => (option(name) === undefined ? {} : { value: Number(option(name)) });
  const [begins, ceases, preRoll] = ['--begins', '--ceases', '--pre-roll'].map(name => number(name).value);
  const near: NearSpeechSettings = {
    ...(begins === undefined ? {} : { beginsAt: begins }),
    ...(ceases === undefined ? {} : { ceasesAt: ceases }),
    ...(preRoll === undefined ? {} : { preRollMs: preRoll }),
  };
  const [from, keepIn] = [option('--from'), option('--keep')];
  const rows: Row[] = [];
  const keep = (found: readonly Row[]) => {
    if (keepIn !== undefined) appendFileSync(keepIn, found.map(row => `${JSON.stringify(row)}\n`).join(''));
    rows.push(...found);
    const [first] = found;
    if (first) console.log(`${first.of}, ${first.level}: ${found.length}`);
  };
  if (from !== undefined) {
    for (const line of readFileSync(from, 'utf8').trim().split('\n')) rows.push(JSON.parse(line) as Row);
  } else {
    const [kinds, atLevels] = ['--kinds', '--levels'].map(name => option(name)?.split(','));
    const wants = (of: string, level?: Level) =>
      (kinds?.includes(of) ?? true) && (level === undefined || (atLevels?.includes(String(level)) ?? true));
    const gathering = { near, wants, keep };
    await rowsOfNobody(folders, Number(option('--alone') ?? 300), gathering);
    await rowsOfMadeVoices(Number(option('--replies') ?? 60), gathering);
    if (folders.length === 0) console.log(notMeasured);
    else await rowsOfPeople(folders, gathering);
  }
  const weights = weigh(rows);
  console.log('weights, for src/voice/decoders/network/bounds.ts:', weights);
  console.log(
    'right / wrong + taken for stop in % of what was said, or how much was taken; then with other bounds:',
  );
  curves(rows);
}

await main(process.argv.slice(2));
