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

/** A look at a second: the speed that is told, the level of each band, and how likely it runs. */
type Look = readonly [atS: number, rpm: number | null, levelsDb: readonly number[], running?: number];
function lookedAt(...looks: readonly Look[]): (Happened | null)[] {
  const doing = new Doing();
  return looks.map(([atS, rpm, levelsDb, running]) =>
    doing.next(atS, rpm === null ? null : { rpm, confidence: 0.99 }, running ?? 0, levelsDb),
  );
}
const loud = [-40, -42, -44];
const lower = (...db: readonly number[]) => loud.map((level, band) => level - (db[band] ?? 0));

describe('the limits by which it is told', () => {
  it('is cranked below 330 rpm, and runs from there', () => {
    expect(lookedAt([10, 329, loud])).toEqual(['cranking']);
    expect(lookedAt([10, 330, loud])).toEqual(['running']);
  });

  it('is cranked anew after more than half a second in which nothing was told', () => {
    expect(lookedAt([10, 150, loud], [10.5, null, loud], [10.6, 150, loud])).toEqual([
      'cranking',
      null,
      null,
    ]);
    expect(lookedAt([10, 150, loud], [10.51, null, loud], [10.6, 150, loud])).toEqual([
      'cranking',
      null,
      'cranking',
    ]);
  });

  it('has fired from a likelihood of 0.7 on', () => {
    expect(lookedAt([10, 150, loud], [10.1, null, loud, 0.69])).toEqual(['cranking', null]);
    expect(lookedAt([10, 150, loud], [10.1, null, loud, 0.7])).toEqual(['cranking', 'fired']);
  });

  it('has fired where it was cranked within 3 s before, and else just runs', () => {
    expect(lookedAt([10, 150, loud], [13, 700, loud])).toEqual(['cranking', 'fired']);
    expect(lookedAt([10, 150, loud], [13.01, 700, loud])).toEqual(['cranking', 'running']);
    expect(lookedAt([10, 150, loud], [13, null, loud, 0.9])).toEqual(['cranking', 'fired']);
    expect(lookedAt([10, 150, loud], [13.01, null, loud, 0.9])).toEqual(['cranking', null]);
  });

  it('is not cranked while it runs, however slowly it is heard to', () => {
    expect(lookedAt([10, 700, loud], [10.1, 300, loud], [10.2, 150, loud])).toEqual(['running', null, null]);
  });

  it('has stalled half a second after its speed, not sooner, once the sound is gone', () => {
    expect(lookedAt([10, 700, loud], [10.49, null, lower(20, 20, 20)])).toEqual(['running', null]);
    expect(lookedAt([10, 700, loud], [10.5, null, lower(20, 20, 20)])).toEqual(['running', 'stalled']);
  });

  it('can be cranked and fire again at once after it has stalled', () => {
    expect(
      lookedAt(
        [9, 150, loud],
        [10, 700, loud],
        [10.5, null, lower(20, 20, 20)],
        [10.6, 150, loud],
        [10.7, 700, loud],
      ),
    ).toEqual(['cranking', 'fired', 'stalled', 'cranking', 'fired']);
  });

  it('is quiet where one band is 7 dB below what it was, or two are 4 dB', () => {
    const silent = (...db: readonly number[]) => lookedAt([10, 700, loud], [10.5, null, lower(...db)])[1];
    expect(silent(7)).toBe('stalled');
    expect(silent(0, 7)).toBe('stalled');
    expect(silent(6.9)).toBeNull();
    expect(silent(0, 4, 4)).toBe('stalled');
    expect(silent(4, 0, 4)).toBe('stalled');
    expect(silent(4, 3.9, 3.9)).toBeNull();
    expect(silent(0, 6.9, 3.9)).toBeNull();
  });

  it('is lost once its speed has been missing for more than 3 s in sound that goes on', () => {
    expect(lookedAt([10, 700, loud], [10.6, null, loud], [13, null, loud], [13.01, null, loud])).toEqual([
      'running',
      null,
      null,
      'lost',
    ]);
    expect(lookedAt([10, 700, loud], [13.01, null, loud], [13.1, 700, loud])).toEqual([
      'running',
      'lost',
      'running',
    ]);
  });

  it('is quiet against the least that it ever ran at, so that coming down to its idle is no stall', () => {
    const looks = (count: number, fromS: number, levelsDb: readonly number[]) =>
      Array.from({ length: count }, (_, i): Look => [fromS + 0.1 * i, 700, levelsDb]);
    const idle = lower(10, 10, 10);
    const raced = [...looks(50, 10, loud), ...looks(50, 15, idle), ...looks(50, 20, loud)];
    expect(lookedAt(...raced, [25.5, null, lower(13.9, 13.9, 10)]).at(-1)).toBeNull();
    expect(lookedAt(...raced, [25.5, null, lower(14.1, 14.1, 10)]).at(-1)).toBe('stalled');
  });

  it('has its level follow by a fifth each look: one that is fainter by 5 dB counts as 1 dB', () => {
    const once = (db: number) => lookedAt([10, 700, loud], [10.1, 700, lower(5)], [10.7, null, lower(db)])[2];
    expect(once(8)).toBe('stalled');
    expect(once(7.9)).toBeNull();
  });

  it('is as loud as when it fired where no speed was told since', () => {
    const fired = (...db: readonly number[]) =>
      lookedAt([10, 150, lower(-9)], [10.1, null, loud, 0.9], [10.6, null, lower(...db)])[2];
    expect(fired(7)).toBe('stalled');
    expect(fired(6.9)).toBeNull();
  });

  it('is held against its own level after it was lost, not against that of before', () => {
    expect(
      lookedAt([10, 700, lower(20)], [13.1, null, lower(20)], [13.2, 700, loud], [13.7, null, lower(7)]),
    ).toEqual(['running', 'lost', 'running', 'stalled']);
  });
});
