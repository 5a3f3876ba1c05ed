import { describe, expect, it } from 'vitest';
import { gridStep, slopes, speeds } from '../../../src/engineering/engine-sound/grid.ts';
import { type Belief, Track, type TrackSettings } from '../../../src/engineering/engine-sound/track.ts';

const STEP_S = 0.14;
const indexOf = (rpm: number) => speeds.findIndex(each => each >= rpm);
const countOf = (fromRpm: number, toRpm: number) =>
  speeds.filter(rpm => rpm >= fromRpm && rpm <= toRpm).length;
/** The same said of each speed, with each rise. */
const alike = (says: number) => slopes.map(() => new Float64Array(speeds.length).fill(says));
const nothing = alike(0);

/** This said of some speeds, with all rises or with one of them, and less of all others. */
function peaks(rpms: readonly number[], slope: number | null = null, says = 4, others = -2) {
  const said = alike(others);
  said.forEach((of, s) => {
    if (slope === null || slopes[s] === slope) for (const rpm of rpms) of[indexOf(rpm)] = says;
  });
  return said;
}
const isCertain = (rpms: readonly number[], slope = 0) => peaks(rpms, slope, 50, -50);

/** A track on which nothing goes by itself, and what is said counts in full, but for what is given. */
const trackOf = (more: Partial<TrackSettings> = {}) =>
  new Track(STEP_S, {
    begins: 0.5,
    ends: 0,
    jumps: 0,
    fires: 0,
    turnsOtherwise: 0,
    keepsSlope: 0.75,
    mostFor: 50,
    mostAgainst: 50,
    ...more,
  });
/** What is believed after a moment in which it was certain, and one in which nothing was said. */
function believedAfter(rpm: number, more: Partial<TrackSettings> = {}, slope = 0): Belief {
  const track = trackOf(more);
  track.next(isCertain([rpm], slope));
  const belief = track.next(nothing);
  if (!belief) throw new Error('Nothing is believed.');
  return belief;
}

/** Of a triangle of so many to either side of its middle: the share that lies from one place to another. */
function triangle(reach: number, from: number, to: number): number {
  let sum = 0;
  for (let d = Math.max(-reach, from); d <= Math.min(reach, to); d++) sum += reach + 1 - Math.abs(d);
  return sum / (reach + 1) ** 2;
}

describe('an engine that comes from standing', () => {
  it('is in a look with a share of 0.00003, at an idle or on its way there, up to 1,100 rpm', () => {
    // A starter turns at 125 rpm or more, and at less a fifth as often: common practice, no published source.
    const fast = countOf(330, 1_100) / (countOf(125, 1_100) + 0.2 * countOf(90, 124.99));
    expect(new Track(STEP_S).next(nothing)?.running).toBeCloseTo(0.00003 * fast, 9);
    expect(trackOf().next(nothing)?.running).toBeCloseTo(0.5 * fast, 9);
  });

  it('is nowhere else: not above 1,100 rpm, whatever is said', () => {
    expect(trackOf().next(isCertain([1_090]))?.rpm).toBeCloseTo(1_090, -1);
    expect(trackOf().next(isCertain([1_110]))?.rpm).toBeLessThan(1_100);
  });

  it('is not believed in where none ever begins', () => {
    expect(trackOf({ begins: 0 }).next(alike(3))).toBeNull();
  });

  it('is likely, to 0.8, after eight looks that say all that one may, and after nine where it turns slowly', () => {
    const looks = (rpm: number) => {
      const track = new Track(STEP_S);
      for (let look = 1; look < 30; look++)
        if ((track.next(peaks([rpm]))?.confidence ?? 0) >= 0.8) return look;
      return null;
    };
    expect([700, 150, 110].map(looks)).toEqual([8, 9, 9]);
  });
});

describe('what a look says', () => {
  const running = (says: number) =>
    trackOf({ mostFor: 4, mostAgainst: 2 }).next(alike(says))?.running ?? Number.NaN;
  const fast = 2 * (trackOf().next(nothing)?.running ?? Number.NaN);

  it('makes an engine as many times likelier as is said', () => {
    for (const says of [-1, 0, 1, 3.9])
      expect(running(says)).toBeCloseTo((fast * Math.exp(says)) / (1 + Math.exp(says)), 9);
  });

  it('counts no more than 4 for it and 2 against it', () => {
    expect(running(100)).toBeCloseTo((fast * Math.exp(4)) / (1 + Math.exp(4)), 9);
    expect(running(-100)).toBeCloseTo((fast * Math.exp(-2)) / (1 + Math.exp(-2)), 9);
  });

  it('leaves other speeds as far behind the best as they are, up to that', () => {
    const believed = (says: number, others: number) => {
      const track = new Track(STEP_S);
      for (let look = 0; look < 9; look++) track.next(peaks([700], null, says, others));
      return track.next(peaks([700], null, says, others));
    };
    expect(believed(100, 99)).toEqual(believed(4, 3));
    expect(believed(100, 0)).toEqual(believed(4, -2));
    expect(believed(4, -30)).toEqual(believed(4, -2));
    expect(believed(4, -1)?.confidence).toBeLessThan(believed(4, -2)?.confidence ?? 0);
  });
});

