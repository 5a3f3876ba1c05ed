import { describe, expect, it } from 'vitest';
import { Doing, type Happened } from '../../../src/engineering/engine-sound/doing.ts';

interface Stretch {
  readonly looks: number;
  readonly rpm: number | null;
  readonly db: number;
  readonly running?: number;
}

/** What is told through stretches of looks, 0.14 s apart, with the second in which it was. */
function told(...stretches: readonly Stretch[]): [Happened, number][] {
  const doing = new Doing();
  const all: [Happened, number][] = [];
  let atS = 0;
  for (const { looks, rpm, db, running } of stretches)
    for (let i = 0; i < looks; i++) {
      atS += 0.14;
      const claim = rpm === null ? null : { rpm, confidence: 0.99 };
      const happened = doing.next(atS, claim, running ?? (rpm !== null && rpm > 330 ? 1 : 0), [db, db, db]);
      if (happened) all.push([happened, Math.round(atS * 100) / 100]);
    }
  return all;
}
const what = (...stretches: readonly Stretch[]) => told(...stretches).map(([happened]) => happened);

const standing = { looks: 20, rpm: null, db: -70 };
const cranking = { looks: 30, rpm: 180, db: -45 };
const idling = { looks: 60, rpm: 720, db: -40 };

describe('what an engine is heard to do', () => {
  it('is cranked, fires and stalls', () => {
    expect(what(standing, cranking, idling, { looks: 20, rpm: null, db: -60 })).toEqual([
      'cranking',
      'fired',
      'stalled',
    ]);
  });

  it('has fired while its speed is still climbing and not told', () => {
    expect(what(cranking, { looks: 4, rpm: null, db: -40, running: 0.97 })).toEqual(['cranking', 'fired']);
  });

  it('has fired by the first look that is sure: it climbs for less than a second', () => {
    expect(what(cranking, { looks: 1, rpm: null, db: -40, running: 0.72 })).toEqual(['cranking', 'fired']);
  });

  it('has not fired by looks that are not sure, however many', () => {
    expect(what(cranking, { looks: 3, rpm: null, db: -40, running: 0.65 }, cranking)).toEqual(['cranking']);
  });

  it('runs, and nobody says that it fired, where no cranking was heard', () => {
    expect(what(standing, idling)).toEqual(['running']);
  });

  it('is lost, not stalled, where its speed is gone and the sound is not', () => {
    expect(what(idling, { looks: 40, rpm: null, db: -39 })).toEqual(['running', 'lost']);
  });

  it('has not stalled in noise that is nearly as loud as it was', () => {
    expect(what(idling, { looks: 40, rpm: null, db: -42.9 })).toEqual(['running', 'lost']);
  });

  it('tells a stall within 1.5 s of the last speed', () => {
    const [, [, atS] = ['lost', Number.NaN]] = told(idling, { looks: 20, rpm: null, db: -60 });
    expect(atS - 60 * 0.14).toBeLessThan(1.5);
  });

  it('makes nothing of a speed that is missing for a moment', () => {
    expect(what(idling, { looks: 3, rpm: null, db: -60 }, idling)).toEqual(['running']);
  });
});
