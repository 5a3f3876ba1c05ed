import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { english } from '../../../prompts/en/index.ts';
import type { Moment } from '../../../src/voice/phone-network/network.ts';
import { phoneGraphOf } from '../../../src/voice/phone-network/phone-graph.ts';
import { Search } from '../../../src/voice/phone-network/search.ts';
import { createMomentSpotter, leastStopPerPhone } from '../../../src/voice/phone-network/stop-spotter.ts';
import { sayings, spelled, sureMoment } from './sounds.ts';

const pronounce = (word: string) => sayings[word] ?? [];
const wordings = english.stopWordings;

/** One of the ways to say a wording. */
const spellings = fc
  .constantFrom(...wordings)
  .chain(wording =>
    fc
      .tuple(...wording.split(' ').map(word => fc.constantFrom(...pronounce(word))))
      .map(spelling => ({ wording, spelling })),
  );

function found(moments: readonly Moment[]) {
  const search = new Search(phoneGraphOf(wordings, pronounce));
  for (const moment of moments) search.next(moment);
  return search.best();
}

const slower = (moments: readonly Moment[], paces: readonly number[]) =>
  moments.flatMap((moment, i) => Array.from({ length: paces[i % paces.length] ?? 1 }, () => moment));

describe('the search', () => {
  it('finds every wording that is spelled to it, at any pace, with silence around', () => {
    const paces = fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(spellings, paces, fc.nat(10), ({ wording, spelling }, pace, silent) => {
        const silence = Array.from({ length: silent }, () => sureMoment(undefined));
        const best = found([...silence, ...slower(spelled(spelling), pace), ...silence]);
        expect(best).toMatchObject({ score: 0, worstWord: 0 });
        // "stop stop" ends with a "stop" that is just as likely.
        expect(wording).toContain(best?.wording);
      }),
    );
  });

  it('never finds for sure what was not spelled in full', () => {
    fc.assert(
      fc.property(spellings, fc.nat(), fc.constantFrom('ZH', 'OY', undefined), ({ spelling }, nth, other) => {
        const moments = [...spelled(spelling)];
        moments.splice(nth % moments.length, 1, ...(other === undefined ? [] : [sureMoment(other)]));
        const best = found(moments);
        if (best !== undefined && best.worstWord >= leastStopPerPhone) expect(best.score).toBe(0);
      }),
    );
  });

  it('finds nothing where nobody spoke', () => {
    expect(found([])).toBeUndefined();
    expect(found([sureMoment(undefined), sureMoment(undefined)])?.score ?? -12).toBeLessThanOrEqual(-12);
  });
});

describe('the stop spotter', () => {
  const anyTalk = fc.array(fc.constantFrom('G IH V', 'M AY', 'B IH G', 'L UH K', 'N AW'), { maxLength: 8 });
  const spotter = (listened: readonly string[] = wordings) => {
    const made = createMomentSpotter(pronounce);
    made.listen(listened);
    return made;
  };

  it('hears every stop wording in the middle of any talk', () => {
    fc.assert(
      fc.property(anyTalk, spellings, anyTalk, (before, { spelling }, after) => {
        const listening = spotter();
        const heard = spelled([...before, ...spelling, ...after]).map(moment => listening.next(moment));
        expect(heard.filter(text => text !== undefined)).not.toEqual([]);
      }),
    );
  });

  it('hears none in talk without one, and none where none is listened for', () => {
    fc.assert(
      fc.property(anyTalk, talk => {
        const listening = spotter();
        expect(spelled(['AH', ...talk]).every(moment => listening.next(moment) === undefined)).toBe(true);
        const deaf = spotter([]);
        expect(spelled(['S T AA P']).every(moment => deaf.next(moment) === undefined)).toBe(true);
      }),
    );
  });

  it('leaves out a wording that nobody can pronounce, and hears the others', () => {
    const listening = spotter(['stop', 'zorblat']);
    expect(spelled(['S T AA P']).some(moment => listening.next(moment) === 'stop')).toBe(true);
  });
});