describe('a speed that is believed', () => {
  it('is the middle of what lies within 2.5 % of the likeliest, or 6 % of a slow one, and so sure', () => {
    const two = (index: number, apart: number) =>
      trackOf().next(isCertain([speeds[index] ?? 0, speeds[index + apart] ?? 0]));
    for (const [rpm, near] of [
      [700, 3],
      [150, 7],
    ] as const) {
      const index = indexOf(rpm);
      expect(two(index, near)?.confidence).toBeCloseTo(1, 9);
      expect(two(index, near)?.rpm).toBeCloseTo((speeds[index] ?? 0) * Math.exp((near / 2) * gridStep), 6);
      expect(two(index, near + 1)?.confidence).toBeCloseTo(0.5, 9);
      expect(two(index, near + 1)?.rpm).toBeCloseTo(speeds[index] ?? 0, 6);
    }
  });

  it('is slow below 330 rpm, and runs by itself from there', () => {
    const from = indexOf(330);
    for (const [index, runs] of [
      [from - 1, 0],
      [from, 1],
    ] as const) {
      const belief = trackOf().next(isCertain([speeds[index] ?? 0]));
      expect(belief?.running).toBeCloseTo(runs, 9);
      expect(belief?.confidence).toBeCloseTo(1, 9);
      expect(belief?.rpm).toBeCloseTo(speeds[index] ?? 0, 6);
    }
    const two = (index: number, apart: number) =>
      trackOf().next(isCertain([speeds[index] ?? 0, speeds[index + apart] ?? 0]))?.confidence;
    expect(two(from - 1, 7)).toBeCloseTo(1, 9);
    expect(two(from, 7)).toBeCloseTo(0.5, 9);
  });

  it('may be the slowest, with nothing below it', () => {
    const belief = trackOf().next(isCertain([90]));
    expect(belief?.rpm).toBeCloseTo(90, 9);
    expect(belief?.confidence).toBeCloseTo(1, 9);
  });

  it('rises as its likeliest rises do, and is never surer than sure', () => {
    for (const slope of slopes) expect(trackOf().next(isCertain([700], slope))?.slope).toBeCloseTo(slope, 9);
    const track = trackOf();
    for (let look = 0; look < 50; look++) {
      const belief = track.next(isCertain([700, 710]));
      expect(belief?.confidence).toBeLessThanOrEqual(1);
      expect(belief?.running).toBeLessThanOrEqual(1);
    }
  });
});

