import { describe, expect, it } from 'vitest';
import type { Context, Unanswered } from '../../machines/context.ts';
import { announce, leftMs, shiftTimes } from '../../machines/timing.ts';
import type { Look } from '../../machines/toolkit.ts';
import { carriedOut } from './helpers/carried-out.ts';
import { demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';

const timer = { startedMs: 1000, totalMs: 240_000, announced: 0 };
const context = (known: Partial<Context> = {}) => knowing(demoSix, {}, known);
const at = (atMs: number, known: Partial<Context> = { timer }): Look => ({
  context: context(known),
  event: { type: 'clock', by: 'technician', via: 'tool', atMs },
});

describe('a timed stretch', () => {
  const speaks = (look: Look) => announce.guard(look);
  const spoken = (atMs: number, announced: number) =>
    carriedOut(announce.actions, at(atMs, { timer: { ...timer, announced } }));

  it('speaks at half time and ten seconds before its end, at that moment and until it is over', () => {
    expect([120_999, 121_000, 240_999, 241_000].map(ms => speaks(at(ms)))).toEqual([
      false,
      true,
      true,
      false,
    ]);
    const second = { timer: { ...timer, announced: 1 } };
    expect([230_999, 231_000].map(ms => speaks(at(ms, second)))).toEqual([false, true]);
  });

  it('says each once, with the time that is left then', () => {
    const time = (si: number) => ({ time: { unit: 's', si } });
    const half = spoken(121_000, 0);
    expect(half.said).toMatchObject([{ line: 'holdHalf', values: time(120), priority: 'notice' }]);
    expect(half.context.timer).toEqual({ ...timer, announced: 1 });
    const last = spoken(232_000, 1);
    expect(last.said).toMatchObject([{ line: 'holdTenSeconds', values: time(9) }]);
    expect(last.context.timer).toEqual({ ...timer, announced: 2 });
  });

  it('says nothing once all is said, where it is a silent one, and where nothing is timed', () => {
    expect(speaks(at(240_999, { timer: { ...timer, announced: 2 } }))).toBe(false);
    expect(speaks(at(232_000, { timer: { ...timer, announced: null } }))).toBe(false);
    expect(speaks(at(232_000, {}))).toBe(false);
  });
});

describe('on hold', () => {
  const unanswered: Unanswered = { sinceMs: 101_000, told: 0, patience: 'glance' };
  const held = { timer, heldSinceMs: 101_000 };

  it('beside an engine that stands time stands still, and is moved by as long as the hold lasted', () => {
    expect(leftMs(context(held), 151_000)).toBe(140_000);
    expect(shiftTimes(context(held), 50_000)).toEqual({
      timer: { ...timer, startedMs: 51_000 },
      nextLookMs: null,
    });
  });

  it('beside one that runs time goes on, and nothing is moved', () => {
    expect(leftMs(context({ ...held, unanswered }), 151_000)).toBe(90_000);
    expect(shiftTimes(context({ ...held, unanswered, nextLookMs: 7000 }), 50_000)).toEqual({});
  });

  it('is not what people are who only have not answered', () => {
    expect(leftMs(context({ timer, unanswered }), 151_000)).toBe(90_000);
    expect(shiftTimes(context({ timer, unanswered }), 2000)).toEqual({
      timer: { ...timer, startedMs: 3000 },
      nextLookMs: null,
    });
  });
});
