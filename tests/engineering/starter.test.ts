import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeIssue } from '../../src/engineering/result.ts';
import { starterState, starterWait } from '../../src/engineering/starter.ts';
import { anyReading, between, expectSound, oneSpoilt, valueFrom } from './properties.ts';

const STARTER = { limitC: 150, longestBurstS: 30, ratedAmbientC: 25, timeConstantS: 300 };

const history = fc.array(fc.record({ cranking: fc.boolean(), seconds: between(0, 60) }), { maxLength: 8 });
const ambientC = between(-40, 24);

describe('a starter that may do several bursts in a row', () => {
  const REST = { cranking: false, seconds: 120 };
  const BURST = { cranking: true, seconds: 30 };
  const three = { ...STARTER, burstsInARow: 3, minRestS: 120 };
  /** So many bursts, with the rest that its maker states between them, begun cold at the rated ambient. */
  const row = (count: number) =>
    Array.from({ length: count }, () => [REST, BURST])
      .flat()
      .slice(1);
  const at = (starter: typeof STARTER, past: ReturnType<typeof row>) =>
    valueFrom(starterState(starter, 25, past));

  test('comes to its limit at the end of the last of them, and not before', () => {
    for (const burstsInARow of [2, 3, 10]) {
      const starter = { ...STARTER, burstsInARow, minRestS: 120 };
      for (let done = 1; done < burstsInARow; done += 1) {
        expect(at(starter, row(done)).temperatureC).toBeLessThan(150);
        expect(at(starter, [...row(done), REST]).nextBurstS).toBeCloseTo(30, 9);
      }
      expect(at(starter, row(burstsInARow)).temperatureC).toBeCloseTo(150, 9);
    }
  });

  test('has cooled between them by what is left of its heat after burst and rest', () => {
    // One time constant of 300 s: exp(-150/300) is left of what each burst adds.
    const kept = Math.exp(-0.5);
    const addK = (150 - 25) / (1 + kept + kept ** 2);
    expect(at(three, row(1)).temperatureC).toBeCloseTo(25 + addK, 9);
    expect(at(three, row(2)).temperatureC).toBeCloseTo(25 + addK * (1 + kept), 9);
  });

  test('has to rest longer before a fourth', () => {
    const waitS = valueFrom(starterWait(three, 25, row(3), 30));
    expect(waitS).toBeGreaterThan(120);
    expect(at(three, [...row(3), { cranking: false, seconds: waitS }]).nextBurstS).toBeCloseTo(30, 6);
  });

  test('is one with a single burst where no more are stated, whatever the rest', () => {
    expect(at({ ...STARTER, burstsInARow: 1 } as typeof STARTER, row(1))).toEqual(at(STARTER, row(1)));
  });

  test('has to have its rest stated, and both within their ranges', () => {
    const refused = (parts: object) => {
      const state = starterState({ ...STARTER, ...parts }, 25, []);
      return state.ok ? 'an answer' : describeIssue(state.issue);
    };
    expect(refused({ burstsInARow: 2 })).toBe('minRestS is missing; allowed: 1 to 3600 s.');
    expect(refused({ burstsInARow: 10, minRestS: 3600 })).toBe('an answer');
    expect(refused({ burstsInARow: 10, minRestS: 1 })).toBe('an answer');
    expect(refused({ burstsInARow: 0.9, minRestS: 120 })).toBe(
      'burstsInARow (0.9) is outside the range of the rule; allowed: 1 to 10.',
    );
    expect(refused({ burstsInARow: 10.1, minRestS: 120 })).toBe(
      'burstsInARow (10.1) is outside the range of the rule; allowed: 1 to 10.',
    );
    for (const minRestS of [0.9, 3601])
      expect(refused({ burstsInARow: 2, minRestS })).toBe(
        `minRestS (${minRestS}) is outside the range of the rule; allowed: 1 to 3600 s.`,
      );
  });
});

