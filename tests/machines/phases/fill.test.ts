import { describe, expect, it } from 'vitest';
import type { Context } from '../../../machines/context.ts';
import type { StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { asksOf, idsOf, met, stepOf } from '../helpers/asks.ts';
import { changed, demoFour, demoGenset, demoSix } from '../helpers/profiles.ts';
import { knowing } from '../limits/known.ts';

const told = { coldestNight: -8, fuelInTank: 30, biodieselShare: 5 };
const figures = (id: StepId, context: Context) => stepOf(demoSix, id, 'confirm').values?.(context);
const isPossible = (id: StepId, shown: Parameters<typeof knowing>[1]) =>
  stepOf(demoSix, id, 'confirm').possible?.(knowing(demoSix, shown));

describe('what is filled in', () => {
  it('is coolant, oil and fuel with their filters, in this order; what stands side by side is asked together', () => {
    const mixing = { gate: 'coolantReady', together: { group: 'coolantIn', ok: 'mixedAndFull' } };
    const bottles = { together: { group: 'bottles', ok: 'bottlesGood' } };
    const oilIn = { gate: 'oilReady', together: { group: 'gradeAndFilter', ok: 'gradeAndFilterRight' } };
    const fuelIn = { gate: 'fuelReady', together: { group: 'fuelAndFilters', ok: 'fuelAndFiltersRight' } };
    const later = { outside: 'again', readBackIn: 'fill.fuelGrade' };
    expect(asksOf(demoSix, 'fill')).toStrictEqual([
      {
        id: 'fill.coolantCool',
        quantity: 'coolantTemperature',
        outside: 'again',
        byTime: true,
        gate: 'coolantReady',
      },
      { id: 'fill.coolantMix', ok: 'mixReady', ...mixing },
      { id: 'fill.coolantFilled', ok: 'coolantFull', ...mixing },
      { id: 'fill.coolantBleed' },
      { id: 'fill.coolantBled', ok: 'noMoreAir', gate: 'coolantReady', ...bottles },
      { id: 'fill.steeringFull', ok: 'steeringFull', ...bottles },
      { id: 'fill.coolantFreezePoint', quantity: 'coolantFreezePoint', outside: 'again' },
      { id: 'fill.oilGrade', ok: 'gradeRight', ...oilIn },
      { id: 'fill.oilFilterPreFilled', ok: 'filterFitted', ...oilIn },
      { id: 'fill.oilQuantity', quantity: 'oilQuantity', outside: 'again' },
      { id: 'fill.oilLevel', ok: 'levelGood', gate: 'oilReady', dipstick: true },
      { id: 'fill.fuelInTank', quantity: 'fuelInTank', ...later },
      { id: 'fill.biodieselShare', quantity: 'biodieselShare', ...later },
      {
        id: 'fill.fuelGrade',
        ok: 'fuelRight',
        readsBack: ['fill.fuelInTank', 'fill.biodieselShare'],
        ...fuelIn,
      },
      { id: 'fill.firstFilterPreFilled', ok: 'filterFitted', ...fuelIn },
      { id: 'fill.secondFilterDry', ok: 'filterFitted', ...fuelIn },
    ]);
  });

  const withFilters = (oil: 'preFilled' | 'dry', ...fits: readonly ('preFilled' | 'dry')[]): Profile =>
    changed(demoSix, {
      oil: { ...demoSix.oil, filter: oil },
      fuel: {
        ...demoSix.fuel,
        filters: fits.map((fit, index) => ({
          id: index === 0 ? ('first' as const) : ('second' as const),
          fit,
        })),
      },
    });

  it.each([
    [withFilters('dry', 'dry'), ['fill.oilFilterDry', 'fill.firstFilterDry']],
    [
      withFilters('preFilled', 'dry', 'preFilled'),
      ['fill.oilFilterPreFilled', 'fill.firstFilterDry', 'fill.secondFilterPreFilled'],
    ],
    [withFilters('preFilled', 'preFilled'), ['fill.oilFilterPreFilled', 'fill.firstFilterPreFilled']],
  ])('fits each filter as the profile says, filled or dry %#', (profile, filters) => {
    expect(idsOf(profile, 'fill').filter(id => id.includes('Filter'))).toEqual(filters);
  });

  it('is steering fluid only where the steering has its own', () => {
    expect(idsOf(changed(demoSix, { steering: false }), 'fill')).not.toContain('fill.steeringFull');
  });

  it('begins with the jacket heater off where there is one, by its name', () => {
    const heater = stepOf(demoGenset, 'fill.jacketHeater', 'confirm');
    expect(heater).toMatchObject({ ok: 'jacketHeaterOff', gate: 'coolantReady' });
    expect(heater.values?.(knowing(demoGenset, {}))).toEqual({ at: 'plug of the jacket heater' });
    expect(idsOf(demoGenset, 'fill')[0]).toBe('fill.jacketHeater');
    expect(idsOf(demoFour, 'fill')).not.toContain('fill.jacketHeater');
  });

  it('bleeds for as long as the profile says', () => {
    expect(stepOf(demoSix, 'fill.coolantBleed', 'hold').seconds(knowing(demoSix, {}))).toBe(120);
  });
});

describe('a cap on an engine that has run', () => {
  const step = stepOf(demoSix, 'fill.coolantCool', 'reading');
  const touched: readonly StepId[] = ['fill.coolantMix', 'fill.coolantFilled', 'fill.coolantFreezePoint'];
  const fired: readonly StepId[] = ['firstFire.crank'];
  const asked = (done: readonly StepId[], again: readonly StepId[] = []) =>
    step.when?.(knowing(demoSix, {}, { done, again }));

  it.each(touched)('is opened only when it is cool, where %s is done once more', missing => {
    const done = touched.filter(id => id !== missing);
    expect(asked(done, fired)).toBe(true);
    expect(asked([...done, ...fired])).toBe(true);
    expect(asked(done, [missing])).toBe(false);
  });

  it('is left alone where no coolant is touched, and what was read of it is kept', () => {
    expect(asked(touched, fired)).toBe(false);
    expect(asked([...touched, 'fill.coolantCool'], fired)).toBe(true);
    expect(asked([])).toBe(false);
  });

  it('is told how cool: as cool as it is safe by the profile', () => {
    const context = knowing(demoSix, {});
    expect(step.values?.(context)).toEqual({
      unit: { unitOf: 'coolantTemperature' },
      limit: { brief: 'coolantTemperature', si: 45 },
    });
    expect(step.judge(context, 45)).toMatchObject({ ok: false, line: 'coolOnce' });
    expect(step.judge(context, 46)).toMatchObject({ ok: false, line: 'notCoolYet' });
  });
});

describe('the mix of the coolant', () => {
  it('fills the dry system, for the coldest night', () => {
    expect(figures('fill.coolantMix', knowing(demoSix, told))).toEqual({
      glycol: { glycol: 'ethylene' },
      concentrate: { unit: 'litre', si: expect.closeTo((24 * 0.4) / 0.95, 6) },
      water: { unit: 'litre', si: expect.closeTo(24 - (24 * 0.4) / 0.95, 6) },
      freeze: { unit: 'degC', si: -24.8 },
    });
    expect(isPossible('fill.coolantMix', told)).toBe(true);
  });

  it('is none where none stands the night, and is not confirmed', () => {
    expect(figures('fill.coolantMix', knowing(demoSix, { coldestNight: -58 }))).toEqual({
      glycol: { glycol: 'ethylene' },
      concentrate: { line: 'noMix', values: {} },
      water: '',
      freeze: '',
    });
    expect(isPossible('fill.coolantMix', { coldestNight: -58 })).toBe(false);
  });

  it('names what is missing where the night was not told, and is not confirmed', () => {
    expect(figures('fill.coolantMix', knowing(demoSix, {}))).toMatchObject({
      concentrate: { issue: { code: 'missing' } },
    });
    expect(isPossible('fill.coolantMix', {})).toBe(false);
  });

  it('stands the night by its freezing point with the margin of the profile', () => {
    const { judge } = stepOf(demoSix, 'fill.coolantFreezePoint', 'reading');
    expect(met(judge, knowing(demoSix, told), -13, -12.9, Number.NaN)).toEqual([true, false, false]);
  });
});

describe('the oil', () => {
  it('is of the grades that suit the night', () => {
    expect(figures('fill.oilGrade', knowing(demoSix, told))).toEqual({
      coldest: { brief: 'coldestNight', si: -8 },
      grades: { list: [{ oilGrade: '15W-40' }, { oilGrade: '5W-40' }] },
    });
    expect(isPossible('fill.oilGrade', told)).toBe(true);
  });

  it('is none where none suits, and is not confirmed', () => {
    expect(figures('fill.oilGrade', knowing(demoSix, { coldestNight: -40 }))).toEqual({
      coldest: { brief: 'coldestNight', si: -40 },
      grades: { line: 'noGrade', values: {} },
    });
    expect(isPossible('fill.oilGrade', { coldestNight: -40 })).toBe(false);
  });

  it('names what is missing where the night was not told, and is not confirmed', () => {
    expect(figures('fill.oilGrade', knowing(demoSix, {}))).toMatchObject({
      grades: { issue: { code: 'missing' } },
    });
    expect(isPossible('fill.oilGrade', {})).toBe(false);
  });

  it('is as much as the engine holds, within its tolerance', () => {
    const { judge, values } = stepOf(demoSix, 'fill.oilQuantity', 'reading');
    const context = knowing(demoSix, {});
    expect(met(judge, context, 14, 16, 13.9, 16.1)).toEqual([true, true, false, false]);
    expect(values?.(context)).toEqual({
      capacity: { unit: 'litre', si: 15 },
      unit: { unitOf: 'oilQuantity' },
    });
  });
});

describe('the fuel', () => {
  it('is blended for the night, with what was told of the tank read back', () => {
    expect(figures('fill.fuelGrade', knowing(demoSix, told))).toEqual({
      coldest: { brief: 'coldestNight', si: -8 },
      tank: { quantity: 'fuelInTank', si: 30 },
      share: { quantity: 'biodieselShare', si: 5 },
      advice: {
        line: 'fuelToAdd',
        values: {
          practice: { fuel: 'blend' },
          risk: { gelling: 'belowCloud' },
          no1: { brief: 'fuelInTank', si: expect.closeTo(78.16, 1) },
          no2: { brief: 'fuelInTank', si: expect.closeTo(180 - 30 - 78.16, 1) },
        },
      },
    });
    expect(isPossible('fill.fuelGrade', told)).toBe(true);
  });

  it('is none where none at hand stands the night, and is not confirmed', () => {
    const cold = { ...told, coldestNight: -50 };
    expect(figures('fill.fuelGrade', knowing(demoSix, cold))).toMatchObject({
      tank: { si: 30 },
      advice: { line: 'noFuel', values: {} },
    });
    expect(isPossible('fill.fuelGrade', cold)).toBe(false);
  });

  it('is not confirmed where nobody told what is in the tank, which is read back as no number', () => {
    expect(figures('fill.fuelGrade', knowing(demoSix, { coldestNight: -8 }))).toMatchObject({
      tank: { si: Number.NaN },
      share: { si: Number.NaN },
      advice: { issue: { code: 'missing' } },
    });
    expect(isPossible('fill.fuelGrade', { coldestNight: -8 })).toBe(false);
  });

  it('in the tank is from none to as much as the tank holds', () => {
    const { judge } = stepOf(demoSix, 'fill.fuelInTank', 'reading');
    const context = knowing(demoSix, {});
    expect(met(judge, context, 0, 180, -0.1, 180.1)).toEqual([true, true, false, false]);
    expect(judge(context, 1)).toMatchObject({ value: { unit: 'litre' } });
  });

  it('holds no more biodiesel than the profile allows', () => {
    const { judge } = stepOf(demoSix, 'fill.biodieselShare', 'reading');
    expect(met(judge, knowing(demoSix, {}), 20, 20.1)).toEqual([true, false]);
  });
});
