import { describe, expect, it } from 'vitest';
import { LevelMeter } from '../../../src/engineering/engine-sound/levels.ts';
import { bandCount } from '../../../src/engineering/engine-sound/streams.ts';

const MS_OF_A_FRAME = 50;
const alike = (power: number) => new Float64Array(bandCount).fill(power);

/** The level of each band after so many frames of these powers. */
function levelsAfter(...powers: readonly number[]): readonly number[] {
  const meter = new LevelMeter();
  for (const power of powers) for (let ms = 0; ms < MS_OF_A_FRAME; ms++) meter.push(alike(power));
  return meter.quietDb();
}
const levels = (db: number) => Array.from({ length: bandCount }, () => expect.closeTo(db, 6));

describe('how loud a band is where it is quiet', () => {
  it('is ten times the decimal logarithm of its power: a hundredth of full scale is -20 dB, all of it 0 dB', () => {
    expect(levelsAfter(0.01)).toEqual(levels(-20));
    expect(levelsAfter(1)).toEqual(levels(0));
  });

  it('is told of each band by itself', () => {
    const meter = new LevelMeter();
    for (let ms = 0; ms < MS_OF_A_FRAME; ms++) meter.push(Float64Array.of(1, 0.1, 0.01, 1e-3, 1e-4));
    expect(meter.quietDb()).toEqual([0, -10, -20, -30, -40].map(db => expect.closeTo(db, 6)));
  });

  it('is -120 dB where there is nothing, also before a frame of 50 ms is full', () => {
    const meter = new LevelMeter();
    expect(meter.quietDb()).toEqual(levels(-120));
    for (let ms = 0; ms < MS_OF_A_FRAME - 1; ms++) meter.push(alike(0.1));
    expect(meter.quietDb()).toEqual(levels(-120));
    meter.push(alike(0.1));
    expect(meter.quietDb()).toEqual(levels(-10));
    expect(levelsAfter(0)).toEqual(levels(-120));
  });

  it('is the mean power of a frame, not its peak', () => {
    const meter = new LevelMeter();
    for (let ms = 0; ms < MS_OF_A_FRAME; ms++) meter.push(alike(ms === 10 ? 5 : 0));
    expect(meter.quietDb()).toEqual(levels(-10));
  });

  it('is that of the fifth quietest of the last 16 frames, in whatever order they came', () => {
    const powers = [7, 3, 16, 1, 12, 5, 9, 14, 2, 8, 15, 4, 11, 6, 13, 10];
    expect(levelsAfter(...powers)).toEqual(levels(10 * Math.log10(5)));
    // As they grow fainter the frame of 17 is forgotten, and only that.
    expect(levelsAfter(17, ...powers.map(power => 17 - power))).toEqual(levels(10 * Math.log10(5)));
    expect(levelsAfter(...Array.from({ length: 17 }, (_, i) => 17 - i))).toEqual(levels(10 * Math.log10(5)));
    expect(levelsAfter(...Array.from({ length: 16 }, (_, i) => 16 - i))).toEqual(levels(10 * Math.log10(5)));
  });

  it('stays that of the engine while somebody talks over it for half a second, and not when it is for longer', () => {
    const engine = Array.from({ length: 16 }, () => 1e-3);
    const talk = (frames: number) => Array.from({ length: frames }, () => 0.1);
    expect(levelsAfter(...engine, ...talk(11))).toEqual(levels(-30));
    expect(levelsAfter(...engine, ...talk(12))).toEqual(levels(-10));
  });
});
