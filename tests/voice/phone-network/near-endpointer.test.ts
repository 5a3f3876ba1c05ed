import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SpeechEvent } from '../../../src/voice/endpointing.ts';
import { defaultNear, NearEndpointer } from '../../../src/voice/phone-network/near-endpointer.ts';
import { sureMoment } from './sounds.ts';

const { momentsToBegin, momentsToPause, momentsToEnd, longestMs } = defaultNear;
const some = (count: number, near = 0.9) => Array.from({ length: count }, () => near);
const piece = new Float32Array(640).fill(0.1);

/** Each piece of 40 ms with its moment; what happened but for the sound that went on. */
function eventsOf(nearness: readonly number[], endpointer = new NearEndpointer()): readonly SpeechEvent[] {
  return nearness
    .flatMap(near => endpointer.next(piece, [{ ...sureMoment(undefined), near }]))
    .filter(({ kind }) => kind !== 'more');
}
const kindsOf = (nearness: readonly number[]) => eventsOf(nearness).map(({ kind }) => kind);

describe('an utterance', () => {
  it('begins with some moments of near speech, pauses and ends with some without', () => {
    expect(kindsOf([...some(momentsToBegin), ...some(momentsToEnd, 0.1)])).toEqual(['begin', 'pause', 'end']);
    expect(kindsOf(some(momentsToBegin - 1))).toEqual([]);
    expect(kindsOf([...some(9), ...some(momentsToEnd - 1, 0.1), ...some(9)])).toEqual(['begin', 'pause']);
    expect(kindsOf([...some(9), ...some(momentsToPause - 1, 0.1), ...some(9)])).toEqual(['begin']);
  });

  it('goes on while it is in doubt whether somebody speaks, and does not begin with a doubt', () => {
    const doubt = (defaultNear.beginsAt + defaultNear.ceasesAt) / 2;
    expect(kindsOf([...some(3), ...some(30, doubt)])).toEqual(['begin']);
    expect(kindsOf(some(30, doubt))).toEqual([]);
    expect(kindsOf(some(30, Number.NaN))).toEqual([]);
  });

  it('is cut off when it is too long, and the next begins where it was cut', () => {
    const events = eventsOf(some(longestMs / 40 + 2 * momentsToBegin));
    expect(events.map(event => (event.kind === 'end' ? event.cause : event.kind))).toEqual([
      'begin',
      'tooLong',
      'begin',
    ]);
  });

  it('begins with the sound from before it was noticed, and no more than that', () => {
    const endpointer = new NearEndpointer();
    eventsOf(some(50, 0), endpointer);
    const [begin] = eventsOf(some(momentsToBegin), endpointer);
    const samples = begin?.kind === 'begin' ? begin.samples.length : 0;
    const wanted = (defaultNear.preRollMs / 1000) * 16_000;
    expect(samples).toBeGreaterThanOrEqual(wanted);
    expect(samples).toBeLessThan(wanted + 2 * piece.length);
  });

  it('is whole: all sound from its begin to its end is handed on, once', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(0, 0.4, 0.9), { maxLength: 60 }), nearness => {
        const endpointer = new NearEndpointer();
        let nth = 0;
        let begun = false;
        let last = 0;
        for (const near of [...some(8, 0), ...nearness]) {
          nth += 1;
          const sound = new Float32Array(640).fill(nth);
          for (const event of endpointer.next(sound, [{ ...sureMoment(undefined), near }])) {
            if (event.kind === 'begin') {
              begun = true;
              expect(event.samples.at(-1)).toBe(nth);
              last = nth;
            } else if (event.kind === 'more') {
              expect(begun).toBe(true);
              expect(event.samples[0]).toBe(last + 1);
              last += 1;
            } else if (event.kind === 'end') begun = false;
          }
        }
      }),
    );
  });
});
