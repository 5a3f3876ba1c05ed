import { FRENCH_VOICES } from '../../audio-fixtures/voices.ts';
import { createEmbeddedRecognizer } from '../../src/voice/recognizers/embedded.ts';
import { measureHumans } from '../human.ts';
import { hearScenes, type Level, type SceneResult, scenesAt } from './accuracy.ts';
import { measureCalls } from './calls.ts';
import { sum, take } from './count.ts';
import { latencyOf } from './latency.ts';
import { type Listener, sameEar } from './listener.ts';
import { type SpeakerSet, spread, startReplies } from './material.ts';
import { microphoneKinds } from './microphones.ts';
import type { NoiseKind } from './noises.ts';
import type { FreeText } from './peers/free-text.ts';
import { measurePeers } from './peers/measure.ts';
import { notMeasured } from './people/folders.ts';
import { type PreparedPeople, preparePeople } from './people/prepare.ts';
import type { Clip } from './people/recordings.ts';
import { measurePeopleReplies } from './people/replies.ts';
import { measurePeopleStops } from './people/stops.ts';
import { measurePeopleTalk } from './people/talk.ts';
import { spent } from './play.ts';
import { measureReadBack } from './read-back.ts';
import type { AccuracyRow, Results } from './results.ts';
import type { Size } from './sizes.ts';
import { measureStops } from './stops.ts';
import { measureNoise, measureTalk } from './talk-hours.ts';

/** What is measured, and with what. */
export interface Measurement {
  readonly size: Size;
  readonly set: SpeakerSet;
  readonly listener: Listener;
  /** Recordings of people, of all splits; none where nobody named any. */
  readonly clips: readonly Clip[];
  /** Recognizers of free text to be measured beside; none where nobody named any. */
  readonly freeText: readonly FreeText[];
  /** Is told how far it is. */
  say(line: string): void;
}

/**
 * Measures one part of the hearing.
 * @param keep is given the figures so far
 */
export type Part = (of: Measurement, keep: (results: Results) => void) => Promise<void>;

function rowOf(level: Level, results: readonly SceneResult[]): AccuracyRow {
  const kinds = [...new Set(results.map(({ scene }) => scene.noise))];
  const ofKind = (kind: string) =>
    sum(results.filter(({ scene }) => scene.noise === kind).map(({ taken }) => taken));
  return {
    level,
    taken: sum(results.map(({ taken }) => taken)),
    byNoise: Object.fromEntries(kinds.map(kind => [kind, ofKind(kind)])),
  };
}

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

