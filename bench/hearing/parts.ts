import type { SoundRecognizer } from '../../src/voice/ports.ts';
import { measureHumans } from '../human.ts';
import { hearScenes, type Level, type SceneResult, scenesAt } from './accuracy.ts';
import { sum, type Taken, take } from './count.ts';
import { type SpeakerSet, spread, startReplies } from './material.ts';
import { microphoneKinds } from './microphones.ts';
import { hearNatively, nativeInstalled } from './native.ts';
import { notMeasured } from './people/folders.ts';
import { type PreparedPeople, preparePeople } from './people/prepare.ts';
import type { Clip } from './people/recordings.ts';
import { measurePeopleReplies } from './people/replies.ts';
import { measurePeopleStops } from './people/stops.ts';
import { measurePeopleTalk } from './people/talk.ts';
import { spent } from './play.ts';
import { measureReadBack } from './read-back.ts';
import { type AccuracyRow, latencyOf, type Results } from './results.ts';
import type { Scene } from './scene.ts';
import type { Size } from './sizes.ts';
import { measureStops } from './stops.ts';
import { measureNoise, measureTalk } from './talk-hours.ts';

/**
 * Measures one part of the hearing.
 * @param people recordings of people, of all splits; none where nobody named any
 * @param say is told how far it is
 * @param keep is given the figures so far
 */
export type Part = (
  size: Size,
  set: SpeakerSet,
  ear: SoundRecognizer,
  people: readonly Clip[],
  say: (line: string) => void,
  keep: (results: Results) => void,
) => Promise<void>;

type Heard = ReadonlyMap<Scene, Taken>;

function rowOf(system: AccuracyRow['system'], level: Level, heard: Heard): AccuracyRow {
  const all = [...heard.entries()];
  const kinds = [...new Set(all.map(([scene]) => scene.noise))];
  const ofKind = (kind: string) => sum(all.filter(([{ noise }]) => noise === kind).map(([, taken]) => taken));
  return {
    system,
    level,
    taken: sum([...heard.values()]),
    byNoise: Object.fromEntries(kinds.map(kind => [kind, ofKind(kind)])),
  };
}

const takenOf = (results: readonly SceneResult[]): Heard =>
  new Map(results.map(({ scene, taken }) => [scene, taken]));

/** From the end of speech to the report, of replies that were heard rightly. */
const latenciesOf = (results: readonly SceneResult[]) =>
  results
    .flatMap(({ outcomes }) => outcomes)
    .filter(outcome => take(outcome) === 'right')
    .map(({ reports, utterance }) => (reports.at(-1)?.atMs ?? Number.NaN) - utterance.speechEndMs);

const wrongOf = (results: readonly SceneResult[]) =>
  results.flatMap(({ scene, outcomes }) =>
    outcomes
      .filter(outcome => ['wrong', 'falseStop'].includes(take(outcome)))
      .map(
        ({ utterance: { says }, reports }) =>
          `${scene.noise} ${scene.snrDb} dB ${scene.voice} "${says}": ${reports.map(({ heard }) => heard.text).join(', ')}`,
      ),
  );

const accuracy: Part = async (size, set, ear, _people, say, keep) => {
  const replies = spread(await startReplies(), size.replies);
  const rows: AccuracyRow[] = [];
  const heard: SceneResult[] = [];
  const ourSpent = { cpuMs: 0, soundMs: 0 };
  for (const level of size.levels) {
    const scenes = scenesAt(level, replies, set);
    const before = { ...spent };
    const ours = await hearScenes(scenes, ear);
    ourSpent.cpuMs += spent.cpuMs - before.cpuMs;
    ourSpent.soundMs += spent.soundMs - before.soundMs;
    heard.push(...ours);
    const atLevel = [
      rowOf('first-fire', level, takenOf(ours)),
      ...(nativeInstalled ? [rowOf('native PocketSphinx', level, hearNatively(scenes))] : []),
    ];
    rows.push(...atLevel);
    say(`${level}: ${atLevel.map(row => `${row.system} ${JSON.stringify(row.taken)}`).join('; ')}`);
    keep({
      accuracy: {
        size: size.name,
        voices: set.voices,
        repliesPerVoice: replies.length,
        rows,
        replyLatency: latencyOf(latenciesOf(heard)),
        spent: { realTimeFactor: ourSpent.cpuMs / ourSpent.soundMs, soundS: ourSpent.soundMs / 1000 },
        wrong: wrongOf(heard),
      },
    });
  }
};

