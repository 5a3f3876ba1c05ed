import { blocksOf } from '../../src/voice/audio/blocks.ts';
import type { LeastCertainty } from '../../src/voice/decoders/network/bounds.ts';
import type { Decision } from '../../src/voice/decoders/network/decoder.ts';
import type { Features } from '../../src/voice/decoders/network/features.ts';
import type { NearSpeechSettings } from '../../src/voice/ear/near-speech.ts';
import { stepMs } from '../../src/voice/ear/sound.ts';
import { matcherOf } from '../../src/voice/meaning.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { type Level, scenesAt } from './accuracy.ts';
import { aloneDb, aloneScenes } from './alone.ts';
import { isMeant } from './count.ts';
import { speakerSets, spread, startReplies, stopReplies, talkAgainst } from './material.ts';
import { clipScenes, type SaidClip, spokenClip } from './people/clip-scenes.ts';
import { clipsOf } from './people/folders.ts';
import { preparePeople } from './people/prepare.ts';
import { stopsOf } from './people/stops.ts';
import { earRemembering, remember } from './remembered.ts';
import type { Placed, Scene, Spoken } from './scene.ts';

/**
 * A decision on what was heard of an utterance, and whether it was what was said; or a stop that was heard on the way, or
 * nothing: then without features.
 */
export interface Row {
  /** Made voices, a kind of what people said, or of what was heard while nobody answered. */
  readonly of: string;
  readonly level: Level;
  readonly noise: string;
  readonly speaker: string;
  readonly says: string;
  /** Nothing was asked for that this could answer. */
  readonly talk: boolean;
  /** Which utterance it is of, among those of its kind and level. */
  readonly nth: number;
  /** From the end of what was said to when this was decided. */
  readonly lateMs: number;
  readonly text: string;
  /** By which bound it is judged; null where nothing was heard that means anything. */
  readonly stands: keyof LeastCertainty | null;
  readonly right: boolean;
  readonly features: Features | null;
}

export const levels: readonly Level[] = ['clean', 20, 10, 5, 0];

interface Noted {
  readonly utterance: Placed;
  readonly atMs: number;
  /** A stop that was heard on the way has none, and neither has silence. */
  readonly decision?: Decision;
  readonly stopped?: boolean;
}

/** What was decided, and which stops were heard, while each utterance of a scene was heard. */
async function notedIn(scene: Scene, near: NearSpeechSettings): Promise<readonly Noted[]> {
  const noted: Noted[] = [];
  let atMs = 0;
  let current: Placed | undefined;
  const note = (what: Pick<Noted, 'decision' | 'stopped'>) => {
    if (current) noted.push({ utterance: current, atMs, ...what });
  };
  const ear = earRemembering(remember(scene.samples), {
    near,
    onDecision: decision => note({ decision }),
    onStep: nth => {
      atMs = (nth + 1) * stepMs;
    },
  });
  ear.onHeard(({ kind }) => {
    if (kind === 'stop') note({ stopped: true });
  });
  for (const [i, utterance] of scene.utterances.entries()) {
    current = utterance;
    ear.listen(utterance.grammar);
    const before = noted.length;
    const samples = scene.samples.subarray(i === 0 ? 0 : utterance.fromSample, utterance.toSample);
    for (const block of blocksOf({ samples, sampleRateHz: speechRateHz })) await ear.hear(block);
    if (noted.length === before) note({});
  }
  ear.close();
  return noted;
}

function rowOf({ utterance, decision, stopped = false, atMs }: Noted) {
  const { says, means, grammar, speechEndMs } = utterance;
  const text = stopped ? 'stop' : (decision?.text ?? '');
  const meaning = stopped ? ({ kind: 'stop' } as const) : matcherOf(grammar).meaningOf(text);
  return {
    says,
    talk: means === undefined,
    lateMs: Math.round(atMs - speechEndMs),
    text,
    stands: stopped ? ('stop' as const) : meaning === undefined ? null : (decision?.stands ?? null),
    right: meaning !== undefined && isMeant(means, meaning),
    features: decision?.features ?? null,
  };
}

async function rowsOf(
  of: string,
  scenes: readonly Scene[],
  level: Level,
  near: NearSpeechSettings,
): Promise<readonly Row[]> {
  const rows: Row[] = [];
  const numbers = new Map(scenes.flatMap(({ utterances }) => utterances).map((each, i) => [each, i]));
  for (const scene of scenes) {
    const { voice, noise } = scene;
    for (const noted of await notedIn(scene, near)) {
      const { utterance } = noted;
      const [speaker, nth] = [utterance.speaker ?? voice, numbers.get(utterance) ?? 0];
      rows.push({ of, level, noise, speaker, nth, ...rowOf(noted) });
    }
  }
  return rows;
}

/** How rows are gathered. */
export interface Gathering {
  readonly near: NearSpeechSettings;
  /** Whether this kind is wanted, at this level where it has some. */
  wants(of: string, level?: Level): boolean;
  keep(rows: readonly Row[]): void;
}

/** All stops of people that there are. */
const allStops = 1_000;

/** What people say: single figures, words and stops at all levels, each other clip at two of them by turns. */
export async function rowsOfPeople(
  folders: readonly string[],
  { near, wants, keep }: Gathering,
): Promise<void> {
  const people = await preparePeople(clipsOf(folders), 'dev');
  const { digits, numbers, words, otherWords, talk } = people.material;
  const { alone, 'in talk': within } = stopsOf(people, allStops);
  const all = (said: readonly SaidClip[]) => () => said.map(spokenClip);
  const byTurns = (said: readonly SaidClip[]) => (k: number) =>
    said.filter((_, i) => i % levels.length === k || (i + 2) % levels.length === k).map(spokenClip);
  const kinds: Readonly<Record<string, (k: number) => readonly Spoken[]>> = {
    digits: all(digits),
    numbers: byTurns([...numbers, ...numbers]),
    words: all(words),
    'other words': byTurns(otherWords),
    talk: byTurns(talk.filter((_, i) => i % 4 === 0)),
    stops: () => alone,
    'stops in talk': () => within,
  };
  for (const [of, saidAt] of Object.entries(kinds)) {
    for (const [k, level] of levels.entries())
      if (wants(of, level)) keep(await rowsOf(of, clipScenes(saidAt(k), level, people.loops), level, near));
  }
}

/** @param count of replies that each voice says at each level */
export async function rowsOfMadeVoices(count: number, { near, wants, keep }: Gathering): Promise<void> {
  const all = await startReplies();
  const set = speakerSets.development;
  const kinds: Readonly<Record<string, (level: Level) => readonly Scene[]>> = {
    made: level => [
      ...scenesAt(level, spread(all, count), set),
      ...scenesAt(level, spread(talkAgainst(all), Math.ceil(count / 2)), set),
    ],
    'made stops': level => scenesAt(level, stopReplies(all), set),
  };
  for (const level of levels) {
    for (const [of, saidAt] of Object.entries(kinds))
      if (wants(of, level)) keep(await rowsOf(of, saidAt(level), level, near));
  }
}

/**
 * What is heard while nobody answers: a radio and babble, of made voices and of people.
 * @param seconds of each, three times
 */
export async function rowsOfNobody(
  folders: readonly string[],
  seconds: number,
  { near, wants, keep }: Gathering,
): Promise<void> {
  const clips = clipsOf(folders).filter(({ split }) => split === 'dev');
  for (const [of, scenesOf] of Object.entries(await aloneScenes(clips, seconds)))
    if (wants(of)) keep(await rowsOf(of, scenesOf(), aloneDb, near));
}
