import { describe, expect, it } from 'vitest';
import { besideOthers, unlikeOthers } from '../../../src/session/past-starts/beside-others.ts';
import {
  comparedFigures,
  FigureReader,
  figureNames,
  isFigureName,
  mayHoldFigure,
} from '../../../src/session/past-starts/figures.ts';
import { demoSix } from '../../machines/helpers/profiles.ts';

type Noted = Parameters<FigureReader['take']>[0];

const verdict = (step: string, value: number | null): Noted =>
  ({ kind: 'verdict', data: { step, value } }) as unknown as Noted;
const inTime = (step: string, seconds: number): Noted =>
  ({ kind: 'inTime', data: { step, seconds } }) as unknown as Noted;
const passed = (step: string): Noted => ({ kind: 'passed', data: { step } }) as unknown as Noted;

describe('a figure of a start', () => {
  const read = (note: Noted) => new FigureReader(demoSix).take(note, 0);

  it('is what was measured at its step, in the way that it is measured', () => {
    expect(read(inTime('firstFire.oilPressure', 4))).toEqual({ figure: 'oil-pressure-time', value: 4 });
    expect(read(verdict('noFuelCrank.voltage', 10.4))).toEqual({ figure: 'cranking-voltage', value: 10.4 });
    expect(read(verdict('checks.idle', 850))).toEqual({ figure: 'idle-speed', value: 850 });
    expect(read(verdict('checks.charging', 14.2))).toEqual({ figure: 'charging-voltage', value: 14.2 });
    expect(read(verdict('firstFire.oilPressure', 300))).toBeUndefined();
    expect(read(inTime('checks.idle', 3))).toBeUndefined();
    expect(read(verdict('checks.coolant', 80))).toBeUndefined();
    expect(read(passed('checks.idle'))).toBeUndefined();
  });

  it('is none where nothing was measured', () => {
    expect(read(verdict('checks.idle', null))).toBeUndefined();
    expect(read(verdict('checks.idle', Number.NaN))).toBeUndefined();
  });

  it('has a name that records and archives know', () => {
    expect(figureNames).toEqual(Object.keys(comparedFigures));
    expect(isFigureName('idle-speed')).toBe(true);
    expect(isFigureName('toString')).toBe(false);
    expect(
      (['verdict', 'inTime', 'passed', 'stopped'] as const).map(kind => mayHoldFigure({ kind })),
    ).toEqual([true, true, true, false]);
  });
});

describe('the pace of a warm-up', () => {
  const STEP = 'warmUp.watch';
  /** Coolant read at these seconds; what is told of each. */
  const told = (
    points: readonly (readonly [seconds: number, degC: number])[],
    profile: typeof demoSix | null = demoSix,
  ) => {
    const reader = new FigureReader(profile);
    return {
      reader,
      figures: points.map(([s, degC]) => reader.take(verdict(STEP, degC), s * 1000)?.value),
    };
  };
  /** 10 K in 120 s. */
  const steady = [
    [0, 20],
    [240, 40],
    [480, 60],
    [720, 80],
  ] as const;

  it('is told once, as soon as the thermostat opens, at 82 degC', () => {
    expect(told([...steady, [744, 82], [1000, 90]]).figures).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      expect.closeTo(120, 6),
      undefined,
    ]);
    expect(told([...steady, [743, 81.9]]).figures.at(-1)).toBeUndefined();
  });

  it('is told where the thermostat was felt to open, and not again', () => {
    const { reader } = told(steady);
    expect(reader.take(passed('checks.idle'), 800_000)).toBeUndefined();
    expect(reader.take(passed(STEP), 800_000)).toEqual({
      figure: 'warm-up-pace',
      value: expect.closeTo(120, 6),
    });
    expect(reader.take(verdict(STEP, 90), 900_000)).toBeUndefined();
    expect(reader.take(passed(STEP), 900_000)).toBeUndefined();
  });

  it('is that of the last warm-up: coolant that is 10 K colder has stood, and time that goes back is another start', () => {
    const earlier = [
      [0, 20],
      [60, 50],
      [120, 60],
    ] as const;
    const later = steady.map(([s, degC]) => [1000 + s, degC] as const);
    expect(told([...earlier, ...later, [1744, 82]]).figures.at(-1)).toBeCloseTo(120, 6);
    // Not yet colder by more than 10 K: it is the same one.
    expect(told([...earlier, [1000, 50], [1240, 70], [1480, 82]]).figures.at(-1)).not.toBeCloseTo(120, 0);
    const shifted = earlier.map(([s, degC]) => [5000 + s, degC - 30] as const);
    expect(told([...shifted, ...steady, [744, 82]]).figures.at(-1)).toBeCloseTo(120, 6);
  });

  it('is that of one warm-up down to 10 K less, and at one moment', () => {
    const fell = (degC: number) =>
      told([
        [0, 20],
        [60, 50],
        [1000, degC],
        [1240, 60],
        [1480, 80],
        [1504, 82],
      ]).figures.at(-1);
    // From 39.9 on it is another one: 10 K in 120 s since.
    expect(fell(39.9)).toBeCloseTo((240 / 20.1) * 10, 0);
    expect(fell(40)).not.toBeCloseTo(120, 0);
    const twice = [
      [0, 20],
      [0, 20],
      [240, 40],
      [480, 60],
      [504, 82],
    ] as const;
    expect(told(twice).figures.at(-1)).toBeCloseTo(120, 6);
  });

  it('is that of what was read, whether a reading failed between or was noted twice', () => {
    const quickAtFirst = [
      [0, 20],
      [60, 40],
      [300, 60],
      [540, 80],
      [564, 82],
    ] as const;
    const pace = told(quickAtFirst).figures.at(-1);
    expect(pace).toBeGreaterThan(60);
    const twice = quickAtFirst.flatMap(point => [point, point]);
    expect(told(twice).figures.find(figure => figure !== undefined)).toBeCloseTo(pace ?? 0, 6);
    const reader = new FigureReader(demoSix);
    const figures = quickAtFirst.map(([s, degC]) => {
      reader.take(verdict(STEP, null), s * 1000);
      return reader.take(verdict(STEP, degC), s * 1000)?.value;
    });
    expect(figures.at(-1)).toBeCloseTo(pace ?? 0, 6);
  });

  it('begins where the coolant was last found colder by more than 10 K than at the reading before', () => {
    const stood = [
      [0, 20],
      [60, 50],
      [120, 70],
      [1000, 55],
      [1120, 65],
      [1240, 75],
      [1324, 82],
    ] as const;
    expect(told(stood).figures.at(-1)).toBeCloseTo(120, 0);
  });

  it('is nothing where too little was read, or it is not known when the thermostat opens', () => {
    expect(
      told([
        [0, 80],
        [60, 82],
      ]).figures.at(-1),
    ).toBeUndefined();
    const unknown = told([...steady, [744, 82]], null);
    expect(unknown.figures.at(-1)).toBeUndefined();
    expect(unknown.reader.take(passed(STEP), 800_000)).toBeUndefined();
  });
});