describe('from one look to the next a speed', () => {
  // A step of the grid is 0.8 %: a rise of 0.4 a second goes 7 of them in 0.14 s, one of 1.1 goes 19.
  const index = (belief: Belief) => Math.log(belief.rpm / (speeds[indexOf(700)] ?? 0)) / gridStep;

  it('stays, and spreads to where half a rise would have taken it', () => {
    const belief = believedAfter(700);
    // 0.75 of 0.97 keep their rise, a tenth of 0.97 each begins to rise or to fall by 0.4, and is then within 7 of 7.
    const stays = (0.75 / 0.97) * triangle(4, -3, 3) + 2 * (0.1 / 0.97) * triangle(7, -10, -4);
    expect(belief.confidence).toBeCloseTo(stays, 6);
    expect(index(belief)).toBeCloseTo(0, 6);
    expect(belief.slope).toBeCloseTo(0, 6);
    expect(belief.running).toBeCloseTo(1, 9);
  });

  it('goes on rising, or falling, as it did', () => {
    for (const sign of [1, -1]) {
      const gentle = believedAfter(700, {}, sign * 0.4);
      expect(index(gentle)).toBeCloseTo(sign * 7, 0);
      expect(gentle.confidence).toBeCloseTo(
        (0.75 / 0.97) * triangle(7, -3, 3) + (0.1 / 0.97) * triangle(4, 4, 10),
        6,
      );
      const steep = believedAfter(700, {}, sign * 1.1);
      expect(index(steep)).toBeCloseTo(sign * 19, 1);
      expect(steep.confidence).toBeCloseTo((0.75 / 0.9) * triangle(7, -3, 3), 6);
    }
  });

  it('seldom stops from its steepest rise at once, 3 in 90, and more seldom yet turns round, 1 in 90', () => {
    for (const [slope, share, shift, reach] of [
      [0, 0.03, 0, 4],
      [-0.4, 0.01, -7, 7],
      [-1.1, 0.01, -19, 7],
      [0.4, 0.1, 7, 7],
    ] as const) {
      const track = trackOf();
      track.next(isCertain([700], 1.1));
      const place = speeds[indexOf(700) + shift] ?? 0;
      // Only this one is said to be likelier, by as much as it was less likely: then it is as good as all others.
      const mass = (share / 0.9) * triangle(reach, 0, 0);
      const belief = track.next(peaks([place], slope, Math.log((1 - mass) / mass), 0));
      expect(belief?.rpm).toBeCloseTo(place, -1.5);
      expect(belief?.confidence).toBeGreaterThan(0.499);
      expect(belief?.confidence).toBeLessThan(0.6);
      expect(belief?.slope).toBeCloseTo(slope, 0);
    }
  });

  it('goes nowhere beyond the slowest and the fastest', () => {
    expect(believedAfter(90, {}, -1.1).running).toBeCloseTo(0, 9);
    expect(believedAfter(90, {}, -0.4).running).toBeCloseTo(0, 9);
    const track = trackOf({ jumps: 0.1 });
    track.next(isCertain([700]));
    for (const slope of [0.4, 1.1]) {
      track.next(isCertain([speeds.at(-1) ?? 0], slope));
      const top = track.next(nothing);
      expect(top?.running).toBeCloseTo(1, 9);
      expect(top?.rpm).toBeGreaterThan(3_600);
    }
  });

  it('is lost as often as is set, by nothing said', () => {
    expect(believedAfter(700, { ends: 0.2 }).running).toBeCloseTo(0.8, 9);
    expect(believedAfter(150, { ends: 0.2 }).confidence).toBeCloseTo(0.8 * believedAfter(150).confidence, 6);
  });

  it('of a running engine jumps as often as is set, to any at which one runs', () => {
    const some = countOf(330, 4_000);
    expect(believedAfter(700, { jumps: 0.3 }).running).toBeCloseTo(1, 9);
    expect(believedAfter(700, { jumps: 0.3 }).confidence).toBeCloseTo(
      0.7 * believedAfter(700).confidence + (0.3 * 7) / some,
      3,
    );
    expect(believedAfter(150, { jumps: 0.3 }).confidence).toBeCloseTo(believedAfter(150).confidence, 6);
    // All of it: it may be at each of them alike, of which the first is told, with what lies near above it.
    const all = believedAfter(700, { jumps: 1 });
    expect(all.running).toBeCloseTo(1, 9);
    expect(all.confidence).toBeLessThanOrEqual(7 / some);
    expect(all.slope).toBeCloseTo(0, 6);
  });

  it('of a cranked engine comes up to speed as often as is set, to 330 to 1,100 rpm, rising', () => {
    expect(believedAfter(150, { fires: 0.3 }).running).toBeCloseTo(0.3, 9);
    const all = believedAfter(150, { fires: 1 });
    expect(all.running).toBeCloseTo(1, 9);
    // Steady once, rising by 0.4 one and a half times as often, by 1.1 two and a half times: never falling.
    expect(all.slope).toBeCloseTo((1.5 * 0.4 + 2.5 * 1.1) / 5, 6);
    const up = (rpm: number) => {
      const track = trackOf({ fires: 0.5 });
      track.next(isCertain([150]));
      return track.next(isCertain([rpm], 1.1))?.rpm ?? Number.NaN;
    };
    expect(up(335)).toBeCloseTo(335, -1);
    expect(up(1_090)).toBeCloseTo(1_090, -1);
    expect(up(1_120)).toBeLessThan(1_100);
    expect(believedAfter(700, { fires: 0.3 }).confidence).toBeCloseTo(believedAfter(700).confidence, 6);
  });

  it('of a cranked engine is another after all as often as is set, at which a starter turns', () => {
    expect(believedAfter(150, { turnsOtherwise: 0.4 }).running).toBeCloseTo(0, 9);
    const usual = 1 / (countOf(125, 329.99) + 0.2 * countOf(90, 124.99));
    // Within 7 of the grid to either side of it.
    expect(believedAfter(150, { turnsOtherwise: 0.4 }).confidence).toBeCloseTo(
      0.6 * believedAfter(150).confidence + 0.4 * 15 * usual,
      6,
    );
    // Where all of it has, the share at less than 125 rpm is a fifth of that above.
    const track = trackOf({ turnsOtherwise: 1 });
    track.next(isCertain([300]));
    const slow = track.next(peaks([110], null, Math.log(1 / (0.2 * usual) - 1), 0));
    expect(slow?.rpm).toBeCloseTo(110, -1);
    expect(slow?.confidence).toBeGreaterThan(0.499);
    expect(slow?.confidence).toBeLessThan(0.52);
  });
});

