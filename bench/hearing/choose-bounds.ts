import { appendFileSync, readFileSync } from 'node:fs';
import {
  certaintyOf,
  type Evidence,
  evidenceOf,
  leastCertainty,
} from '../../src/voice/decoders/network/bounds.ts';
import type { Features } from '../../src/voice/decoders/network/features.ts';
import type { NearSpeechSettings } from '../../src/voice/ear/near-speech.ts';
import type { Level } from './accuracy.ts';
import { levels, type Row, rowsOfMadeVoices, rowsOfNobody, rowsOfPeople } from './bounds-rows.ts';
import { fitLogistic, logistic } from './logistic.ts';
import { notMeasured, peopleFolders } from './people/folders.ts';

const usage =
  'npm run hearing:bounds -- [--replies <count>] [--keep <file.jsonl>] [--from <file.jsonl>] [--begins <near>] [--ceases <near>] [--pre-roll <ms>] [--no-made] [--people <folder> ...]: hears the development set, and prints the weights of the evidence and what each bound would do';

/** Talk that is taken for a reply is worse than a reply that is asked for again. */
const talkWeight = 3;
/** Of all that is weighed, people have this share at least. */
const peopleShare = 0.5;

function weigh(rows: readonly Row[]): Readonly<Record<keyof Evidence | 'constant', number>> {
  const observed = rows.flatMap(({ of, features, right, talk }) =>
    features === null
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

function table(rows: readonly Row[], certaintyBy: (features: Features) => number): void {
  const certainty = (features: Features | null) => (features === null ? 0 : certaintyBy(features));
  for (const of of [...new Set(rows.map(row => row.of))]) {
    const kind = rows.filter(row => row.of === of);
    const talk = kind.filter(row => row.talk);
    const atLevels = levels.filter(level => kind.some(row => row.level === level && !row.talk));
    const saidAt = (level: Level) => kind.filter(row => row.level === level && !row.talk);
    console.log(
      ` ${of}: ${atLevels.map(level => `${level} (${saidAt(level).length})`).join(', ')}; answers nothing (${talk.length})`,
    );
    for (const bound of [0.4, 0.5, 0.56, 0.6, 0.7, 0.75, 0.8, 0.83, 0.86, 0.9, 0.95]) {
      const parts = atLevels.map(level => {
        const said = saidAt(level);
        const taken = said.filter(({ features }) => certainty(features) >= bound);
        const percent = (n: number) => ((100 * n) / Math.max(1, said.length)).toFixed(1);
        const right = taken.filter(row => row.right).length;
        return `${percent(right)} / ${percent(taken.length - right)}`;
      });
      const takenTalk = talk.filter(({ features }) => certainty(features) >= bound).length;
      console.log(`  ${bound}  ${parts.join('   ')}   talk taken ${takenTalk}`);
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
    await rowsOfNobody(folders, Number(option('--alone') ?? 300), near, keep);
    await rowsOfMadeVoices(Number(option('--replies') ?? 60), near, keep);
    if (folders.length === 0) console.log(notMeasured);
    else await rowsOfPeople(folders, near, keep);
  }
  const weights = weigh(rows);
  console.log('weights, for src/voice/decoders/network/bounds.ts:', weights);
  console.log('bound, and right / wrong in % of what was said, with these weights:');
  table(rows, features => {
    const evidence = evidenceOf(features);
    const names = Object.keys(evidence) as (keyof Evidence)[];
    return logistic(names.reduce((sum, name) => sum + weights[name] * evidence[name], weights.constant));
  });
  console.log(`with the present ones, of which ${leastCertainty.reply} is asked:`);
  table(rows, certaintyOf);
}

await main(process.argv.slice(2));
