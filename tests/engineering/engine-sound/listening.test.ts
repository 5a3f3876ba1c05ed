import { describe, expect, it } from 'vitest';
import { uniform } from '../../../audio-fixtures/random.ts';
import type { Firing } from '../../../src/engineering/engine-sound/firing.ts';
import { slopes, speeds, steady } from '../../../src/engineering/engine-sound/grid.ts';
import { Listening } from '../../../src/engineering/engine-sound/listening.ts';
import { soundRateHz } from '../../../src/engineering/engine-sound/streams.ts';

const four: Firing = { cylinders: 4, strokes: 4 };

interface Look {
  readonly atS: number;
  readonly said: readonly (readonly number[])[];
  readonly levelsDb: readonly number[];
}

/** Every look at a sound, given in blocks that end at these samples. */
function looksAt(samples: Float32Array, ends: readonly number[] = [], isNew: boolean | null = null): Look[] {
  const listening = new Listening(four);
  if (isNew !== null) listening.isNew = isNew;
  const all: Look[] = [];
  let from = 0;
  for (const end of [...ends, samples.length]) {
    listening.push(samples.subarray(from, end), ({ atS, said, levelsDb }) =>
      all.push({ atS, said: said.map(of => [...of]), levelsDb: [...levelsDb] }),
    );
    from = end;
  }
  return all;
}
const sounding = (seconds: number, at: (s: number) => number) =>
  Float32Array.from({ length: Math.round(seconds * soundRateHz) }, (_, i) => at(i / soundRateHz));
const tone = (hz: number, amplitude: number) => (s: number) => amplitude * Math.sin(2 * Math.PI * hz * s);
function noise(seed: number, amplitude: number) {
  const random = uniform(seed);
  return () => amplitude * (random() + random() - 1);
}
const indexOf = (rpm: number) => speeds.findIndex(each => each >= rpm);
const saysOf = (look: Look | undefined, rpm: number) => look?.said[steady]?.[indexOf(rpm)] ?? Number.NaN;
/** Said of a speed that is not looked for. */
const NOTHING = -1_000;

describe('how old a speed is when it is told', () => {
  it('is half of 0.64 s where an engine runs, from 330 rpm', () => {
    const { lagS } = new Listening(four);
    for (const rpm of [330, 700, 3_000]) expect(lagS(rpm)).toBeCloseTo(0.32, 9);
  });

  it('is half of twelve compressions at 150 rpm where it is cranked, and at least of 1 s, at most of 1.86', () => {
    const lagS = (cylinders: number) => new Listening({ cylinders, strokes: 4 }).lagS(329);
    // Six cylinders compress 7.5 times a second: 1.6 s. Eight: 1.2 s. The rate is 125 Hz, of which whole samples are taken.
    expect(lagS(6)).toBeCloseTo(0.8, 9);
    expect(lagS(8)).toBeCloseTo(0.6, 9);
    expect(lagS(12)).toBeCloseTo(0.5, 9);
    expect(lagS(4)).toBeCloseTo(233 / 125 / 2, 9);
  });
});

