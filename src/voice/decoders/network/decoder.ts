import type { Decoder, Progress, Verdict } from '../../ear/decoder.ts';
import type { Moment } from '../../ear/moment.ts';
import { createVoicePower } from '../../ear/voice-power.ts';
import { voiceLanguage } from '../../languages/index.ts';
import { isMeant, type Matcher } from '../../meaning.ts';
import { type PhoneGraph, type Pronounce, phoneGraphOf } from '../../phone-network/phone-graph.ts';
import { blank } from '../../phone-network/phones.ts';
import { type Hypothesis, Search } from '../../phone-network/search.ts';
import type { Grammar, UnclearReason } from '../../ports.ts';
import { spokenWordings } from '../../wording.ts';
import {
  certaintyOf,
  type Judgement,
  judge,
  type LeastCertainty,
  leastPhones,
  type NearBounds,
  leastCertainty as usualLeastCertainty,
  nearBounds as usualNearBounds,
} from './bounds.ts';
import { type Features, featuresOf } from './features.ts';
import { grammarGraph } from './grammar-graph.ts';
import { pronounceable } from './pronounceable.ts';

/** A grammar, spelled in phones. */
export interface PhoneGrammar {
  /** Whether a number is said figure by figure: people say some of them, and draw breath. */
  readonly figures: boolean;
  /** The words of single figures. */
  readonly figureWords: ReadonlySet<string>;
  readonly matcher: Matcher;
  readonly graph: PhoneGraph;
  /** The reply that lets count what was read back. */
  readonly agreement: string | undefined;
}

/** What was made of an utterance, for whoever chooses bounds. */
export interface Decision {
  readonly verdict: Verdict;
  /** Phones that were heard in it, of whatever. */
  readonly phonesHeard: number;
  /** The likeliest wording and what is known of it, taken or not. */
  readonly text?: string;
  readonly features?: Features;
  /** By which bound it was judged. */
  readonly stands?: keyof LeastCertainty;
}

export interface NetworkDecoderOptions {
  /** Pronunciations in the phones of the network. */
  readonly pronounce: Pronounce;
  /** As shipped for English where it is not given. */
  readonly leastCertainty?: LeastCertainty | undefined;
  /** As shipped for English where they are not given. */
  readonly nearBounds?: NearBounds | undefined;
  /** How late the phones are, against the rest of their moment. */
  readonly phonesLateMoments: number;
  readonly onDecision?: (decision: Decision) => void;
}

const settings = { beam: 24, talkCost: 4 };
/** So much likelier something has to be that is broken off in the middle, to be waited for. */
const unfinishedLead = 2;
/** The same where nobody pauses, within a word: its end may have gone unheard. */
const brokenOffLead = 6;
/** Moments without a phone after which none is on its way any more, where the early outputs know of none either. */
const settledMoments = 1;
/** The same in the middle of a word: a "t" at its end comes after a gap. */
const brokenOffMoments = 6;
/** Moments without a phone in the early outputs after which what is complete is over: once the other outputs tell of none either. */
const leastOverMoments = 3;
/** The same where that is a stop wording. */
const stopMoments = 8;
/** Less of a lead than this, and it may be broken off or not. */
const doubtfulLead = 1.5;
const doubtfulMoments = 3;
const never = Number.NEGATIVE_INFINITY;

const likeliest = (phones: Float32Array): number => {
  let best = 0;
  for (let i = 1; i < phones.length; i++) if ((phones[i] as number) > (phones[best] as number)) best = i;
  return best;
};

const figureWordsOf = ({ number }: Grammar): ReadonlySet<string> =>
  new Set(number === undefined ? [] : spokenWordings(voiceLanguage(number.language).numbers.digits.flat()));

/**
 * Searches what the phone network hears for what the grammar allows.
 * Its `prepare` leaves wordings out that nobody taught it to pronounce, and throws as `pronounceable` does.
 */
