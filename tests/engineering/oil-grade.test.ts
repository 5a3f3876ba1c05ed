import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assessOils, oilGrade, suitableGrades } from '../../src/engineering/oil-grade.ts';
import { anyReading, between, expectSound, oneSpoilt, valueFrom } from './properties.ts';

const LIST = ['0W-30', '5W-40', '10W-30', '15W-40', '20W-50', '40'].map(grade => ({ grade }));
const NEED = { forecastLowC: -10, runningC: 95, minRunningViscosityMm2S: 12 };

describe('the grades of a list', () => {
  test('suit when they crank at the forecast low and stay thick enough when hot', () => {
    expect(valueFrom(suitableGrades(LIST, NEED))).toEqual(['5W-40', '15W-40', '20W-50']);
    expect(valueFrom(suitableGrades(LIST, { ...NEED, forecastLowC: -28 }))).toEqual(['5W-40']);
  });

  test('suit at the very temperature of the standard, and no colder; at 100 degC by grade, and no hotter', () => {
    const suits = (forecastLowC: number, runningC: number) =>
      suitableGrades([{ grade: '15W-40' }], { forecastLowC, runningC, minRunningViscosityMm2S: 12.5 }).ok;
    expect([suits(-20, 100), suits(-20.1, 100), suits(-20, 100.1)]).toEqual([true, false, false]);
  });

  test('that suit a colder night also suit every warmer one', () => {
    const low = between(-60, 50);
    fc.assert(
      fc.property(low, low, (a, b) => {
        const suits = (forecastLowC: number) =>
          valueFrom(assessOils(LIST, { ...NEED, forecastLowC }))
            .filter(oil => oil.suits)
            .map(oil => oil.grade);
        expect(suits(Math.max(a, b))).toEqual(expect.arrayContaining(suits(Math.min(a, b))));
      }),
    );
  });

  test('say what speaks against each', () => {
    const faults = valueFrom(assessOils(LIST, { ...NEED, forecastLowC: -22 })).map(oil => oil.faults);
    expect(faults).toEqual([
      ['tooThinHot'],
      [],
      ['tooThinHot'],
      ['tooThickCold'],
      ['tooThickCold'],
      ['noWinterGrade'],
    ]);
  });

  test.each([
    [-21, ['10W-30']],
    [-18, ['15W-40', '10W-30']],
    [-17.9, ['15W-40']],
    [-5, ['15W-40']],
    [-4.9, []],
  ])("for a night of %f °C are those that the engine's maker allows for it", (forecastLowC, allowed) => {
    const oils = [
      { grade: '15W-40', nightsToC: -5 },
      { grade: '10W-30', nightsFromC: -25, nightsToC: -18 },
    ];
    const need = { forecastLowC, runningC: 100, minRunningViscosityMm2S: 9 };
    const assessed = valueFrom(assessOils(oils, need));
    expect(assessed.filter(({ suits }) => suits).map(({ grade }) => grade)).toEqual(allowed);
    for (const { suits, faults } of assessed) if (!suits) expect(faults.length).toBeGreaterThan(0);
  });

  test('need a data sheet when the oil runs hotter than the standard tests it', () => {
    const hot = { forecastLowC: 0, runningC: 120, minRunningViscosityMm2S: 8 };
    expect(valueFrom(assessOils([{ grade: '15W-40' }], hot))[0]?.faults).toEqual(['needsDataSheet']);
    const sheet = { grade: '15W-40', viscosity40Mm2S: 108, viscosity100Mm2S: 14.5 };
    const oil = valueFrom(assessOils([sheet], hot))[0];
    expect(oil?.suits).toBe(true);
    expect(oil?.runningViscosityMm2S).toBeGreaterThan(8);
    expect(oil?.runningViscosityMm2S).toBeLessThan(14.5);
  });

  test('that none suits is an issue, not an empty list', () => {
    expect(suitableGrades(LIST, { ...NEED, forecastLowC: -40 })).toMatchObject({
      issue: { code: 'noSolution' },
    });
    expect(suitableGrades([], NEED)).toMatchObject({ issue: { code: 'missing', input: 'oils' } });
  });

  test('are refused when a data sheet contradicts its grade or is half there', () => {
    const sheet = { grade: '15W-40', viscosity40Mm2S: 108, viscosity100Mm2S: 11 };
    expect(assessOils([sheet], NEED)).toMatchObject({ issue: { code: 'contradictory' } });
    expect(assessOils([{ grade: '15W-40', viscosity100Mm2S: 14 }], NEED)).toMatchObject({
      issue: { code: 'missing', input: 'oils[0].viscosity40Mm2S' },
    });
  });

  test('are never judged on readings that are not finite', () => {
    const oil = fc.record({
      grade: fc.constantFrom('15W-40', '40', '10W', '15W-41', '', 'W'),
      viscosity40Mm2S: anyReading,
      viscosity100Mm2S: anyReading,
    });
    const need = fc.record({
      forecastLowC: anyReading,
      runningC: anyReading,
      minRunningViscosityMm2S: anyReading,
    });
    fc.assert(
      fc.property(fc.array(oil, { maxLength: 3 }), fc.oneof(need, oneSpoilt(NEED)), (oils, n) =>
        expectSound(assessOils(oils, n)),
      ),
    );
  });
});

describe('a grade name', () => {
  test('is read with or without the dash, in either case', () => {
    expect(oilGrade('15w40')).toEqual(oilGrade('15W-40'));
    expect(valueFrom(oilGrade('10W')).hot).toBeUndefined();
    expect(valueFrom(oilGrade('40')).winter).toBeUndefined();
  });

  test.each(['15W-45', '35W-40', '15W-', 'W40', '', 'forty'])('%j is not one', name => {
    expect(oilGrade(name)).toMatchObject({ ok: false, issue: { code: 'outOfRange', input: 'grade' } });
  });
});
