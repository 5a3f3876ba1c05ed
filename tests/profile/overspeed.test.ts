import { describe, expect, it } from 'vitest';
import { governed } from '../../machines/limits/engine.ts';
import { stopsFromRpm } from '../../src/profile/schema.ts';
import { tooFastRpm } from '../../src/session/engine-ear/join-engine-ear.ts';
import { changed, demoFour, demoGenset, demoSix } from '../machines/helpers/profiles.ts';
import { knowing } from '../machines/limits/known.ts';

/** demo-six has a bus, demo-four has none. */
const named = (overspeedRpm: number | undefined, byBus: number | null) => {
  const own = overspeedRpm === undefined ? {} : { overspeedRpm };
  return byBus === null || !demoSix.bus
    ? changed(demoFour, own)
    : changed(demoSix, { ...own, bus: { ...demoSix.bus, overspeedRpm: byBus } });
};

describe('the speed at which an engine is stopped', () => {
  it.each([
    [undefined, null, undefined],
    [undefined, 3000, 3000],
    [2900, null, 2900],
    [2900, 3000, 2900],
    [3100, 3000, 3000],
  ])('is the lowest that the profile names: %s, and for the bus %s', (own, byBus, expected) => {
    expect(stopsFromRpm(named(own, byBus))).toBe(expected);
  });

  it('is what the microphone calls out, and what a spoken speed is held against', () => {
    expect(tooFastRpm(named(2900, 3000))).toBe(2900);
    const limit = stopsFromRpm(demoGenset) ?? Number.NaN;
    const judged = [limit, limit + 1].map(rpm => governed(knowing(demoGenset, {}), rpm));
    expect(judged.map(each => each.ok && each.value.met)).toEqual([true, false]);
  });

  it('is a little above everything that is asked for, to the microphone, where none is named', () => {
    const asked = Math.max(demoFour.idle.cold.maxRpm, ...demoFour.sweeps.map(({ rpm }) => rpm));
    expect(stopsFromRpm(demoFour)).toBeUndefined();
    expect(tooFastRpm(demoFour)).toBeCloseTo(1.15 * asked, 6);
  });
});
