import { describe, expect, it } from 'vitest';
import {
  Evidence,
  type EvidenceShape,
  type ExpectedLine,
} from '../../../src/engineering/engine-sound/evidence.ts';
import { cycleHz, type Firing, firingHz } from '../../../src/engineering/engine-sound/firing.ts';
import { slopes, speeds, steady } from '../../../src/engineering/engine-sound/grid.ts';

const twin: Firing = { cylinders: 2, strokes: 4 };
const AT = speeds.findIndex(rpm => rpm >= 700);
const RPM = speeds[AT] ?? Number.NaN;
const LENGTH = 256;

const FIRST = { there: 0.9, above: 8 };
const SECOND = { there: 0.6, above: 5 };
const FURTHER = { there: 0.4, above: 4 };
const UNEVEN = { there: 0.2, above: 3 };

/** Looks at one speed, of which the firings lie at this bin. */
function shapeOf(more: Partial<EvidenceShape> = {}, bin = 32, firing = twin): EvidenceShape {
  return {
    length: LENGTH,
    size: LENGTH,
    rateHz: (firingHz(firing, RPM) * LENGTH) / bin,
    bins: 128,
    reach: { share: 1, least: 1_000, most: 1_000 },
    fromRpm: RPM,
    toRpm: speeds[AT + 1] ?? Number.NaN,
    upToHz: Number.POSITIVE_INFINITY,
    harmonics: 3,
    unevenFromHz: Number.POSITIVE_INFINITY,
    slopes: [0],
    waveCounts: 1,
    usable: null,
    firstLeads: false,
    streams: 2,
    expected: [FIRST, SECOND, FURTHER, UNEVEN],
    ...more,
  };
}

interface Heard {
  readonly isNew?: boolean;
  readonly counts?: number;
  readonly firing?: Firing;
}

function said(shape: EvidenceShape, streams: readonly Float64Array[], heard: Heard = {}): number {
  const evidence = new Evidence(heard.firing ?? twin, shape);
  evidence.isNew = heard.isNew ?? false;
  const found = slopes.map(() => new Float64Array(speeds.length).fill(-1_000));
  evidence.weigh(streams, heard.counts ?? 1, found);
  return found[steady]?.[AT] ?? Number.NaN;
}

const silence = new Float64Array(LENGTH);
const tones = (...bins: readonly number[]) =>
  Float64Array.from({ length: LENGTH }, (_, i) =>
    bins.reduce((sum, bin) => sum + Math.sin((2 * Math.PI * bin * (i + 0.37)) / LENGTH), 0),
  );

/**
 * The likelihood of a power with a line that is there so often and then so far above, against that without: exponential
 * distributions with means of 1 + above and of 1 (closed form).
 */
const says = ({ there, above }: ExpectedLine, power: number) =>
  Math.log(1 - there + (there / (1 + above)) * Math.exp((power * above) / (1 + above)));
/** Of a stream that is the same everywhere: e^-0.5772, in steps of a fortieth of its logarithm. */
const FLAT = Math.exp(-0.6);
/** The most: 12, and beyond it the logarithm alone, up to 2,000. */
const LOUD = 12 + Math.log(2_049 / 12);
/** Beside a tone that fills three bins of 127, by all of which it is whitened, and the least that is told apart. */
const BESIDE = Math.exp(-1.85);
const LEAST = Math.exp(-3);

const close = (value: number) => expect.closeTo(value, 3);