describe('a figure beside those of earlier starts', () => {
  const spread = (value: number, by: number) =>
    Array.from({ length: 15 }, (_, i) => value + by * ((i % 5) - 2));

  it('stands somewhere among them, by what two measurements may differ at the least', () => {
    const past = { 'idle-speed': spread(800, 5) };
    expect(besideOthers({ figure: 'idle-speed', value: 850 }, past)).toMatchObject({
      step: 'checks.idle',
      figure: 'idle-speed',
      value: 850,
      unit: 'rpm',
      others: 15,
      below: 15,
      above: 0,
      within: true,
    });
    expect(besideOthers({ figure: 'idle-speed', value: 851 }, past)?.within).toBe(false);
  });

  it('stands nowhere where there are none, or too few', () => {
    expect(besideOthers({ figure: 'idle-speed', value: 850 }, {})).toBeUndefined();
    const few = { 'idle-speed': spread(800, 5).slice(0, 11) };
    expect(besideOthers({ figure: 'idle-speed', value: 850 }, few)).toBeUndefined();
  });

  const said = (
    figure: 'oil-pressure-time' | 'idle-speed' | 'warm-up-pace',
    value: number,
    usual: number,
    by: number,
  ) => {
    const standing = besideOthers({ figure, value }, { [figure]: spread(usual, by) });
    if (!standing) throw new Error('There are enough of them.');
    return unlikeOthers(figure, value, standing);
  };

  it('is told where it is unlike them: which way, than how many, and what is usual', () => {
    expect(said('idle-speed', 900, 800, 5)).toEqual([
      {
        line: 'higherThanOthers',
        step: 'checks.idle',
        values: {
          name: { step: 'checks.idle' },
          value: { unit: 'rpm', si: 900 },
          count: 15,
          all: 15,
          limits: { limits: { unit: 'rpm', min: 750, max: 850 } },
        },
        priority: 'notice',
      },
    ]);
    expect(said('idle-speed', 700, 800, 5)).toMatchObject([
      { line: 'lowerThanOthers', values: { count: 15 } },
    ]);
    expect(said('idle-speed', 820, 800, 5)).toEqual([]);
  });

  it('that is a time is told as slower or faster, and never as below nothing', () => {
    expect(said('oil-pressure-time', 9, 1, 0.1)).toMatchObject([
      { line: 'slowerThanOthers', values: { limits: { limits: { unit: 's', min: 0, max: 2.5 } } } },
    ]);
    expect(said('oil-pressure-time', 2, 9, 0.1)).toMatchObject([{ line: 'fasterThanOthers' }]);
  });

  it('of the warm-up is told as the time for ten degrees', () => {
    expect(said('warm-up-pace', 200, 100, 1)).toMatchObject([
      { values: { value: { line: 'forTenDegrees', values: { time: { unit: 's', si: 200 } } } } },
    ]);
  });
});
