import { blocksOf } from '../../src/voice/audio/blocks.ts';
import type { Decision } from '../../src/voice/decoders/network/decoder.ts';
import type { Features } from '../../src/voice/decoders/network/features.ts';
import type { NearSpeechSettings } from '../../src/voice/ear/near-speech.ts';
import { matcherOf } from '../../src/voice/meaning.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { type Level, scenesAt } from './accuracy.ts';
import { aloneScenes } from './alone.ts';
import { isControl } from './controls.ts';
import { isMeant } from './count.ts';
import { speakerSets, spread, startReplies, stopReplies, talkAgainst } from './material.ts';
import { clipScenes, type SaidClip, spokenClip } from './people/clip-scenes.ts';
import { clipsOf } from './people/folders.ts';
import { preparePeople } from './people/prepare.ts';
import { stopsOf } from './people/stops.ts';
import { earRemembering, remember } from './remembered.ts';
import type { Placed, Scene, Spoken } from './scene.ts';
import { type Surroundings, surroundingsOf } from './surroundings.ts';

/** What a state waits for. */
export type Awaited = 'figure' | 'number' | 'read-back' | 'replies';

/** The likeliest wording of an utterance, what was known of it, and whether it was what was said. */
export interface Row {
  /** Made voices, a kind of what people said, or of what was heard while nobody answered. */
  readonly of: string;
  readonly level: Level;
  readonly noise: string;
  readonly speaker: string;
  readonly says: string;
  /** Nothing was asked for that this could answer. */
  readonly talk: boolean;
  readonly awaited: Awaited;
  /** Which utterance it is of, among those of its kind and level. */
  readonly nth: number;
  /** From the end of what was said to when this was decided. */
  readonly lateMs: number;
  /** Phones that were heard in it, of whatever. */
  readonly phonesHeard: number;
  readonly text: string;
  /** What the text stands for in this state; null where it stands for nothing. */
  readonly as: 'stop' | 'control' | 'reply' | 'number' | null;
  readonly right: boolean;
  /** None where nothing was decided of it, and of a stop that was heard on the way. */
  readonly features: Features | null;
  readonly around: Surroundings | null;
}

export const levels: readonly Level[] = ['clean', 20, 10, 5, 0];

const awaitedBy = ({ number, replies }: Grammar): Awaited => {
  if (number !== undefined) return number.max <= 9 && number.step === 1 ? 'figure' : 'number';
  return replies.some(({ id }) => id === 'yes') && replies.some(({ id }) => id === 'no')
    ? 'read-back'
    : 'replies';
};

interface Noted {
  readonly utterance: Placed;
  readonly atMs: number;
  /** A stop that was heard on the way has none. */
  readonly decision?: Decision;
  readonly around: Surroundings | null;
}

/** What was decided, and which stops were heard, while each utterance of a scene was heard. */
async function notedIn(scene: Scene, near: NearSpeechSettings): Promise<readonly (Noted | Placed)[]> {
  const noted: (Noted | Placed)[] = [];
  const remembered = remember(scene.samples);
  let step = 0;
  let current: Placed | undefined;
  const note = (decision?: Decision) => {
    const atMs = step * 20;
    const features = decision?.features;
    const around = features ? surroundingsOf(scene.samples, remembered, step, features) : null;
    if (current) noted.push({ utterance: current, atMs, around, ...(decision ? { decision } : {}) });
  };
  const ear = earRemembering(remembered, {
    near,
    onDecision: note,
    onStep: nth => {
      step = nth + 1;
    },
  });
  ear.onHeard(({ kind }) => {
    if (kind === 'stop') note();
  });
  for (const [i, utterance] of scene.utterances.entries()) {
    current = utterance;
    ear.listen(utterance.grammar);
    const before = noted.length;
    const samples = scene.samples.subarray(i === 0 ? 0 : utterance.fromSample, utterance.toSample);
    for (const block of blocksOf({ samples, sampleRateHz: speechRateHz })) await ear.hear(block);
    if (noted.length === before) noted.push(utterance);
  }
  ear.close();
  return noted;
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
    for (const noted of await notedIn(scene, near)) {
      const utterance = 'utterance' in noted ? noted.utterance : noted;
      const { says, means, grammar, speaker = scene.voice } = utterance;
      const common = {
        of,
        level,
        noise: scene.noise,
        speaker,
        says,
        talk: means === undefined,
        awaited: awaitedBy(grammar),
        nth: numbers.get(utterance) ?? 0,
        lateMs: 0,
        phonesHeard: 0,
      };
      if (!('utterance' in noted)) {
        rows.push({ ...common, text: '', as: null, right: false, features: null, around: null });
        continue;
      }
      const { atMs, decision, around } = noted;
      const text = decision === undefined ? 'stop' : (decision.text ?? '');
      const meaning = matcherOf(grammar).meaningOf(text);
      const as =
        meaning === undefined
          ? null
          : meaning.kind === 'reply' && isControl(meaning.id)
            ? 'control'
            : meaning.kind;
      const right = meaning !== undefined && isMeant(means, meaning);
      const lateMs = Math.round(atMs - utterance.speechEndMs);
      const { features = null, phonesHeard = 0 } = decision ?? {};
      rows.push({ ...common, lateMs, phonesHeard, text, as, right, features, around });
    }
  }
  return rows;
}

type Keep = (rows: readonly Row[]) => void;

/** All stops of people that there are. */
const allStops = 1_000;

/** What people say: single figures, words and stops at all levels, each other clip at two of them by turns. */
export async function rowsOfPeople(
  folders: readonly string[],
  near: NearSpeechSettings,
  keep: Keep,
  only: readonly string[] = [],
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
    if (only.length > 0 && !only.includes(of)) continue;
    for (const [k, level] of levels.entries())
      keep(await rowsOf(of, clipScenes(saidAt(k), level, people.loops), level, near));
  }
}

export async function rowsOfMadeVoices(count: number, near: NearSpeechSettings, keep: Keep): Promise<void> {
  const all = await startReplies();
  for (const level of levels) {
    const scenes = scenesAt(level, spread(all, count), speakerSets.development);
    const talk = scenesAt(level, spread(talkAgainst(all), Math.ceil(count / 2)), speakerSets.development);
    const stops = scenesAt(level, stopReplies(all), speakerSets.development);
    for (const [of, said] of [
      ['made', [...scenes, ...talk]],
      ['made stops', stops],
    ] as const)
      keep(await rowsOf(of, said, level, near));
  }
}

/** What is heard while nobody answers: a radio and babble, of made voices and of people. */
export async function rowsOfNobody(
  folders: readonly string[],
  seconds: number,
  near: NearSpeechSettings,
  keep: Keep,
): Promise<void> {
  const clips = clipsOf(folders).filter(({ split }) => split === 'dev');
  for (const [of, scenes] of await aloneScenes(clips, seconds)) keep(await rowsOf(of, scenes, 5, near));
}
