import type { SoundRecognizer } from '../../../src/voice/ports.ts';
import { speechRateHz } from '../../../src/voice/resample.ts';
import { hearScenes, type Level, type SceneResult } from '../accuracy.ts';
import { sum, type Taken, take } from '../count.ts';
import { grammarAt, startReplies } from '../material.ts';
import { noiseAtSnr } from '../mix.ts';
import { spent } from '../play.ts';
import { type Latency, latencyOf, type Spent } from '../results.ts';
import type { Saying, Scene, Spoken } from '../scene.ts';
import { type StopResult, stopResultOf } from '../stops.ts';
import { accepted, type FalseAccepts } from '../talk-hours.ts';
import { clipScenes, machineLoops, type SaidClip, spokenClip } from './clip-scenes.ts';
import { type Clip, soundOf } from './recordings.ts';
import { digitGrammar, materialOf } from './rows.ts';
import { stopInTalk } from './stop-in-talk.ts';

/** What people said, and how it was taken. */
export interface PeopleRow {
  readonly of: string;
  readonly level: Level;
  readonly speakers: number;
  readonly taken: Taken;
}

export interface PeopleStops extends Omit<StopResult, 'latenciesMs' | 'missed'> {
  readonly of: string;
  readonly level: Level;
  readonly speakers: number;
  readonly latency: Latency;
}

export interface PeopleTalk extends FalseAccepts {
  readonly of: string;
  readonly level: Level;
  readonly speakers: number;
}

export interface PeopleResults {
  readonly sources: readonly string[];
  readonly rows: readonly PeopleRow[];
  readonly stops: readonly PeopleStops[];
  readonly talk: readonly PeopleTalk[];
  /** What was said, what it was taken for (nothing where it was asked for again), and how often. */
  readonly confusions: readonly {
    readonly of: string;
    readonly level: Level;
    readonly list: readonly string[];
  }[];
  readonly replyLatency: Latency;
  readonly spent: Spent;
}

const speakersOf = (sayings: readonly Saying[]) => new Set(sayings.map(({ speaker }) => speaker)).size;
const outcomesOf = (results: readonly SceneResult[]) => results.flatMap(({ outcomes }) => outcomes);

