import fc from 'fast-check';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, test } from 'vitest';
import { anyCurve, curveTowards } from '../../src/engineering/first-order-family.ts';
import { fitFirstOrder } from '../../src/engineering/first-order-fit.ts';
import { gather } from '../../src/engineering/first-order-points.ts';
import type { Reading } from '../../src/engineering/readings.ts';
import { timeLeft, timeToReach } from '../../src/engineering/time-to-reach.ts';
import { noise } from '../helpers/noise.ts';

interface Truth {
  readonly startC: number;
  readonly finalC: number;
  readonly tauS: number;
}

const at = ({ startC, finalC, tauS }: Truth, timeS: number): number =>
  finalC - (finalC - startC) * Math.exp(-timeS / tauS);

const timeOf = ({ startC, finalC, tauS }: Truth, value: number): number =>
  -tauS * Math.log((finalC - value) / (finalC - startC));

const readingsOf = (truth: Truth, count: number, spanS: number, scatter: (i: number) => number): Reading[] =>
  Array.from({ length: count }, (_, i) => {
    const timeS = (spanS * i) / (count - 1);
    return { timeS, value: at(truth, timeS) + scatter(i) };
  });

const fitAny = (readings: readonly Reading[], resolution = 0) =>
  fitFirstOrder(anyCurve(gather(readings)), readings, resolution);

const truths = fc.record({
  startC: fc.integer({ min: -30, max: 40 }),
  finalC: fc.integer({ min: 85, max: 120 }),
  tauS: fc.integer({ min: 120, max: 1200 }),
});