const accuracy: Part = async ({ size, set, listener, say }, keep) => {
  const replies = spread(await startReplies(), size.replies);
  const rows: AccuracyRow[] = [];
  const heard: SceneResult[] = [];
  const ourSpent = { cpuMs: 0, soundMs: 0 };
  for (const level of size.levels) {
    const scenes = scenesAt(level, replies, set);
    const before = { ...spent };
    const ours = await hearScenes(scenes, listener);
    ourSpent.cpuMs += spent.cpuMs - before.cpuMs;
    ourSpent.soundMs += spent.soundMs - before.soundMs;
    heard.push(...ours);
    rows.push(rowOf(level, ours));
    say(`${level}: ${JSON.stringify(rows.at(-1)?.taken)}`);
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

const microphones: Part = async ({ size, set, listener }, keep) => {
  const replies = spread(await startReplies(), size.replies);
  const rows: NonNullable<Results['microphones']>['rows'][number][] = [];
  for (const microphone of microphoneKinds) {
    for (const level of ['clean', 10] as const) {
      const results = await hearScenes(scenesAt(level, replies, set, microphone), listener);
      rows.push({ microphone, level, taken: sum(results.map(({ taken }) => taken)) });
    }
  }
  keep({ microphones: { size: size.name, rows } });
};

const stops: Part = async ({ size, set, listener, say }, keep) => {
  const replies = await startReplies();
  const rows: NonNullable<Results['stops']>['rows'][number][] = [];
  for (const level of size.stopLevels) {
    const { latenciesMs, ...result } = await measureStops(level, replies, set, listener);
    rows.push({ level, ...result, latency: latencyOf(latenciesMs) });
    say(`${level}: ${result.heardInTime} of ${result.said} in time; missed ${result.missed.join(', ')}`);
    keep({ stops: { size: size.name, rows } });
  }
};

const calls: Part = async ({ size, set, listener, say }, keep) => {
  const french = await createEmbeddedRecognizer({ language: 'fr' });
  const frenchSet = { ...set, voices: FRENCH_VOICES.map(({ name }) => name) };
  const rows: NonNullable<Results['calls']>['rows'][number][] = [];
  for (const [language, of, hearing] of [
    ['fr', frenchSet, sameEar(french)],
    ['en', set, listener],
  ] as const) {
    const replies = await startReplies(language);
    for (const level of size.stopLevels) {
      const { latenciesMs, ...result } = await measureCalls(level, replies, of, hearing);
      rows.push({ of: of.voices.join(', '), level, ...result, latency: latencyOf(latenciesMs) });
      say(JSON.stringify(rows.at(-1)));
      keep({ calls: { size: size.name, rows } });
    }
  }
  french.close();
};

/** People talk in babble and on the radio: what is taken for an answer is in these. */
const noisesAlone: readonly (readonly NoiseKind[])[] = [
  ['babble'],
  ['radio'],
  ['idle', 'sweep', 'fan', 'wrench'],
];

const talk: Part = async ({ size, set, listener, say }, keep) => {
  const replies = await startReplies();
  const rows: NonNullable<Results['talk']>['rows'][number][] = [];
  for (const level of size.talkLevels) {
    const result = await measureTalk(level, size.talkSentences, replies, set, listener);
    rows.push({ of: level === 'clean' ? 'talk, clean' : `talk, noise at ${level} dB`, ...result });
    say(JSON.stringify(rows.at(-1)));
  }
  for (const kinds of noisesAlone) {
    const taken = await measureNoise(kinds, size.noiseSecondsOfEach, replies, set, listener);
    rows.push({ of: `${kinds.join(', ')} alone`, ...taken });
    say(JSON.stringify(rows.at(-1)));
    keep({ talk: { size: size.name, rows } });
  }
};

const humans: Part = async ({ size }, keep) => {
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

const readBack: Part = async ({ size, set, listener, say }, keep) => {
  const rows: NonNullable<Results['readBack']>['rows'][number][] = [];
  for (const level of size.levels) {
    if (level === 'clean') continue;
    rows.push({ level, ...(await measureReadBack(level, set, listener)) });
    say(JSON.stringify(rows.at(-1)));
    keep({ readBack: { rows } });
  }
};

/** A part that needs recordings of people. */
const ofPeople =
  (
    measure: (people: PreparedPeople, of: Measurement, keep: (results: Results) => void) => Promise<void>,
  ): Part =>
  async (of, keep) => {
    if (of.clips.length === 0) {
      of.say(notMeasured);
      return;
    }
    await measure(await preparePeople(of.clips, splitOf(of.set)), of, keep);
  };

const splitOf = ({ name }: SpeakerSet) => (name === 'test' ? 'test' : 'dev');

const repliesOfPeople = (
  part: 'peopleDigits' | 'peopleNumbers' | 'peopleWords' | 'peopleOtherWords',
  kind: Parameters<typeof measurePeopleReplies>[1],
  levelsIn: (size: Size) => readonly Level[],
): Part =>
  ofPeople((people, { size, listener }, keep) =>
    measurePeopleReplies(people, kind, levelsIn(size), size.clipsOfPeople, listener, results =>
      keep({ [part]: { size: size.name, ...results } }),
    ),
  );

const peopleStops = ofPeople((people, { size, listener }, keep) =>
  measurePeopleStops(people, size.stopLevelsOfPeople, size.clipsOfPeople, listener, rows =>
    keep({ peopleStops: { size: size.name, rows } }),
  ),
);

const peopleTalk = ofPeople((people, { size, listener }, keep) =>
  measurePeopleTalk(people, size.talkLevelsOfPeople, size.clipsOfPeople, listener, rows =>
    keep({ peopleTalk: { size: size.name, rows } }),
  ),
);

const peers = ofPeople(async (people, { size, set, listener, clips, freeText }, keep) => {
  const development = await preparePeople(clips, 'dev');
  await measurePeers({ measured: people, development }, set, size.peers, freeText, listener, results =>
    keep({ peers: { size: size.name, ...results } }),
  );
});

export const parts = {
  accuracy,
  readBack,
  stops,
  calls,
  talk,
  microphones,
  humans,
  peopleDigits: repliesOfPeople('peopleDigits', 'digits', size => size.levelsOfNumbers),
  peopleStops,
  peopleTalk,
  peopleWords: repliesOfPeople('peopleWords', 'words', size => size.levelsOfWords),
  peopleNumbers: repliesOfPeople('peopleNumbers', 'numbers', size => size.levelsOfNumbers),
  peopleOtherWords: repliesOfPeople('peopleOtherWords', 'otherWords', size => size.levelsOfWords),
  peers,
} as const;
