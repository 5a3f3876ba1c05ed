import { hearScenes, type Level, type SceneResult } from '../accuracy.ts';
import { sum, type Taken, take } from '../count.ts';
import { type Latency, latencyOf, type Spent } from '../latency.ts';
import type { Listener } from '../listener.ts';
import { spent } from '../play.ts';
import { clipScenes, spokenClip } from './clip-scenes.ts';
import { atMost, type PreparedPeople, sourcesOf, speakersOf } from './prepare.ts';

/** What people said, and how it was taken. */
export interface PeopleRow {
  readonly of: string;
  readonly level: Level;
  readonly speakers: number;
  readonly taken: Taken;
  /** What was not right: what was said, what became of it, how often; commonest first. */
  readonly confusions: readonly string[];
}

export interface PeopleReplies {
  readonly sources: readonly string[];
  readonly rows: readonly PeopleRow[];
  readonly replyLatency: Latency;
  readonly spent: Spent;
}

const outcomesOf = (results: readonly SceneResult[]) => results.flatMap(({ outcomes }) => outcomes);

function confusionsOf(results: readonly SceneResult[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const outcome of outcomesOf(results)) {
    if (take(outcome) === 'right') continue;
    const heard = outcome.reports
      .map(({ heard }) => (heard.kind === 'unclear' ? `unsure of "${heard.text}"` : `"${heard.text}"`))
      .join(', then ');
    const key = `"${outcome.utterance.says}": ${heard === '' ? 'nothing' : heard}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1]).map(([key, count]) => `${count} × ${key}`);
}

/** What people say to states of the procedure, and what it is called on the page. */
export const kindsOfReplies = {
  digits: 'digits, one at a time',
  numbers: 'numbers above nine, figures in a row',
  words: 'yes, no and other words',
  otherWords: 'single words that answer nothing',
} as const;

/** How replies of people of one kind are heard, level by level. */
export async function measurePeopleReplies(
  people: PreparedPeople,
  kind: keyof typeof kindsOfReplies,
  levels: readonly Level[],
  most: number,
  listener: Listener,
  keep: (results: PeopleReplies) => void,
): Promise<void> {
  const spoken = atMost(people.material[kind], most).map(spokenClip);
  const rows: PeopleRow[] = [];
  const replyLatenciesMs: number[] = [];
  const before = { ...spent };
  for (const level of levels) {
    const results = await hearScenes(clipScenes(spoken, level, people.loops), listener);
    rows.push({
      of: kindsOfReplies[kind],
      level,
      speakers: speakersOf(spoken.map(({ saying }) => saying)),
      taken: sum(results.map(({ taken }) => taken)),
      confusions: confusionsOf(results),
    });
    replyLatenciesMs.push(
      ...outcomesOf(results)
        .filter(outcome => outcome.utterance.means !== undefined && take(outcome) === 'right')
        .map(({ reports, utterance }) => (reports.at(-1)?.atMs ?? Number.NaN) - utterance.speechEndMs),
    );
    keep({
      sources: sourcesOf(people),
      rows,
      replyLatency: latencyOf(replyLatenciesMs),
      spent: {
        realTimeFactor: (spent.cpuMs - before.cpuMs) / (spent.soundMs - before.soundMs),
        soundS: (spent.soundMs - before.soundMs) / 1000,
      },
    });
  }
}