describe('a look at the sound', () => {
  it('is taken every 0.14 s of it', () => {
    const looks = looksAt(sounding(0.3, noise(1, 0.1)));
    expect(looks.map(({ atS }) => atS)).toEqual([0.14, 0.28]);
    expect(looksAt(sounding(0.1399, noise(1, 0.1)))).toEqual([]);
  });

  it('is the same, however the sound comes in', () => {
    const sound = sounding(0.3, noise(2, 0.1));
    const whole = looksAt(sound);
    // A look is taken at 2,240 samples: what came before it is counted, whatever came with it.
    expect(looksAt(sound, [2_100])).toEqual(whole);
    expect(looksAt(sound, [77, 200, 2_239, 2_300, 4_400])).toEqual(whole);
  });

  it('says something of each speed where there is sound, of a slow one only that it is steady', () => {
    const [look] = looksAt(sounding(0.14, noise(3, 0.1)));
    look?.said.forEach((of, s) => {
      of.forEach((says, i) => {
        const isLookedFor = (speeds[i] ?? 0) >= 330 || slopes[s] === 0;
        expect(says === NOTHING).toBe(!isLookedFor);
      });
    });
  });

  it('says nothing where there is none: where all bands are below -92 dB', () => {
    const [silent] = looksAt(new Float32Array(0.14 * soundRateHz));
    expect(silent?.atS).toBe(0.14);
    expect(silent?.said.every(of => of.every(says => says === NOTHING))).toBe(true);
    expect(silent?.levelsDb).toEqual([-120, -120, -120, -120, -120]);
    // A whistle in one band, and less than that in the others.
    const [whistling] = looksAt(sounding(0.14, tone(5_000, 1e-4)));
    expect(whistling?.levelsDb.at(0)).toBeLessThan(-92);
    expect(whistling?.levelsDb.at(-1)).toBeGreaterThan(-92);
    expect(saysOf(whistling, 700)).not.toBe(NOTHING);
  });

  it('has the level of each band in it', () => {
    const [look] = looksAt(sounding(0.14, tone(1_100, 0.1)));
    // A tenth of full scale is -20 dB, and its power half of that: -23 dB, less what two corners so near take.
    expect(look?.levelsDb[2]).toBeGreaterThan(-25);
    expect(look?.levelsDb[2]).toBeLessThan(-22.9);
  });
});

describe('what is said of an engine', () => {
  /** Blows of noise, so many in a second. */
  const blows = (hz: number, seed: number) => {
    const hiss = noise(seed, 0.3);
    return (s: number) => hiss() * (0.05 + Math.exp(-12 * ((s * hz) % 1)));
  };

  it('is most at its speed where it idles: four cylinders at 750 rpm fire 25 times a second', () => {
    const look = looksAt(sounding(0.84, blows(25, 4))).at(-1);
    const fast = (look?.said[steady] ?? []).map((says, i) => ((speeds[i] ?? 0) < 330 ? NOTHING : says));
    expect(Math.abs((speeds[fast.indexOf(Math.max(...fast))] ?? 0) / 750 - 1)).toBeLessThan(0.02);
    expect(saysOf(look, 750)).toBeGreaterThan(3);
  });

  it('is most at its speed where a starter turns it: at 180 rpm they compress 6 times a second', () => {
    const look = looksAt(sounding(2.1, blows(6, 5))).at(-1);
    const slow = (look?.said[steady] ?? []).map((says, i) => ((speeds[i] ?? 0) >= 330 ? NOTHING : says));
    expect(Math.abs((speeds[slow.indexOf(Math.max(...slow))] ?? 0) / 180 - 1)).toBeLessThan(0.04);
    expect(saysOf(look, 180)).toBeGreaterThan(3);
  });

  it('is heard in the wave itself, too, where no loudness beats: a hum of 8 Hz under noise is 240 rpm', () => {
    const hiss = noise(6, 0.1);
    const look = looksAt(
      sounding(2.1, s => hiss() + tone(8, 0.02)(s) + tone(16, 0.01)(s) + tone(24, 0.005)(s)),
    ).at(-1);
    expect(saysOf(look, 240)).toBeGreaterThan(1);
    for (const rpm of [170, 190, 210, 280, 310]) expect(saysOf(look, rpm)).toBeLessThan(-2);
  });

  it('is less of a lone tone where an engine is new than of one that was heard before, and new is what it is at first', () => {
    const hiss = noise(7, 0.05);
    const whine = sounding(0.7, s => tone(50, 0.02)(s) + hiss());
    const [first, fresh, known] = [null, true, false].map(isNew =>
      saysOf(looksAt(whine, [], isNew).at(-1), 1_500),
    );
    expect(first).toBe(fresh);
    expect(known).toBeGreaterThan((fresh ?? Number.NaN) + 0.1);
  });
});
