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
});