/** Commonest first. */
function confusionsOf(results: readonly SceneResult[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const outcome of outcomesOf(results)) {
    if (take(outcome) === 'right') continue;
    const heard = outcome.reports
      .map(({ heard }) => (heard.kind === 'unclear' ? `(${heard.reason}: ${heard.text})` : heard.text))
      .join(', ');
    const key = `"${outcome.utterance.says}" as ${heard === '' ? 'nothing' : heard}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1]).map(([key, count]) => `${count} ${key}`);
}

export interface PeopleSize {
  readonly levels: readonly Level[];
  readonly stopLevels: readonly Level[];
  readonly talkLevels: readonly Level[];
  /** One clip in so many is heard. */
  readonly oneIn: number;
}

/** How people are heard, of one split of the recordings. */
export async function measurePeople(
  all: readonly Clip[],
  split: Clip['split'],
  { levels, stopLevels, talkLevels, oneIn }: PeopleSize,
  ear: SoundRecognizer,
  say: (line: string) => void,
  keep: (results: PeopleResults) => void,
): Promise<void> {
  const clips = all.filter(clip => clip.split === split);
  const replies = await startReplies();
  const material = materialOf(clips, replies);
  const loops = machineLoops(clips);
  const thinned = <T>(list: readonly T[]) => list.filter((_, i) => i % oneIn === 0);
  const rows: PeopleRow[] = [];
  const stops: PeopleStops[] = [];
  const talk: PeopleTalk[] = [];
  const confusions: PeopleResults['confusions'][number][] = [];
  const replyLatenciesMs: number[] = [];
  const before = { ...spent };
  const keepSoFar = () =>
    keep({
      sources: [...new Set(clips.map(({ source }) => source))].sort(),
      rows,
      stops,
      talk,
      confusions,
      replyLatency: latencyOf(replyLatenciesMs),
      spent: {
        realTimeFactor: (spent.cpuMs - before.cpuMs) / Math.max(1, spent.soundMs - before.soundMs),
        soundS: (spent.soundMs - before.soundMs) / 1000,
      },
    });

  const kinds: readonly (readonly [string, readonly SaidClip[]])[] = [
    ['digits, one at a time', material.digits],
    ['numbers above nine and figures in a row', material.numbers],
    ['yes, no and other words', material.words],
    ['single words that answer nothing', material.otherWords],
  ];
  for (const [of, said] of kinds) {
    const spoken = thinned(said).map(spokenClip);
    for (const level of levels) {
      const results = await hearScenes(clipScenes(spoken, level, loops), ear);
      const taken = sum(results.map(result => result.taken));
      rows.push({ of, level, speakers: speakersOf(spoken.map(({ saying }) => saying)), taken });
      confusions.push({ of, level, list: confusionsOf(results) });
      replyLatenciesMs.push(
        ...outcomesOf(results)
          .filter(outcome => outcome.utterance.means !== undefined && take(outcome) === 'right')
          .map(({ reports, utterance }) => (reports.at(-1)?.atMs ?? Number.NaN) - utterance.speechEndMs),
      );
      say(`${of}, ${level}: ${JSON.stringify(taken)}; ${confusionsOf(results).slice(0, 12).join('; ')}`);
      keepSoFar();
    }
  }

  for (const [of, spoken] of stopsOf(thinned(material.stops), material.talk)) {
    for (const level of stopLevels) {
      const { latenciesMs, missed, ...result } = stopResultOf(
        await hearScenes(clipScenes(spoken, level, loops), ear),
      );
      const speakers = speakersOf(spoken.map(({ saying }) => saying));
      stops.push({ of, level, speakers, ...result, latency: latencyOf(latenciesMs) });
      say(`${of}, ${level}: ${JSON.stringify(stops.at(-1))}; missed ${missed.join(', ')}`);
      keepSoFar();
    }
  }

  const sentences = thinned(material.talk).map(spokenClip);
  for (const level of talkLevels) {
    const scenes = clipScenes(sentences, level, loops);
    const result = accepted(scenes, outcomesOf(await hearScenes(scenes, ear)));
    const speakers = speakersOf(sentences.map(({ saying }) => saying));
    talk.push({ of: 'talk right at the microphone', level, speakers, ...result });
    say(JSON.stringify(talk.at(-1)));
    keepSoFar();
  }
  const noises = noiseScenes(clips, replies);
  const result = accepted(noises, outcomesOf(await hearScenes(noises, ear)));
  talk.push({ of: 'recorded noise alone', level: 5, speakers: 0, ...result });
  say(JSON.stringify(talk.at(-1)));
  keepSoFar();
}

/** Alone, and cut into the talk of somebody. */
function stopsOf(
  stops: readonly Clip[],
  talk: readonly SaidClip[],
): readonly (readonly [string, readonly Spoken[]])[] {
  const long = talk.filter(({ clip }) => clip.lengthSamples > 3 * speechRateHz);
  return [
    ['alone', stops.map(clip => spokenClip({ clip, grammar: digitGrammar, means: { kind: 'stop' } }))],
    [
      'in talk',
      stops.map((stop, i) => stopInTalk(stop, long[(i * 5) % long.length]?.clip ?? stop, digitGrammar)),
    ],
  ];
}

/** Every recorded noise once, as loud as it is at 5 dB, while one state after the other waits for its reply. */
function noiseScenes(clips: readonly Clip[], replies: readonly Saying[]): readonly Scene[] {
  const noises = clips.filter(({ kind, text }) => kind === 'noise' && !/talk|babble/.test(text));
  return noises.map((clip, i): Scene => {
    const samples = noiseAtSnr(soundOf(clip), 5);
    const says = `noise: ${clip.text}`;
    const whole = { fromSample: 0, toSample: samples.length, speechEndMs: 0 };
    return {
      voice: '',
      noise: clip.text,
      snrDb: 5,
      samples,
      utterances: [{ grammar: grammarAt(replies, i * 5), says, means: undefined, ...whole }],
    };
  });
}