describe('first-order fit', () => {
  test('finds the curve that exact readings came from, whatever it is', () => {
    fc.assert(
      fc.property(
        truths,
        fc.integer({ min: 6, max: 60 }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        (truth, count, spans) => {
          const fit = fitAny(readingsOf(truth, count, spans * truth.tauS, () => 0));
          expect(Math.abs((fit?.tauS ?? 0) / truth.tauS - 1)).toBeLessThan(1e-4);
          expect(Math.abs((fit?.finalValue ?? 0) - truth.finalC)).toBeLessThan(0.01);
          expect(Math.abs((fit?.startValue ?? 0) - truth.startC)).toBeLessThan(0.01);
        },
      ),
    );
  });

  test('averages a long recording without losing the curve', () => {
    const truth = { startC: 10, finalC: 95, tauS: 500 };
    const normal = noise(3);
    const fit = fitAny(readingsOf(truth, 10_000, 900, () => 0.5 * normal()));
    expect(fit?.tauS).toBeGreaterThan(490);
    expect(fit?.tauS).toBeLessThan(510);
    expect(fit?.deviation).toBeGreaterThan(0.48);
    expect(fit?.deviation).toBeLessThan(0.52);
  });

  test('agrees with an independent fitter (ml-levenberg-marquardt) on noisy, uneven readings', () => {
    const truth = { startC: 12, finalC: 92, tauS: 380 };
    const normal = noise(11);
    const uneven = Array.from({ length: 25 }, (_, i) => {
      const timeS = 800 * (i / 24) ** 1.4;
      return { timeS, value: at(truth, timeS) + 0.6 * normal() };
    });
    const ours = fitAny(uneven);
    const theirs = levenbergMarquardt(
      { x: uneven.map(({ timeS }) => timeS), y: uneven.map(({ value }) => value) },
      ([start = 0, final = 0, hundreds = 1]) =>
        t =>
          final - (final - start) * Math.exp(-t / (100 * hundreds)),
      {
        initialValues: [10, 90, 4],
        gradientDifference: 1e-5,
        centralDifference: true,
        maxIterations: 200,
        errorTolerance: 1e-9,
      },
    );
    const [start = 0, final = 0, hundreds = 0] = theirs.parameterValues;
    expect(ours?.startValue).toBeCloseTo(start, 3);
    expect(ours?.finalValue).toBeCloseTo(final, 3);
    expect((ours?.tauS ?? 0) / 100).toBeCloseTo(hundreds, 3);
    expect(ours?.squares).toBeCloseTo(theirs.parameterError, 4);
  });

  test('towards a known final value finds the cooling that exact readings came from', () => {
    const truth = { startC: 95, finalC: 20, tauS: 3000 };
    const readings = readingsOf(truth, 8, 1200, () => 0);
    const fit = fitFirstOrder(curveTowards(gather(readings), 20), readings, 0);
    expect(fit?.tauS).toBeCloseTo(3000, 1);
    expect(fit?.startValue).toBeCloseTo(95, 4);
  });

  test('is not claimed from five readings, nor from readings of one moment', () => {
    const truth = { startC: 10, finalC: 90, tauS: 300 };
    expect(fitAny(readingsOf(truth, 5, 300, () => 0))).toBeUndefined();
    expect(fitAny(Array.from({ length: 9 }, () => ({ timeS: 5, value: 20 })))).toBeUndefined();
  });
});

describe('time to reach a value', () => {
  test('of exact readings is the closed form, and its interval is narrow and holds it', () => {
    fc.assert(
      fc.property(truths, truth => {
        const readings = readingsOf(truth, 20, 1.5 * truth.tauS, () => 0);
        const fit = fitAny(readings, 0.01);
        const reached = fit && timeToReach(fit, 80);
        const exact = timeOf(truth, 80);
        expect(Math.abs((reached?.bestS ?? 0) / exact - 1)).toBeLessThan(1e-3);
        expect(reached?.lowS).toBeLessThanOrEqual(exact + 1e-3 * exact);
        expect(reached?.highS).toBeGreaterThanOrEqual(exact - 1e-3 * exact);
        const narrowS = 0.005 * truth.tauS;
        expect(exact - (reached?.lowS ?? 0)).toBeLessThan(narrowS);
        expect((reached?.highS ?? Number.POSITIVE_INFINITY) - exact).toBeLessThan(narrowS);
      }),
      { numRuns: 40 },
    );
  });

  test('its 95 % interval holds the truth in about 95 of 100 noisy warm-ups', () => {
    const truth = { startC: 10, finalC: 95, tauS: 500 };
    const exact = timeOf(truth, 82);
    const normal = noise(2024);
    let held = 0;
    let open = 0;
    const trials = 300;
    for (let trial = 0; trial < trials; trial += 1) {
      const fit = fitAny(readingsOf(truth, 20, 500, () => 0.5 * normal()));
      const reached = fit && timeToReach(fit, 82);
      if (reached && reached.lowS <= exact && (reached.highS ?? Number.POSITIVE_INFINITY) >= exact) held += 1;
      if (reached?.highS === undefined) open += 1;
    }
    expect(held / trials).toBeGreaterThan(0.91);
    expect(held / trials).toBeLessThan(0.99);
    expect(open / trials).toBeLessThan(0.1);
  });

  test('has no upper end while never reaching it is as plausible', () => {
    const fit = fitAny(readingsOf({ startC: 10, finalC: 95, tauS: 400 }, 9, 240, i => (i % 2 ? 0.8 : -0.8)));
    const reached = fit && timeToReach(fit, 84);
    expect(reached?.bestS).toBeGreaterThan(240);
    expect(reached?.highS).toBeUndefined();
  });

  test('is looked for back to 20 spans before the readings, where it may have been at any time before', () => {
    // Hardly any rise among the scatter: it may be none.
    const readings = Array.from({ length: 12 }, (_, i) => ({
      timeS: 1000 + 20 * i,
      value: 50 + 0.1 * i + (i % 2 ? 0.8 : -0.8),
    }));
    const fit = fitAny(readings);
    expect(fit && timeToReach(fit, 49)).toMatchObject({ lowS: 1000 - 20 * 220 });
  });

  test('is not given for a value the curve never reaches', () => {
    const fit = fitAny(readingsOf({ startC: 10, finalC: 70, tauS: 200 }, 12, 800, () => 0));
    expect(fit && timeToReach(fit, 82)).toBeUndefined();
  });

  test('time left counts from now and never falls below nothing', () => {
    expect(timeLeft({ bestS: 100, lowS: 80, highS: 130 }, 90)).toEqual({ bestS: 10, lowS: 0, highS: 40 });
    expect(timeLeft({ bestS: 100, lowS: 80 }, 0)).toEqual({ bestS: 100, lowS: 80 });
  });
});
