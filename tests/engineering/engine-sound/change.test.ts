import { describe, expect, it } from 'vitest';
import { SoundOfFirstMinute } from '../../../src/engineering/engine-sound/change.ts';
import { bandsHz } from '../../../src/engineering/engine-sound/streams.ts';

const STEP_S = 0.14;
const usual = [-40, -42, -44, -46, -48];
const louder = (band: number, db: number) => usual.map((level, i) => (i === band ? level + db : level));

/** Sounds for so many seconds, from a moment on. */
function sounds(first: SoundOfFirstMinute, fromS: number, seconds: number, rpm: number, levels: number[]) {
  for (let atS = fromS; atS < fromS + seconds; atS += STEP_S) first.next(atS, rpm, levels);
}

describe('the sound of an engine against its own first minute', () => {
  it('has changed where one band is louder than the others have become, or fainter, by how much', () => {
    for (const [band, db] of [
      [3, 9],
      [4, 8],
      [0, -7],
    ] as const) {
      const first = new SoundOfFirstMinute();
      sounds(first, 0, 60, 750, usual);
      sounds(first, 60, 60, 760, louder(band, db));
      const change = first.change();
      expect([change?.fromHz, change?.toHz]).toEqual(bandsHz[band]);
      expect(change?.db).toBeCloseTo(db, 0);
    }
  });

  it('has not, where all of it is louder: somebody has moved the microphone', () => {
    const first = new SoundOfFirstMinute();
    sounds(first, 0, 60, 750, usual);
    sounds(
      first,
      60,
      60,
      750,
      usual.map(level => level + 12),
    );
    expect(first.change()).toBeNull();
  });

  it('is held against speeds that are alike only: a faster engine sounds otherwise', () => {
    const first = new SoundOfFirstMinute();
    sounds(first, 0, 60, 750, usual);
    sounds(first, 60, 60, 1500, louder(3, 20));
    expect(first.change()).toBeNull();
  });

  it('says nothing by a first moment that is too short, nor by one knock', () => {
    const first = new SoundOfFirstMinute();
    sounds(first, 0, 5, 750, usual);
    expect(first.change()).toBeNull();
    sounds(first, 5, 56, 750, usual);
    sounds(first, 61, 0.4, 750, louder(2, 20));
    expect(first.change()).toBeNull();
  });

  it('has, in the band that differs most from the middle one of all', () => {
    const first = new SoundOfFirstMinute();
    sounds(first, 0, 60, 750, usual);
    sounds(first, 60, 60, 750, [-38, -42, -34, -44, -48]);
    expect(first.change()).toEqual({ fromHz: 700, toHz: 1_600, db: expect.closeTo(8, 1) });
    const otherwise = new SoundOfFirstMinute();
    sounds(otherwise, 0, 60, 750, usual);
    // All are fainter, and one is not as much.
    sounds(otherwise, 60, 60, 750, [-50, -52, -47, -56, -58]);
    expect(otherwise.change()).toEqual({ fromHz: 700, toHz: 1_600, db: expect.closeTo(7, 1) });
  });

  it('has from 5 dB on: less is a step in front of the microphone', () => {
    for (const [db, is] of [
      [4.9, false],
      [5.1, true],
      [-4.9, false],
      [-5.1, true],
    ] as const) {
      const first = new SoundOfFirstMinute();
      sounds(first, 0, 60, 750, usual);
      sounds(first, 60, 60, 750, louder(1, db));
      expect(first.change() !== null).toBe(is);
    }
  });

  it('is held against speeds within a tenth of that of the first minute', () => {
    for (const [rpm, is] of [
      [659, true],
      [661, false],
      [541, true],
      [539, false],
    ] as const) {
      const first = new SoundOfFirstMinute();
      sounds(first, 0, 60, 600, usual);
      sounds(first, 60.1, 60, rpm, louder(1, 9));
      expect(first.change() !== null).toBe(is);
    }
  });

  it('takes as its speed the mean of that minute', () => {
    const first = new SoundOfFirstMinute();
    sounds(first, 0, 30, 600, usual);
    sounds(first, 30, 30, 700, usual);
    sounds(first, 60.1, 60, 710, louder(1, 9));
    expect(first.change()).not.toBeNull();
  });

  it('takes as its sound the mean of that minute, and follows by 3 % each look', () => {
    const first = new SoundOfFirstMinute();
    for (let look = 0; look < 60; look++) first.next(look, 750, louder(2, look % 2 === 0 ? 6 : -6));
    // The mean of both is as usual; what is heard now began at the first look of all.
    let now = 6;
    for (let look = 1; look < 60; look++) now += 0.03 * ((look % 2 === 0 ? 6 : -6) - now);
    for (let look = 0; look < 40; look++) {
      first.next(61 + look, 750, louder(2, 12));
      now += 0.03 * (12 - now);
    }
    expect(first.change()?.db).toBeCloseTo(now, 6);
  });

  it('needs 60 looks in 60 s from when it was first heard, its first and its last moment among them', () => {
    const looks = (count: number, lastS: number) => {
      const first = new SoundOfFirstMinute();
      for (let look = 0; look < count - 1; look++) first.next(1_000 + look, 750, usual);
      first.next(1_000 + lastS, 750, usual);
      for (let look = 0; look < 60; look++) first.next(1_061 + look, 750, louder(3, 20));
      return first.change();
    };
    expect(looks(60, 60)?.db).toBeGreaterThan(10);
    expect(looks(59, 60)).toBeNull();
    expect(looks(60, 60.1)).toBeNull();
  });

  it('is not known where nothing was heard', () => {
    expect(new SoundOfFirstMinute().change()).toBeNull();
  });
});
