import { appendFileSync, readFileSync } from 'node:fs';
import { certaintyOf, type Evidence, evidenceOf } from '../../src/voice/decoders/network/bounds.ts';
import type { Decision } from '../../src/voice/decoders/network/decoder.ts';
import type { Features } from '../../src/voice/decoders/network/features.ts';
import { pronounceEnglish } from '../../src/voice/languages/pronunciations/english.ts';
import { createMatcher } from '../../src/voice/meaning.ts';
import { loadWeights } from '../../src/voice/phone-network/load-node.ts';
import { createNetworkEar } from '../../src/voice/recognizers/by-network.ts';
import { type Level, scenesAt } from './accuracy.ts';
import { isMeant } from './count.ts';
import { fitLogistic, logistic } from './logistic.ts';
import { speakerSets, spread, startReplies, talkAgainst } from './material.ts';
import { play } from './play.ts';
import type { Scene } from './scene.ts';

/** The likeliest wording of an utterance, what was known of it, and whether it was what was said. */
interface Row {
  readonly level: Level;
  readonly noise: string;
  readonly says: string;
  /** Nothing was asked for that this could answer. */
  readonly talk: boolean;
  readonly text: string;
  readonly right: boolean;
  /** None where nothing was noticed of it. */
  readonly features: Features | null;
}

const usage =
  'npm run hearing:bounds -- [--replies <count>] [--keep <file.jsonl>] [--from <file.jsonl>]: hears the development set, and prints the weights of the evidence and what each bound would do';

const levels: readonly Level[] = ['clean', 20, 10, 5, 0];

/** Talk that is taken for a reply is worse than a reply that is asked for again. */
const talkWeight = 3;

async function rowsOf(scenes: readonly Scene[], level: Level): Promise<readonly Row[]> {
  const rows: Row[] = [];
  let decisions: Decision[] = [];
  const ear = createNetworkEar(await loadWeights(), pronounceEnglish, {
    onDecision: decision => decisions.push(decision),
  });
  for (const scene of scenes) {
    for (const { utterance, atEnd } of await playNoting(ear, scene)) {
      const { meaningOf } = createMatcher(utterance.grammar);
      const { says, means } = utterance;
      const common = { level, noise: scene.noise, says, talk: means === undefined };
      const found = atEnd.filter(({ features }) => features !== undefined);
      if (found.length === 0) rows.push({ ...common, text: '', right: false, features: null });
      for (const { text = '', features = null } of found) {
        const meaning = meaningOf(text);
        rows.push({ ...common, text, right: meaning !== undefined && isMeant(means, meaning), features });
      }
    }
  }
  ear.close();
  return rows;

  /** The decisions by utterance: what is decided belongs to the utterance that was last played. */
  async function playNoting(listening: typeof ear, scene: Scene) {
    const noted: { utterance: Scene['utterances'][number]; atEnd: readonly Decision[] }[] = [];
    for (const [i, utterance] of scene.utterances.entries()) {
      const from = i === 0 ? 0 : utterance.fromSample;
      const samples = scene.samples.slice(from, utterance.toSample);
      const shift = utterance.fromSample - from;
      decisions = [];
      await play(listening, {
        ...scene,
        samples,
        utterances: [{ ...utterance, fromSample: shift, toSample: samples.length }],
      });
      noted.push({ utterance, atEnd: decisions });
    }
    return noted;
  }
}

function weigh(rows: readonly Row[]): Readonly<Record<keyof Evidence | 'constant', number>> {
  const observed = rows.flatMap(({ features, right, talk }) =>
    features === null ? [] : [{ evidence: evidenceOf(features), right, talk }],
  );
  const names = Object.keys(observed[0]?.evidence ?? {}) as (keyof Evidence)[];
  const found = fitLogistic(
    observed.map(({ evidence, right, talk }) => ({
      inputs: names.map(name => evidence[name]),
      outcome: right,
      weight: talk ? talkWeight : 1,
    })),
  );
  return Object.fromEntries(
    ['constant', ...names].map((name, i) => [name, Number((found[i] ?? 0).toFixed(3))]),
  ) as Record<keyof Evidence | 'constant', number>;
}

function table(rows: readonly Row[], certaintyBy: (features: Features) => number): void {
  const certainty = (features: Features | null) => (features === null ? 0 : certaintyBy(features));
  for (const bound of [0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.98]) {
    const parts = levels.map(level => {
      const said = rows.filter(row => row.level === level && !row.talk);
      const taken = said.filter(({ features }) => certainty(features) >= bound);
      const percent = (n: number) => ((100 * n) / Math.max(1, said.length)).toFixed(1);
      const right = taken.filter(row => row.right).length;
      return `${level}: ${percent(right)} / ${percent(taken.length - right)}`;
    });
    const talk = rows.filter(row => row.talk && certainty(row.features) >= bound).length;
    console.log(
      `  ${bound}  ${parts.join('   ')}   talk taken ${talk} of ${rows.filter(row => row.talk).length}`,
    );
  }
}

async function main(args: readonly string[]): Promise<void> {
  const option = (name: string) => (args.includes(name) ? args[args.indexOf(name) + 1] : undefined);
  if (args.includes('--help')) {
    console.log(usage);
    return;
  }
  const count = Number(option('--replies') ?? 60);
  const [from, keep] = [option('--from'), option('--keep')];
  const rows: Row[] = [];
  if (from !== undefined) {
    for (const line of readFileSync(from, 'utf8').trim().split('\n')) rows.push(JSON.parse(line) as Row);
  } else {
    const all = await startReplies();
    for (const level of levels) {
      const scenes = scenesAt(level, spread(all, count), speakerSets.development);
      const talk = scenesAt(level, spread(talkAgainst(all), Math.ceil(count / 2)), speakerSets.development);
      const found = [...(await rowsOf(scenes, level)), ...(await rowsOf(talk, level))];
      if (keep !== undefined) appendFileSync(keep, found.map(row => `${JSON.stringify(row)}\n`).join(''));
      rows.push(...found);
      console.log(`${level}: ${found.length} utterances`);
    }
  }
  const weights = weigh(rows);
  console.log('weights, for src/voice/decoders/network/bounds.ts:', weights);
  console.log('bound, and right / wrong in % of what was said, with these weights:');
  table(rows, features => {
    const evidence = evidenceOf(features);
    const names = Object.keys(evidence) as (keyof Evidence)[];
    return logistic(names.reduce((sum, name) => sum + weights[name] * evidence[name], weights.constant));
  });
  console.log('with the present ones:');
  table(rows, certaintyOf);
}

await main(process.argv.slice(2));
