import { ofLengthOne, type Voice } from './voice-network.ts';

/** What an utterance tells of who said it: how sure, 0 to 1. */
export interface WhoSpoke<Name extends string> {
  readonly of: Name | 'neither';
  readonly certainty: number;
}

/** Utterances from which on a voice is known: the second person says no more before their first "clear". */
export const enoughUtterances = 3;
/** What came long ago goes out of it: people move, and rooms change. */
const mostUtterances = 24;

/**
 * By so much an utterance has to be nearer to the one voice than to the other for odds of e to one; several together tell
 * more. Fitted to people of the development split at 10 dB (`npm run who-speaks -- --development`).
 */
const perOdds = { one: 0.053, several: 0.032 };
/** Nearer to none of them than this is somebody else. */
const strangerBelow = 0;

/**
 * Two voices that are nearer to one another than this are not told apart: a third of what one person says in both parts is this
 * near, and of a hundred pairs of people of the same recordings hardly one.
 */
const alikeFrom = 0.9;

const dot = (a: Voice, b: Voice): number => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

const likely = (odds: number): number => 1 / (1 + Math.exp(-odds));

/** The direction in the middle of some. */
function middleOf(voices: readonly Voice[]): Voice {
  const sum = new Float32Array(voices[0]?.length ?? 0);
  for (const voice of voices)
    for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + (voice[i] as number);
  return ofLengthOne(sum);
}

/** The middle of the utterances of each person, and which of them another utterance is nearest to. */
export class KnownVoices<Name extends string> {
  readonly #heard = new Map<Name, Voice[]>();

  /** Puts an utterance down to somebody, and gives back how many there are of theirs. */
  learn(name: Name, voice: Voice): number {
    const theirs = this.#heard.get(name) ?? [];
    theirs.push(voice);
    if (theirs.length > mostUtterances) theirs.shift();
    this.#heard.set(name, theirs);
    return theirs.length;
  }

  /** How near utterances together are to somebody's voice, -1 to 1; null where that is not known yet. */
  nearness(name: Name, voices: readonly Voice[]): number | null {
    const theirs = this.#heard.get(name) ?? [];
    return theirs.length < enoughUtterances ? null : dot(middleOf(theirs), middleOf(voices));
  }

  #areAlike(one: Name, other: Name): boolean {
    const [ones, others] = [this.#heard.get(one) ?? [], this.#heard.get(other) ?? []];
    return dot(middleOf(ones), middleOf(others)) >= alikeFrom;
  }

  /** Who of two it was who said something, one or several utterances of it; null while one of them is not known yet, or they are alike. */
  tell(one: Name, other: Name, voices: readonly Voice[]): WhoSpoke<Name> | null {
    const [ofOne, ofOther] = [this.nearness(one, voices), this.nearness(other, voices)];
    if (ofOne === null || ofOther === null || this.#areAlike(one, other)) return null;
    const per = voices.length > 1 ? perOdds.several : perOdds.one;
    const nearest = Math.max(ofOne, ofOther);
    if (nearest < strangerBelow) return { of: 'neither', certainty: likely((strangerBelow - nearest) / per) };
    return { of: ofOne >= ofOther ? one : other, certainty: likely(Math.abs(ofOne - ofOther) / per) };
  }
}
