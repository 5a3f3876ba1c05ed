import { describe, expect, it } from 'vitest';
import type { Hunting } from '../../../src/engineering/engine-sound/hunting.ts';
import { RecentIdle } from '../../../src/engineering/engine-sound/recent-idle.ts';

const LOOK_S = 0.14;
const swinging = (s: number) => 700 + 40 * Math.sin((2 * Math.PI * s) / 3);

/** What is told through so many seconds, a look each 0.14 s, of speeds that are as old as they are heard. */
function told(
  idle: RecentIdle,
  fromS: number,
  seconds: number,
  rpmAt: (s: number) => number | null,
  lagS = 0,
): { readonly toldS: number; readonly hunting: Hunting | null }[] {
  return Array.from({ length: Math.round(seconds / LOOK_S) }, (_, i) => {
    const toldS = fromS + i * LOOK_S;
    const rpm = rpmAt(toldS - lagS);
    return { toldS, hunting: idle.next(toldS, rpm === null ? null : { atS: toldS - lagS, rpm }) };
  });
}

describe('the idle of the last seconds', () => {
  it('hunts where its speed swings, with its period', () => {
    expect(told(new RecentIdle(), 50, 20, swinging, 0.3).at(-1)?.hunting?.periodS).toBeCloseTo(3, 0);
    expect(told(new RecentIdle(), 50, 20, () => 700).at(-1)?.hunting).toBeNull();
  });

  it('is looked at every other second: between, it is told what was found', () => {
    const all = told(new RecentIdle(), 0, 20, swinging);
    const changes = all.filter(({ hunting }, i) => i > 0 && hunting !== all[i - 1]?.hunting);
    expect(changes.length).toBeGreaterThan(5);
    changes.slice(1).forEach(({ toldS }, i) => {
      expect(toldS - (changes[i]?.toldS ?? 0)).toBeGreaterThanOrEqual(2 - 1e-9);
      expect(toldS - (changes[i]?.toldS ?? 0)).toBeLessThan(2 + 2 * LOOK_S);
    });
  });

  it('is looked at once two seconds are just over', () => {
    const idle = new RecentIdle();
    for (let i = 0; i < 30; i++) {
      const rpm = 700 + 40 * Math.sin((2 * Math.PI * i) / 14);
      expect(idle.next(1.99, { atS: i / 10, rpm })).toBeNull();
    }
    expect(idle.next(2, null)).not.toBeNull();
  });

  it('is that of a running engine, from 330 rpm on: a starter that turns unevenly hunts not', () => {
    const at = (mean: number) => (s: number) => mean + 0.1 * mean * Math.sin((2 * Math.PI * s) / 3);
    expect(told(new RecentIdle(), 0, 20, at(200)).at(-1)?.hunting).toBeNull();
    const idle = (rpm: number) =>
      Array.from({ length: 60 }, (_, i) => ({ atS: 0.1 * i, rpm: i % 2 === 0 ? rpm : swinging(0.1 * i) }));
    const looked = (rpm: number) => {
      const recent = new RecentIdle();
      for (const each of idle(rpm)) recent.next(0, each);
      return recent.next(6, null);
    };
    // Those that are left out would keep one swing from explaining the rest.
    expect(looked(329.9)).not.toBeNull();
    expect(looked(330)).toBeNull();
  });

  it('is forgotten after 14 s, so that one that has come to rest hunts no more', () => {
    const idle = new RecentIdle();
    told(idle, 0, 10, swinging);
    const after = told(idle, 10, 20, () => 700);
    expect(after[0]?.hunting).not.toBeNull();
    expect(after.filter(({ toldS }) => toldS > 26).every(({ hunting }) => hunting === null)).toBe(true);
  });

  it('is not forgotten sooner: a speed that was heard 14 s before counts', () => {
    const counted = (agoS: number) => {
      const idle = new RecentIdle();
      for (let i = 0; i < 24; i++)
        idle.next(0, { atS: 100 - agoS + (agoS * i) / 23, rpm: swinging((agoS * i) / 23) });
      return idle.next(100, null) !== null;
    };
    expect(counted(14)).toBe(true);
    expect(counted(14.01)).toBe(false);
  });
});