describe('what is usual of an engine', () => {
  const cranked = () => {
    const track = new Track(STEP_S);
    for (let look = 0; look < 12; look++) track.next(peaks([150]));
    return track;
  };
  const idling = () => {
    const track = new Track(STEP_S);
    for (let look = 0; look < 12; look++) track.next(peaks([700]));
    return track;
  };

  it('is that a cranked one fires within a tenth of all looks: heard at another speed twice, it is believed', () => {
    const track = cranked();
    expect(track.next(peaks([500]))?.running).toBeCloseTo(0.28, 2);
    expect(track.next(peaks([500]))?.running).toBeCloseTo(0.8, 1);
    expect(track.next(peaks([500]))?.confidence).toBeGreaterThan(0.9);
  });

  it('is that a starter hardly changes its speed: a few looks more are asked for', () => {
    const track = cranked();
    expect(track.next(peaks([200]))?.confidence).toBeCloseTo(0.71, 2);
    expect(track.next(peaks([200]))?.confidence).toBeCloseTo(0.24, 2);
    track.next(peaks([200]));
    expect(track.next(peaks([200]))?.confidence).toBeCloseTo(0.94, 2);
  });

  it('is that one that runs seldom jumps, and is lost within a hundredth of all looks', () => {
    const jumped = idling();
    for (const sure of [0.67, 0.28, 0.2, 0.7, 0.95])
      expect(jumped.next(peaks([1_500]))?.confidence).toBeCloseTo(sure, 2);
    const lost = idling();
    for (const running of [0.922, 0.585, 0.157, 0.024])
      expect(lost.next(alike(-2))?.running).toBeCloseTo(running, 3);
  });
});

describe('an engine that was heard running', () => {
  /** It stands as soon as nothing more is said for it. */
  const standing = alike(-50);
  const running = (stepS = STEP_S) => {
    const track = new Track(stepS, {
      begins: 0.5,
      ends: 0.5,
      jumps: 0,
      fires: 0,
      turnsOtherwise: 0,
      keepsSlope: 0.75,
      mostFor: 50,
      mostAgainst: 50,
    });
    track.next(isCertain([700]));
    return track;
  };

  it('is no longer new, and is again 30 s later', () => {
    expect(trackOf().isNew).toBe(true);
    const track = running(0.5);
    for (let look = 0; look < 60; look++) {
      expect(track.isNew).toBe(false);
      track.next(standing);
    }
    expect(track.isNew).toBe(true);
  });

  it('may be heard again at any speed at which one runs, and is not cranked, until it is new', () => {
    const again = (rpm: number, looks: number) => {
      const track = running(0.5);
      for (let look = 0; look < looks; look++) track.next(standing);
      return track.next(isCertain([rpm]))?.rpm ?? Number.NaN;
    };
    expect(again(2_000, 10)).toBeCloseTo(2_000, -2);
    expect(again(150, 10)).toBeGreaterThan(325);
    expect(again(2_000, 60)).toBeLessThan(1_150);
    expect(again(150, 60)).toBeCloseTo(150, 0);
  });

  it('is one that is sure, 0.9, and runs by itself: cranking is none', () => {
    const cranked = trackOf();
    cranked.next(isCertain([150]));
    expect(cranked.isNew).toBe(true);
    const doubtful = trackOf();
    doubtful.next(isCertain([500, 700]));
    expect(doubtful.isNew).toBe(true);
    const slowest = trackOf();
    slowest.next(isCertain([speeds[indexOf(330)] ?? 0]));
    expect(slowest.isNew).toBe(false);
  });

  it('is forgotten once it has stopped: it has to be started again', () => {
    const track = running();
    track.forget();
    expect(track.isNew).toBe(true);
    const fresh = trackOf({ ends: 0.5 });
    expect(track.next(nothing)).toEqual(fresh.next(nothing));
    expect(track.next(peaks([150]))).toEqual(fresh.next(peaks([150])));
  });
});
