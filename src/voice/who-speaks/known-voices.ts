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

/** How much nearer to the one voice than to the other an utterance is, where it is as likely the one's as the other's. */
const tieAt = 0;
/** How much of that multiplies the odds by e; from the trial on people (`npm run who-speaks`). */
const perOdds = 0.075;
/** Nearer to none of them than this is somebody else. */
const strangerBelow = 0.05;

const dot = (a: Voice, b: Voice): number => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

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

  /** How near an utterance is to somebody's voice, -1 to 1; null where that is not known yet. */
  nearness(name: Name, voice: Voice): number | null {
    const theirs = this.#heard.get(name) ?? [];
    if (theirs.length < enoughUtterances) return null;
    const sum = new Float32Array(voice.length);
    for (const each of theirs)
      for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + (each[i] as number);
    return dot(ofLengthOne(sum), voice);
  }

  /** Who of two it was; null while one of them is not known yet. */
  tell(one: Name, other: Name, voice: Voice): WhoSpoke<Name> | null {
    const [ofOne, ofOther] = [this.nearness(one, voice), this.nearness(other, voice)];
    if (ofOne === null || ofOther === null) return null;
    const nearest = Math.max(ofOne, ofOther);
    if (nearest < strangerBelow)
      return { of: 'neither', certainty: 1 / (1 + Math.exp((nearest - strangerBelow) / perOdds)) };
    const certainty = 1 / (1 + Math.exp(-(Math.abs(ofOne - ofOther) - tieAt) / perOdds));
    return { of: ofOne >= ofOther ? one : other, certainty };
  }
}