const microphones: Part = async (size, set, ear, _people, _say, keep) => {
  const replies = spread(await startReplies(), size.replies);
  const rows: NonNullable<Results['microphones']>['rows'][number][] = [];
  for (const microphone of microphoneKinds) {
    for (const level of ['clean', 10] as const) {
      const results = await hearScenes(scenesAt(level, replies, set, microphone), ear);
      rows.push({ microphone, level, taken: sum(results.map(({ taken }) => taken)) });
    }
  }
  keep({ microphones: { size: size.name, rows } });
};

const stops: Part = async (size, set, ear, _people, say, keep) => {
  const replies = await startReplies();
  const rows: NonNullable<Results['stops']>['rows'][number][] = [];
  for (const level of size.stopLevels) {
    const { latenciesMs, ...result } = await measureStops(level, replies, set, ear);
    rows.push({ level, ...result, latency: latencyOf(latenciesMs) });
    say(`${level}: ${result.heardInTime} of ${result.said} in time; missed ${result.missed.join(', ')}`);
    keep({ stops: { size: size.name, rows } });
  }
};

const talk: Part = async (size, set, ear, _people, say, keep) => {
  const replies = await startReplies();
  const rows: NonNullable<Results['talk']>['rows'][number][] = [];
  for (const level of size.talkLevels) {
    const result = await measureTalk(level, size.talkSentences, replies, set, ear);
    rows.push({ of: level === 'clean' ? 'talk, clean' : `talk, noise at ${level} dB`, ...result });
    say(JSON.stringify(rows.at(-1)));
  }
  rows.push({ of: 'noise alone', ...(await measureNoise(size.noiseSecondsOfEach, replies, set, ear)) });
  keep({ talk: { size: size.name, rows } });
};

const humans: Part = async (size, _set, _ear, _people, _say, keep) => {
  const { numbers, digits, otherTalk } = await measureHumans(size.humans ? 400 : 20);
  keep({
    humans: {
      size: size.name,
      rows: [
        { of: 'number words of one woman (asterisk-core-sounds-en-g722)', taken: numbers },
        { of: 'connected digits of one man (pocketsphinx-testdata)', taken: digits },
        { of: 'other talk of several people, to be rejected', taken: otherTalk },
      ],
    },
  });
};

const readBack: Part = async (size, set, ear, _people, say, keep) => {
  const rows: NonNullable<Results['readBack']>['rows'][number][] = [];
  for (const level of size.levels) {
    if (level === 'clean') continue;
    rows.push({ level, ...(await measureReadBack(level, set, ear)) });
    say(JSON.stringify(rows.at(-1)));
    keep({ readBack: { rows } });
  }
};

/** A part that needs recordings of people. */
const ofPeople =
  (
    measure: (
      people: PreparedPeople,
      size: Size,
      ear: SoundRecognizer,
      keep: (of: Results) => void,
    ) => Promise<void>,
  ): Part =>
  async (size, set, ear, clips, say, keep) => {
    if (clips.length === 0) {
      say(notMeasured);
      return;
    }
    const people = await preparePeople(clips, set.name === 'test' ? 'test' : 'dev');
    await measure(people, size, ear, keep);
  };

const peopleReplies = ofPeople((people, { name, levelsOfPeople, clipsOfPeople }, ear, keep) =>
  measurePeopleReplies(people, levelsOfPeople, clipsOfPeople, ear, results =>
    keep({ peopleReplies: { size: name, ...results } }),
  ),
);

const peopleStops = ofPeople((people, { name, stopLevelsOfPeople, clipsOfPeople }, ear, keep) =>
  measurePeopleStops(people, stopLevelsOfPeople, clipsOfPeople, ear, rows =>
    keep({ peopleStops: { size: name, rows } }),
  ),
);

const peopleTalk = ofPeople((people, { name, talkLevelsOfPeople, clipsOfPeople }, ear, keep) =>
  measurePeopleTalk(people, talkLevelsOfPeople, clipsOfPeople, ear, rows =>
    keep({ peopleTalk: { size: name, rows } }),
  ),
);

export const parts = {
  accuracy,
  readBack,
  stops,
  talk,
  microphones,
  humans,
  peopleReplies,
  peopleStops,
  peopleTalk,
} as const;