describe('the starter', () => {
  test('may do its longest burst from cold at the rated ambient temperature, and then must rest', () => {
    expect(valueFrom(starterState(STARTER, 25, [])).nextBurstS).toBeCloseTo(30, 9);
    const after = valueFrom(starterState(STARTER, 25, [{ cranking: true, seconds: 30 }]));
    expect(after.temperatureC).toBeCloseTo(150, 9);
    expect(after.nextBurstS).toBeCloseTo(0, 9);
  });

  test('never gets hotter than its limit when each burst keeps to what it was allowed', () => {
    const rests = fc.array(between(0, 300), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(ambientC, rests, (ambient, restsS) => {
        const done: { cranking: boolean; seconds: number }[] = [];
        for (const rest of restsS) {
          const { nextBurstS } = valueFrom(starterState(STARTER, ambient, done));
          done.push({ cranking: true, seconds: nextBurstS });
          expect(valueFrom(starterState(STARTER, ambient, done)).temperatureC).toBeLessThanOrEqual(
            150 + 1e-6,
          );
          done.push({ cranking: false, seconds: rest });
        }
      }),
    );
  });

  test('may do no longer a burst after more cranking, nor a shorter one after more rest', () => {
    const seconds = between(0, 600);
    fc.assert(
      fc.property(ambientC, history, seconds, (ambient, past, more) => {
        const next = (extra: boolean) =>
          valueFrom(starterState(STARTER, ambient, [...past, { cranking: extra, seconds: more }])).nextBurstS;
        const { nextBurstS } = valueFrom(starterState(STARTER, ambient, past));
        expect(next(true)).toBeLessThanOrEqual(nextBurstS + 1e-9);
        expect(next(false)).toBeGreaterThanOrEqual(nextBurstS - 1e-9);
      }),
    );
  });

  test('may do the burst that was waited for, and not much sooner', () => {
    fc.assert(
      fc.property(ambientC, history, between(0, 25), (ambient, past, wantedS) => {
        const waitS = valueFrom(starterWait(STARTER, ambient, past, wantedS));
        const allowedAfter = (restS: number) =>
          valueFrom(starterState(STARTER, ambient, [...past, { cranking: false, seconds: restS }]))
            .nextBurstS;
        expect(allowedAfter(waitS)).toBeGreaterThanOrEqual(wantedS - 1e-5);
        if (waitS > 5) expect(allowedAfter(waitS - 5)).toBeLessThan(wantedS);
      }),
    );
  });

  test('may not be used at all at its limit or above it, and a burst of no length needs no rest', () => {
    const hot = [{ cranking: true, seconds: 40 }];
    const { temperatureC, nextBurstS } = valueFrom(starterState(STARTER, 25, hot));
    expect(temperatureC).toBeGreaterThan(150);
    expect(nextBurstS).toBe(0);
    expect(valueFrom(starterWait(STARTER, 25, hot, 0))).toBe(0);
  });

  test('the burst that is allowed now needs no rest, though arithmetic may lose a little of it', () => {
    fc.assert(
      fc.property(ambientC, history, (ambient, past) => {
        const { nextBurstS } = valueFrom(starterState(STARTER, ambient, past));
        expect(valueFrom(starterWait(STARTER, ambient, past, nextBurstS))).toBe(0);
      }),
    );
  });

  test('is not sent into a burst that no rest allows', () => {
    const hot = [{ cranking: true, seconds: 30 }];
    expect(starterWait(STARTER, 25, hot, 30)).toMatchObject({
      issue: { code: 'noSolution', input: 'wantedS' },
    });
    expect(starterWait(STARTER, 45, [], 30)).toMatchObject({ issue: { code: 'noSolution' } });
    expect(valueFrom(starterWait(STARTER, 25, [], 30))).toBe(0);
  });

  test('is never worked out from a profile or a history that is not whole', () => {
    expect(starterState({ ...STARTER, limitC: 60, ratedAmbientC: 60 }, 20, [])).toMatchObject({
      issue: { code: 'contradictory', input: 'limitC' },
    });
    expect(starterState(STARTER, 20, [{ cranking: true }])).toMatchObject({
      issue: { code: 'missing', input: 'history[0].seconds' },
    });
    const starter = fc.record({
      limitC: anyReading,
      longestBurstS: anyReading,
      ratedAmbientC: anyReading,
      timeConstantS: anyReading,
    });
    const past = fc.array(fc.record({ cranking: fc.boolean(), seconds: anyReading }), { maxLength: 3 });
    fc.assert(
      fc.property(
        fc.oneof(starter, oneSpoilt(STARTER), fc.constant(STARTER)),
        anyReading,
        past,
        anyReading,
        (s, a, p, w) => {
          expectSound(starterState(s, a, p));
          expectSound(starterWait(s, a, p, w));
        },
      ),
    );
  });
});
