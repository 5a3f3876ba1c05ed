import { describe, expect, it } from 'vitest';
import {
  certaintyOf,
  leastCertainty,
  type NearBounds,
} from '../../../../src/voice/decoders/network/bounds.ts';
import { createNetworkDecoder, type Decision } from '../../../../src/voice/decoders/network/decoder.ts';
import { createHearingNetwork } from '../../../../src/voice/ear/hearing-network.ts';
import type { Moment } from '../../../../src/voice/ear/moment.ts';
import { leastStopPerPhone } from '../../../../src/voice/ear/stop-spotter.ts';
import { createVoicePower, powerDbfs } from '../../../../src/voice/ear/voice-power.ts';
import { hearingOf } from '../../../../src/voice/languages/index.ts';
import { pronounceEnglish } from '../../../../src/voice/languages/pronunciations/english.ts';
import { createMatcher } from '../../../../src/voice/meaning.ts';
import { loadWeights } from '../../../../src/voice/phone-network/load-node.ts';
import type { Grammar } from '../../../../src/voice/ports.ts';
import { certain, nearMoments, spelled } from '../../phone-network/sounds.ts';
import { decoderContract } from '../contract.ts';

const { phonesLateMoments } = createHearingNetwork(await loadWeights());

decoderContract('network', async () => ({
  decoder: createNetworkDecoder({ pronounce: pronounceEnglish, phonesLateMoments }),
}));

const pressure: Grammar = {
  key: 'pressure',
  stop: ['stop'],
  replies: [{ id: 'pressureGood', wordings: ['pressure good'] }],
  number: { id: 'oilPressure', leads: ['oil pressure'], units: ['pounds'], min: 0, max: 99, step: 1 },
};

/** Words that no wording has. */
const others: Readonly<Record<string, string>> = {
  big: 'B IH G',
  give: 'G IH V',
  hood: 'HH UH D',
  maybe: 'M EY B IY',
};

/** What is made of words that are heard without a doubt. */
function made(
  words: string,
  {
    asked = pressure,
    near = 0.95,
    doubt = 12,
    nearAt = () => near,
    nearBounds,
  }: {
    asked?: Grammar;
    near?: number;
    doubt?: number;
    nearAt?: (share: number) => number;
    nearBounds?: NearBounds | undefined;
  } = {},
) {
  let decision: Decision | undefined;
  const decoder = createNetworkDecoder({
    pronounce: pronounceEnglish,
    phonesLateMoments: 0,
    nearBounds,
    onDecision: each => {
      decision = each;
    },
  });
  decoder.begin(decoder.prepare(asked, createMatcher(asked)));
  const hear = (moments: readonly Moment[], silentMs: number) =>
    decoder.hear({ raw: new Float32Array(), heard: new Float32Array(), moments }, silentMs);
  const pronunciations = words.split(' ').map(word => others[word] ?? pronounceEnglish(word)[0] ?? word);
  const spoken = nearMoments(spelled(pronunciations, doubt), near);
  hear(
    spoken.map((moment, i) => ({ ...moment, near: nearAt((i + 0.5) / spoken.length) })),
    0,
  );
  const progress = hear(nearMoments([certain(undefined), certain(undefined)], 0.1), 200);
  const verdict = decoder.end();
  if (decision === undefined || verdict instanceof Promise || progress instanceof Promise)
    throw new Error('late');
  return { verdict, outlook: progress.outlook, decision };
}

