import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../../machines/first-start.ts';
import { createBusWatch } from '../../../src/bus/watch.ts';
import { createPatience } from '../../../src/session/vehicle/patience.ts';
import { createVanishing } from '../../../src/session/vehicle/vanishing.ts';
import type { VehicleLook } from '../../../src/session/vehicle/vehicle.ts';
import { demoSix } from '../../machines/helpers/profiles.ts';
import { sessionAt } from '../../machines/limits/sessions.ts';

const TICK_S = 0.2;

/** A rehearsal sixty times as fast on a busy machine: three seconds of it go by between two looks. */
const LATE_S = 3;

describe('a bus that is looked at late', () => {
  it('is not silent while each look finds something new', () => {
    let nowS = 0;
    const patience = createPatience(() => nowS, TICK_S);
    const watch = createBusWatch(patience.nowS());
    for (let look = 0; look < 100; look += 1) {
      nowS += LATE_S;
      patience.tick();
      expect(watch.check(patience.nowS())).toBeUndefined();
      watch.heard(patience.nowS());
    }
  });

  it('is silent, told once, where nothing comes however often it is looked at', () => {
    let nowS = 0;
    const patience = createPatience(() => nowS, TICK_S);
    const watch = createBusWatch(patience.nowS());
    const told = Array.from({ length: 30 }, () => {
      nowS += LATE_S;
      patience.tick();
      return watch.check(patience.nowS());
    });
    expect(told.filter(notice => notice !== undefined)).toHaveLength(1);
    expect(told.findIndex(notice => notice !== undefined)).toBeLessThan(12);
  });

  it('at its usual pace is silent after two seconds', () => {
    let nowS = 0;
    const patience = createPatience(() => nowS, TICK_S);
    const watch = createBusWatch(patience.nowS());
    while (nowS < 2) {
      expect(watch.check(patience.nowS())).toBeUndefined();
      nowS += TICK_S;
      patience.tick();
    }
    nowS += TICK_S;
    patience.tick();
    expect(watch.check(patience.nowS())?.kind).toBe('silent');
  });
});

describe('a sensor', () => {
  const { moment } = sessionAt(demoSix, 'checks.leaks.item1');
  const look = (rpm: number | null): VehicleLook => ({
    value: quantity => (quantity === 'engineSpeed' ? rpm : null),
    lamps: () => ({}),
    codes: () => null,
    redStop: () => false,
  });

  it('that is only late has not vanished; one that stays away has, once', () => {
    const vanishing = createVanishing(['engineSpeed'], procedureFor(demoSix));
    vanishing.note(look(700), 0);
    expect(vanishing.check(moment, look(null), TICK_S)).toEqual([]);
    vanishing.note(look(700), TICK_S);
    expect(vanishing.check(moment, look(null), 2 * TICK_S)).toEqual([]);
    expect(vanishing.check(moment, look(null), 4 * TICK_S)).toEqual(['engineSpeed']);
    expect(vanishing.check(moment, look(null), 9 * TICK_S)).toEqual([]);
  });
});