describe('what a stretch of sound says for a speed', () => {
  it('is the sum over its lines, of which the first three harmonics may be expected more or less', () => {
    // By hand, of the first line in silence: ln(0.1 + 0.1 * e^(0.5488 * 8 / 9)) = -1.336.
    expect(says(FIRST, FLAT)).toBeCloseTo(-1.336, 3);
    const band = says(FIRST, FLAT) + says(SECOND, FLAT) + says(FURTHER, FLAT);
    // Of the wave itself a high-pass may have taken the first.
    const wave = 2 * says(SECOND, FLAT) + says(FURTHER, FLAT);
    expect(said(shapeOf(), [silence, silence])).toEqual(close(wave + band));
    expect(said(shapeOf({ streams: 3 }), [silence, silence, silence])).toEqual(close(wave + 2 * band));
    expect(said(shapeOf({ waveCounts: 3 }), [silence, silence])).toEqual(close(3 * wave + band));
    expect(said(shapeOf(), [silence, silence], { counts: 0.25 })).toEqual(close((wave + band) / 4));
  });

  it('has as many harmonics as are asked for', () => {
    const further = 2 * says(FURTHER, FLAT);
    const with3 = said(shapeOf({}, 8), [silence, silence]);
    expect(said(shapeOf({ harmonics: 2 }, 8), [silence, silence])).toEqual(close(with3 - further));
    expect(said(shapeOf({ harmonics: 10 }, 8), [silence, silence])).toEqual(close(with3 + 7 * further));
  });

  it('has lines up to a frequency, and the first of them above it, too', () => {
    const all = said(shapeOf(), [silence, silence]);
    const further = 2 * says(FURTHER, FLAT);
    const second = 2 * says(SECOND, FLAT);
    const f0 = cycleHz(twin, RPM);
    expect(said(shapeOf({ upToHz: 4 * f0 }), [silence, silence])).toEqual(close(all - further));
    expect(said(shapeOf({ upToHz: 3.99 * f0 }), [silence, silence])).toEqual(close(all - further - second));
    expect(said(shapeOf({ upToHz: 1 }), [silence, silence])).toEqual(close(all - further - second));
  });

  it('has lines that lie between two bins of the spectrum only', () => {
    const all = said(shapeOf(), [silence, silence]);
    const further = 2 * says(FURTHER, FLAT);
    const second = 2 * says(SECOND, FLAT);
    expect(said(shapeOf({ bins: 66 }), [silence, silence])).toEqual(close(all - further));
    expect(said(shapeOf({ bins: 65 }), [silence, silence])).toEqual(close(all - further - second));
  });

  it('counts a loud line by no more than twelve times the noise, and beyond by the logarithm', () => {
    const lone = shapeOf({ harmonics: 1 });
    expect(said(lone, [silence, tones(32)])).toEqual(close(says(FIRST, LOUD) + says(SECOND, FLAT)));
    expect(said(lone, [tones(32), silence])).toEqual(close(says(SECOND, LOUD) + says(FIRST, FLAT)));
  });

  it('counts what lies beside tones as little, down to a twentieth of the noise', () => {
    const lone = shapeOf({ harmonics: 1 });
    expect(said(lone, [silence, tones(60)])).toEqual(close(says(FIRST, BESIDE) + says(SECOND, FLAT)));
    expect(said(lone, [silence, tones(60, 90)])).toEqual(close(says(FIRST, LEAST) + says(SECOND, FLAT)));
  });

  it('takes a line between two bins by its share of each', () => {
    const lone = shapeOf({ harmonics: 1 }, 32.25);
    expect(said(lone, [silence, tones(34)])).toEqual(
      close(0.75 * says(FIRST, BESIDE) + 0.25 * says(FIRST, LOUD) + says(SECOND, FLAT)),
    );
  });

  it('is said for the speeds of its range, the first of them among these and the end not, and for its own rises', () => {
    const evidence = new Evidence(twin, shapeOf({ slopes: [0, 0.4] }));
    expect([evidence.from, evidence.to, evidence.length]).toEqual([AT, AT + 1, LENGTH]);
    const found = slopes.map(() => new Float64Array(speeds.length).fill(7));
    evidence.weigh([silence, silence], 1, found);
    slopes.forEach((slope, s) => {
      expect(found[s]?.[AT] !== 7).toBe(slope === 0 || slope === 0.4);
      expect(found[s]?.every((each, i) => i === AT || each === 7)).toBe(true);
    });
    const all = new Evidence(twin, shapeOf({ fromRpm: 0, toRpm: Number.POSITIVE_INFINITY }));
    expect([all.from, all.to]).toEqual([0, speeds.length]);
  });

  it('is most at the speed whose lines are there', () => {
    const wide = shapeOf({ fromRpm: 400, toRpm: 1_400 }, 24);
    const evidence = new Evidence(twin, wide);
    const found = slopes.map(() => new Float64Array(speeds.length).fill(-1_000));
    evidence.weigh([tones(24, 48, 72), tones(24, 48, 72)], 1, found);
    const best = found[steady]?.indexOf(Math.max(...(found[steady] ?? []))) ?? 0;
    expect((speeds[best] ?? 0) / RPM).toBeGreaterThan(0.95);
    expect((speeds[best] ?? 0) / RPM).toBeLessThan(1.05);
  });
});

