import { describe, expect, it } from 'vitest';
import { createKeeping } from '../../../src/session/engine-ear/keeping.ts';
import { createOwnEngine } from '../../../src/session/engine-ear/own-engine.ts';

describe('this engine', () => {
  /** Heard so at these seconds, each beside what people and bus say; and whether it is this one, at a second. */
  const isOwn = (
    heard: readonly (readonly [seconds: number, rpm: number, turns: boolean])[],
    atS = heard.at(-1)?.[0] ?? 0,
  ) => {
    const own = createOwnEngine();
    for (const [s, rpm, turns] of heard) own.heard(rpm, s * 1000, turns);
    return own.isHeard(atS * 1000);
  };

  it('is the one that is heard while this one is known to turn, and no other', () => {
    expect(isOwn([])).toBe(false);
    expect(isOwn([[0, 800, false]])).toBe(false);
    expect(isOwn([[0, 800, true]])).toBe(true);
  });

  it('is not heard any more once nothing was heard for longer than three seconds', () => {
    expect(isOwn([[0, 800, true]], 3)).toBe(true);
    expect(isOwn([[0, 800, true]], 3.001)).toBe(false);
  });

  it('stays this one without a break of three seconds, whatever is said of it meanwhile', () => {
    expect(
      isOwn([
        [0, 800, true],
        [3, 810, false],
        [6, 800, false],
      ]),
    ).toBe(true);
    expect(
      isOwn([
        [0, 800, true],
        [3.001, 800, false],
      ]),
    ).toBe(false);
    // Another that was never this one does not become it.
    expect(
      isOwn([
        [0, 800, false],
        [1, 800, false],
      ]),
    ).toBe(false);
  });

  it('is not another speed all at once: by more than exp(0.15) and exp(1.2) for each second, up or down', () => {
    const to = (factor: number, afterS: number) =>
      isOwn([
        [0, 800, true],
        [afterS, 800 * factor, false],
      ]);
    for (const [afterS, most] of [
      [0, Math.exp(0.15)],
      [0.5, Math.exp(0.75)],
      [1, Math.exp(1.35)],
    ] as const) {
      expect(to(most * 0.999, afterS)).toBe(true);
      expect(to(most * 1.001, afterS)).toBe(false);
      expect(to(1.001 / most, afterS)).toBe(true);
      expect(to(0.999 / most, afterS)).toBe(false);
    }
  });
});

describe('what goes on the record of all speeds that are heard', () => {
  const kept = (heard: readonly (readonly [seconds: number, rpm: number])[]) => {
    const keeping = createKeeping();
    return heard.map(([s, rpm]) => keeping.isDue(rpm, s * 1000));
  };

  it('is the first, and a change by 30 rpm up or down', () => {
    for (const rpm of [830, 770])
      expect(
        kept([
          [0, 800],
          [2, rpm],
        ]),
      ).toEqual([true, true]);
    for (const rpm of [829.9, 770.1])
      expect(
        kept([
          [0, 800],
          [2, rpm],
        ]),
      ).toEqual([true, false]);
  });

  it('is one a second at the most, and measured from the last that was kept', () => {
    expect(
      kept([
        [0, 800],
        [0.999, 900],
        [1, 900],
        [2.5, 915],
        [3, 930],
      ]),
    ).toEqual([true, false, true, false, true]);
  });

  it('is twice a minute what stays', () => {
    expect(
      kept([
        [0, 800],
        [29.999, 800],
        [30, 800],
        [59.999, 800],
        [60, 800],
      ]),
    ).toEqual([true, false, true, false, true]);
  });
});