export function createNetworkDecoder({
  pronounce,
  phonesLateMoments,
  leastCertainty = usualLeastCertainty,
  nearBounds = usualNearBounds,
  onDecision = () => {},
}: NetworkDecoderOptions): Decoder<PhoneGrammar> {
  const overMoments = Math.max(leastOverMoments, phonesLateMoments + settledMoments);
  let matcher: Matcher | undefined;
  let agreement: string | undefined;
  let figures = false;
  let figureWords: ReadonlySet<string> = new Set();
  let search: Search | undefined;
  let searched: PhoneGraph | undefined;
  let phonesUpTo: number[] = [];
  let near: number[] = [];
  let powers: number[] = [];
  let backgroundDbfs: number | undefined;
  let voicePower = createVoicePower();
  let lastPhone = blank;
  /** Moments in a row in which no phone was heard: in the outputs that look further ahead, and in the early ones. */
  let quiet = 0;
  let quietEarly = 0;

  function take(moment: Moment): void {
    search?.next(moment.phones);
    const phone = likeliest(moment.phones);
    quiet = phone === blank ? quiet + 1 : 0;
    quietEarly = likeliest(moment.early) === blank ? quietEarly + 1 : 0;
    const heardBefore = phonesUpTo.at(-1) ?? 0;
    phonesUpTo.push(phone !== blank && phone !== lastPhone ? heardBefore + 1 : heardBefore);
    near.push(moment.near);
    lastPhone = phone;
  }

  function outlook(): Progress['outlook'] {
    const best = search?.hypotheses()[0];
    if (best === undefined) return 'unfinished';
    const { betweenWordsScore = never, unfinishedScore = never } = search ?? {};
    if (betweenWordsScore > best.score + unfinishedLead || unfinishedScore > best.score + brokenOffLead)
      return 'unfinished';
    if (!best.mayGoOn) return 'complete';
    if (matcher?.meaningOf(best.text)?.kind !== 'number') return 'extensible';
    return (figures || endsInFigures(best)) && takesFigureAfter(best) ? 'figures' : 'extensible';
  }

  /** Whether another figure may follow, and not a unit only: of a pressure up to 120, none after "six eight". */
  function takesFigureAfter({ text }: Hypothesis): boolean {
    return [...figureWords].some(word => matcher?.meaningOf(`${text} ${word}`)?.kind === 'number');
  }

  /** Whether what was said ends in figures, one after the other, whatever else the grammar takes. */
  function endsInFigures({ words }: Hypothesis): boolean {
    const last = words.slice(-2);
    return last.length === 2 && last.every(({ word }) => figureWords.has(word));
  }

  /** A stop is reported by then: what would be one in the midst of talk has time to turn out to be something else. */
  const wouldStop = () => matcher?.meaningOf(search?.hypotheses()[0]?.text ?? '')?.kind === 'stop';

  /** Whether no phone is on its way any more. */
  function settled(): boolean {
    const score = search?.hypotheses()[0]?.score ?? never;
    const brokenOff = (search?.unfinishedScore ?? never) - score;
    const enough =
      brokenOff <= 0 ? settledMoments : brokenOff < doubtfulLead ? doubtfulMoments : brokenOffMoments;
    return quietEarly >= phonesLateMoments && quiet >= enough;
  }

  /** The likeliest wording of another meaning than the best; one that means nothing, or two things, is another. */
  function otherThan(best: Hypothesis, all: readonly Hypothesis[]): Hypothesis | undefined {
    const meant = matcher?.meaningOf(best.text);
    return all.find(({ text }) => {
      const meaning = matcher?.meaningOf(text);
      return meant === undefined || meaning === undefined ? text !== best.text : !isMeant(meant, meaning);
    });
  }

  /** By which bound a wording is judged. */
  function standsFor({ text, words }: Hypothesis): keyof LeastCertainty {
    const meaning = matcher?.meaningOf(text);
    if (meaning?.kind === 'stop') return 'stop';
    if (meaning?.kind === 'number' && words.length === 1) return 'oneWordNumber';
    return meaning?.kind === 'reply' && meaning.id === agreement ? 'agreement' : 'reply';
  }

  function decide(): Decision {
    const phonesHeard = phonesUpTo.at(-1) ?? 0;
    const all = search?.hypotheses() ?? [];
    const [best] = all;
    const otherwise = (reason: UnclearReason, text = ''): Verdict =>
      phonesHeard < leastPhones ? { kind: 'nothing' } : { kind: 'unclear', text, reason };
    if (best === undefined) return { verdict: otherwise('outOfGrammar'), phonesHeard };
    const unfinishedScore = search?.unfinishedScore ?? Number.NEGATIVE_INFINITY;
    const features = featuresOf(best, otherThan(best, all), {
      phonesUpTo,
      near,
      phonesLateMoments,
      unfinishedScore,
      powers,
      backgroundDbfs,
    });
    const { text } = best;
    const stands = standsFor(best);
    const verdicts: Readonly<Record<Judgement, () => Verdict>> = {
      stop: () => ({ kind: 'stop', text }),
      background: () => ({ kind: 'nothing' }),
      taken: () => ({ kind: 'taken', text, certainty: certaintyOf(features) }),
      doubtful: () => otherwise('lowConfidence', text),
    };
    const verdict = verdicts[judge(features, stands, leastCertainty, nearBounds)]();
    return { verdict, phonesHeard, text, features, stands };
  }

  return {
    prepare(grammar, matcher) {
      const start = grammarGraph(pronounceable(grammar, pronounce));
      const figures = grammar.number?.digitsOnly === true;
      const figureWords = figureWordsOf(grammar);
      const { agreement } = grammar;
      return { figures, figureWords, matcher, agreement, graph: phoneGraphOf(start, pronounce) };
    },
    begin(prepared, levelBeforeDbfs) {
      ({ matcher, figures, figureWords, agreement } = prepared);
      backgroundDbfs = levelBeforeDbfs;
      powers = [];
      voicePower = createVoicePower();
      if (searched === prepared.graph) search?.restart();
      else search = new Search(prepared.graph, settings);
      searched = prepared.graph;
      phonesUpTo = [];
      near = [];
      lastPhone = blank;
      quiet = 0;
      quietEarly = 0;
    },
    hear({ raw, moments }, silentMs) {
      powers.push(voicePower(raw));
      moments.forEach(take);
      const phoneless = quietEarly >= overMoments;
      if (silentMs === 0 && !phoneless) return { outlook: 'unfinished', settled: false };
      const isSettled = settled() && (!wouldStop() || quietEarly >= stopMoments);
      const progress = { outlook: outlook(), settled: isSettled };
      return { ...progress, over: phoneless && progress.settled && progress.outlook === 'complete' };
    },
    end() {
      const decision = decide();
      onDecision(decision);
      return decision.verdict;
    },
    close() {},
  };
}
