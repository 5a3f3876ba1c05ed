import type { Grammar, HeardLanguage } from '../../src/voice/ports.ts';
import { procedureReplies } from '../procedure-replies.ts';
import { stopSayings, stopsInTheMiddle } from '../voice-grammars.ts';
import { type NoiseKind, noiseOf } from './noises.ts';
import type { Saying } from './scene.ts';
import { workshopTalk } from './talk.ts';

/** Voices and noises that belong together: what is chosen on one set is reported on the other. */
export interface SpeakerSet {
  readonly name: 'development' | 'test';
  readonly voices: readonly string[];
  readonly seed: number;
}

/**
 * Voices built from recorded speech. The phone network learned from neither set's speakers (acoustic-model), but for the
 * woman of festival-slt-hts, whom it knows as flite-slt, by another method: Debian has no second English woman.
 */
export const speakerSets: Readonly<Record<SpeakerSet['name'], SpeakerSet>> = {
  development: { name: 'development', voices: ['flite-kal16', 'festival-kal'], seed: 1 },
  test: { name: 'test', voices: ['flite-awb', 'festival-slt-hts', 'festival-ked'], seed: 1001 },
};

/** So many of them, spread evenly. */
export const spread = <T>(all: readonly T[], count: number): readonly T[] =>
  all.filter((_, i) => Math.floor((i * count) / all.length) !== Math.floor(((i - 1) * count) / all.length));

/** Every different wording of a good start with both demo engines, in the first state that takes it. */
export async function startReplies(language: HeardLanguage = 'en'): Promise<readonly Saying[]> {
  const bySaying = new Map<string, Saying>();
  for (const reply of await procedureReplies(language)) {
    if (!bySaying.has(reply.says)) bySaying.set(reply.says, reply);
  }
  return [...bySaying.values()];
}

/** Stop wordings alone and in other talk, said to the states of the given replies by turns. */
export const stopReplies = (replies: readonly Saying[]): readonly Saying[] =>
  [...stopSayings, ...stopsInTheMiddle].map((says, i) => ({
    grammar: grammarAt(replies, i * 7),
    says,
    means: { kind: 'stop' as const },
  }));

/** Workshop talk while one state after the other waits for its reply. */
export const talkAgainst = (replies: readonly Saying[]): readonly Saying[] =>
  workshopTalk.map((says, i) => ({ grammar: grammarAt(replies, i), says, means: undefined }));

export function grammarAt(replies: readonly Saying[], i: number): Grammar {
  const reply = replies[i % replies.length];
  if (reply === undefined) throw new RangeError('there is no reply to take a grammar from');
  return reply.grammar;
}

const loopS = 12;
const loops = new Map<string, Float32Array>();

/** A loop of noise for a set, made once. */
export function noiseLoop(kind: NoiseKind, { voices, seed }: SpeakerSet): Float32Array {
  const key = `${kind} ${seed}`;
  const loop = loops.get(key) ?? noiseOf(kind, loopS, seed, voices);
  loops.set(key, loop);
  return loop;
}