describe('what one tone says for an engine', () => {
  it('is nothing where an engine is new: a fan has a tone, too', () => {
    expect(said(shapeOf(), [silence, tones(32)], { isNew: true })).toBe(0);
    expect(said(shapeOf(), [silence, tones(32)])).toBeGreaterThan(5);
  });

  it('is never more, where an engine is new, than all of it is at twice what the other lines say', () => {
    const second = says(SECOND, LOUD) + says(SECOND, FLAT);
    const first = says(FIRST, LOUD) + says(SECOND, FLAT);
    const further = says(FURTHER, LEAST) + says(FURTHER, FLAT);
    expect(first).toBeGreaterThan(second);
    const two = tones(32, 64);
    expect(said(shapeOf(), [silence, two])).toEqual(close(first + second + further));
    expect(said(shapeOf(), [silence, two], { isNew: true })).toEqual(close(2 * (second + further)));
  });

  it('is all of it, where cylinders that fire unevenly are heard besides', () => {
    const uneven = shapeOf({ unevenFromHz: 0 });
    const alone = said(shapeOf(), [silence, tones(32)]);
    expect(said(uneven, [silence, tones(16, 32, 48)], { isNew: true })).toBeGreaterThan(alone);
  });
});

describe('what cylinders that differ say', () => {
  it('is looked for in the odd orders up to three times as many as there are cylinders', () => {
    const f0 = cycleHz(twin, RPM);
    const without = said(shapeOf(), [silence, silence]);
    const lines = 3 * 2 * says(UNEVEN, FLAT);
    expect(said(shapeOf({ unevenFromHz: f0 }), [silence, silence])).toEqual(close(without + lines));
    expect(said(shapeOf({ unevenFromHz: 1.001 * f0 }), [silence, silence])).toEqual(close(without));
    // A twin that fires at 0 and 180 of 720 degrees is strong in 1, 3, 4 and 5, and not in 2 and 6.
    const firing = { ...twin, unevenDeg: [0, 180] };
    const close2 = shapeOf({ unevenFromHz: 0 });
    const apart = shapeOf();
    expect(
      said(close2, [silence, silence], { firing }) - said(apart, [silence, silence], { firing }),
    ).toEqual(close(2 * 2 * says(UNEVEN, FLAT)));
  });

  it('is never more than what they say together: else any slower engine would do', () => {
    const shape = shapeOf({ unevenFromHz: 0 });
    const odd = tones(16, 48, 80);
    const strong = said(shapeOf(), [silence, odd]);
    expect(strong).toBeLessThan(0);
    for (const isNew of [true, false]) expect(said(shape, [silence, odd], { isNew })).toEqual(close(strong));
    const both = tones(16, 32, 48, 80);
    const together = said(shapeOf(), [silence, both]);
    expect(together).toBeGreaterThan(0);
    expect(said(shape, [silence, both])).toEqual(close(2 * together));
    expect(said(shape, [silence, both], { isNew: true })).toEqual(close(2 * together));
  });

  it('is added where it is less than that, also where it speaks against', () => {
    const shape = shapeOf({ unevenFromHz: 0 });
    const three = tones(32, 64, 96);
    const one = said(shape, [silence, three]) - said(shapeOf(), [silence, three]);
    expect(one).toEqual(close(3 * (says(UNEVEN, LEAST) + says(UNEVEN, FLAT))));
  });
});

describe('what a turned engine says, of which the first line is the loudest', () => {
  const leading = shapeOf({ firstLeads: true });
  const first = says(FIRST, LOUD) + says(SECOND, FLAT);

  it('is at most twice what its first line says', () => {
    expect(said(leading, [silence, tones(32, 64, 96)])).toEqual(close(2 * first));
    const some = said(shapeOf(), [silence, tones(32)]);
    expect(some).toBeLessThan(2 * first);
    for (const isNew of [true, false])
      expect(said(leading, [silence, tones(32)], { isNew })).toEqual(close(some));
  });

  it('is against it where the first line is, however loud the others are', () => {
    expect(said(leading, [silence, tones(64, 96)])).toEqual(close(says(FIRST, LEAST) + says(SECOND, FLAT)));
  });
});

describe('what streams say of which each may be drowned', () => {
  const usable = { share: 0.6, most: 4 };
  const shape = shapeOf({ usable });
  const drowned = (sum: number) => Math.log(0.4 + 0.6 * Math.exp(sum));
  const wave = 2 * says(SECOND, FLAT) + says(FURTHER, FLAT);
  const band = says(FIRST, FLAT) + says(SECOND, FLAT) + says(FURTHER, FLAT);

  it('is at worst that each of them tells nothing', () => {
    expect(said(shape, [silence, silence])).toEqual(close(drowned(wave) + drowned(band)));
    expect(said(shape, [silence, silence], { counts: 0.5 })).toEqual(
      close((drowned(wave) + drowned(band)) / 2),
    );
  });

  it('is at best four for each, and of what goes beyond 15 %', () => {
    const loud = says(FIRST, LOUD) + says(SECOND, BESIDE) + says(FURTHER, BESIDE);
    expect(loud).toBeGreaterThan(4);
    expect(said(shape, [silence, tones(32)])).toEqual(close(drowned(wave) + drowned(4 + 0.15 * (loud - 4))));
  });
});