describe('the network decoder', () => {
  it.each([
    ['pressure good', 'complete'],
    ['oil pressure forty two pounds', 'complete'],
    ['forty two', 'extensible'],
    ['forty', 'extensible'],
    ['oil pressure', 'unfinished'],
  ])('knows of "%s" that it is %s', (words, outlook) => {
    expect(made(words).outlook).toBe(outlook);
  });

  it('waits for more of a number that is said figure by figure, since people draw breath in it', () => {
    const code: Grammar = {
      key: 'code',
      stop: ['stop'],
      replies: [],
      number: { id: 'code', leads: [], units: [], min: 0, max: 9_999, step: 1, digitsOnly: true },
    };
    expect(made('four', { asked: code }).outlook).toBe('figures');
    expect(made('four two', { asked: code }).outlook).toBe('figures');
    expect(made('four two one nine', { asked: code }).outlook).toBe('complete');
  });

  it('waits for the last figure of a code too, however long it may be, and for none after it', () => {
    const fault: Grammar = {
      key: 'fault',
      stop: ['stop'],
      replies: [],
      number: { id: 'fault', leads: [], units: [], min: 0, max: 9_999_999, step: 1, digitsOnly: true },
    };
    const seven = 'six six one five zero six four'.split(' ');
    for (let count = 1; count <= 7; count++) {
      const { outlook } = made(seven.slice(0, count).join(' '), { asked: fault });
      expect([count, outlook]).toEqual([count, count < 7 ? 'figures' : 'complete']);
    }
  });

  it('waits as long where figures are said though they need not be, and not where one alone may be all', () => {
    const speed = { ...pressure, number: { id: 'speed', leads: [], units: [], min: 0, max: 900, step: 1 } };
    expect(made('four two', { asked: speed }).outlook).toBe('figures');
    expect(made('four', { asked: speed }).outlook).toBe('extensible');
    expect(made('forty two', { asked: speed }).outlook).not.toBe('figures');
    expect(made('four two one', { asked: speed }).outlook).toBe('complete');
  });

  it('says that what is complete is over, after enough of silence, though somebody still seems near', () => {
    const over = (words: string, moments: number) => {
      const decoder = createNetworkDecoder({ pronounce: pronounceEnglish, phonesLateMoments: 0 });
      decoder.begin(decoder.prepare(pressure, createMatcher(pressure)));
      const quiet = Array.from({ length: moments }, () => certain(undefined));
      const heard = nearMoments([
        ...spelled(words.split(' ').map(word => pronounceEnglish(word)[0] ?? '')),
        ...quiet,
      ]);
      const progress = decoder.hear(
        { raw: new Float32Array(), heard: new Float32Array(), moments: heard },
        0,
      );
      return progress instanceof Promise ? undefined : progress.over;
    };
    expect(over('pressure good', 8)).toBe(true);
    expect(over('pressure good', 2)).not.toBe(true);
    // What would stop has been heard by then, and may still turn out to be the beginning of other talk.
    expect(over('stop', 6)).not.toBe(true);
    expect(over('stop', 8)).toBe(true);
    expect(over('oil pressure', 8)).not.toBe(true);
    expect(over('forty', 8)).not.toBe(true);
  });

  it('takes what is likely from its first phone to its last, and is surer of it than of what is less likely', () => {
    const sure = made('pressure good');
    expect(sure.verdict).toMatchObject({ kind: 'taken', text: 'pressure good' });
    const doubtful = made('pressure hood', { doubt: 3 });
    expect(doubtful.decision.text).toBe('pressure good');
    expect(doubtful.decision.features?.worstWord).toBeLessThan(sure.decision.features?.worstWord ?? 0);
  });

  it('says of each wording what speaks against it', () => {
    expect(made('pressure good').decision.features).toMatchObject({
      perPhone: 0,
      worstWord: 0,
      unfinished: 0,
      phonesBefore: 0,
      phonesAfter: 0,
      phones: 8,
    });
    const between = made('big big pressure good maybe').decision;
    expect(between.text).toBe('pressure good');
    expect(between.features).toMatchObject({ phonesBefore: 6, perPhone: 0 });
    expect(between.features?.phonesAfter).toBeGreaterThan(0);
    expect(made('pressure good', { near: 0.4 }).decision.features?.near).toBeCloseTo(0.4);
  });

  it('holds wordings of another meaning against it, and not other words for the same', () => {
    const { features } = made('one hundred and five', {
      asked: { ...pressure, number: { id: 'n', leads: [], units: [], min: 0, max: 120, step: 1 } },
    }).decision;
    // "one hundred five" means the same, and is likelier than any other number.
    expect(features?.margin).toBeGreaterThan(10);
  });

  it('makes nothing of an utterance in which hardly a phone was heard', () => {
    expect(made('AH').verdict).toEqual({ kind: 'nothing' });
  });

  it('takes for background what hardly stands above the seconds before, where it may not be near: nobody is asked again', () => {
    const standing = (riseDb: number, near = 0.97) => {
      const decoder = createNetworkDecoder({ pronounce: pronounceEnglish, phonesLateMoments: 0 });
      const raw = Float32Array.from({ length: 320 }, (_, i) => (i % 2 === 0 ? 0.1 : -0.1));
      const loudDbfs = powerDbfs(createVoicePower()(raw));
      decoder.begin(decoder.prepare(pressure, createMatcher(pressure)), loudDbfs - riseDb);
      const moments = nearMoments(
        spelled(['pressure', 'good'].map(word => pronounceEnglish(word)[0] ?? '')),
        near,
      );
      for (let i = 0; i < 2 * moments.length; i++) {
        decoder.hear({ raw, heard: raw, moments: moments.slice(i, i + 1) }, 0);
      }
      return decoder.end();
    };
    expect(standing(0, 0.8)).toEqual({ kind: 'nothing' });
    expect(standing(4, 0.8)).toEqual({ kind: 'nothing' });
    expect(standing(4)).toMatchObject({ kind: 'taken', text: 'pressure good' });
    expect(standing(12, 0.8)).toMatchObject({ kind: 'taken', text: 'pressure good' });
  });

  it('takes for background what is hardly near, however far it rises, and a stop all the same', () => {
    expect(made('pressure good', { near: 0.5 }).verdict).toEqual({ kind: 'nothing' });
    expect(made('pressure good', { near: 0.7 }).verdict.kind).toBe('taken');
    expect(made('stop', { near: 0.1 }).verdict.kind).toBe('stop');
  });

  it('lets nobody agree to what was read back who is not near from beginning to end, but object', () => {
    const readBack: Grammar = {
      key: 'readBack',
      stop: ['stop'],
      replies: [
        { id: 'yes', wordings: ['correct'] },
        { id: 'no', wordings: ['negative'] },
      ],
      agreement: 'yes',
    };
    const farAtTheEnd = (share: number) => (share > 0.7 ? 0.4 : 0.99);
    expect(made('correct', { asked: readBack }).verdict.kind).toBe('taken');
    expect(made('correct', { asked: readBack, nearAt: farAtTheEnd }).verdict).toMatchObject({
      kind: 'unclear',
      text: 'correct',
    });
    expect(made('negative', { asked: readBack, nearAt: farAtTheEnd }).verdict.kind).toBe('taken');
    const question = { ...readBack, agreement: 'ready' };
    expect(made('correct', { asked: question, nearAt: farAtTheEnd }).verdict.kind).toBe('taken');
  });

  it('asks for as much nearness as the language does: in French only of what hardly rises', () => {
    const { nearBounds } = hearingOf('fr');
    expect(made('pressure good', { near: 0.5, nearBounds }).verdict.kind).toBe('taken');
    const agreeing = { ...pressure, agreement: 'pressureGood' };
    expect(made('pressure good', { asked: agreeing, near: 0.5 }).verdict.kind).toBe('nothing');
    expect(made('pressure good', { asked: agreeing, near: 0.5, nearBounds }).verdict.kind).toBe('taken');
  });

  it('hears a stop in the midst of the background too', () => {
    const decoder = createNetworkDecoder({ pronounce: pronounceEnglish, phonesLateMoments: 0 });
    decoder.begin(decoder.prepare(pressure, createMatcher(pressure)), 0);
    const moments = nearMoments(spelled([pronounceEnglish('stop')[0] ?? '']));
    decoder.hear({ raw: new Float32Array(320), heard: new Float32Array(320), moments }, 0);
    expect(decoder.end()).toMatchObject({ kind: 'stop' });
  });

  it.each([
    ['reply', 'done', 'D AH M', 0.95],
    ['reply', 'forty two', 'B AO R B IY B UW', 0.95],
    ['oneWordNumber', 'nine', 'N AY M', 0.95],
    ['agreement', 'correct', 'K ER EH K D', 0.95],
    ['stop', 'stop', 'Z T AA B', 0.95],
    // As far as a radio: hardly near, and not near at all.
    ['stop', 'stop', 'Z T AA B', 0.5],
    ['stop', 'stop', 'Z T AA B', 0.1],
  ] as const)('judges by the bound for a %s: "%s" as %s, near by %d', (bound, text, sound, near) => {
    const asked: Grammar = {
      key: 'all',
      stop: ['stop'],
      replies: ['done', 'correct'].map(id => ({ id, wordings: [id] })),
      agreement: 'correct',
      number: { id: 'n', leads: [], units: [], min: 0, max: 99, step: 1 },
    };
    const verdicts = Array.from({ length: 60 }, (_, i) => {
      const { verdict, decision } = made(sound, { asked, doubt: i / 5, near });
      return { verdict, decision, certainty: decision.features ? certaintyOf(decision.features) : 0 };
    }).filter(({ decision }) => decision.text === text && decision.features);
    // Of a stop the phones alone may make sure.
    const doubted = verdicts.filter(
      ({ decision }) => text !== 'stop' || (decision.features?.worstWord ?? 0) < leastStopPerPhone,
    );
    for (const { verdict, certainty } of doubted)
      expect([certainty, verdict.kind]).toEqual([
        certainty,
        certainty >= leastCertainty[bound] ? 'taken' : 'unclear',
      ]);
    expect(new Set(doubted.map(({ verdict }) => verdict.kind))).toEqual(new Set(['taken', 'unclear']));
  });

  it('is unclear about talk that holds no wording, and about a wording in the midst of much other talk', () => {
    expect(made('big big hammer').verdict.kind).toBe('unclear');
    expect(made('give big hammer pressure good maybe not').verdict.kind).toBe('unclear');
  });
});
