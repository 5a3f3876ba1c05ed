import { describe, expect, it } from 'vitest';
import { emergencyWords } from '../../../machines/help.ts';
import type { StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { asksOf, idsOf, met, stepOf } from '../helpers/asks.ts';
import { changed, demoBoat, demoFour, demoGenset, demoSix } from '../helpers/profiles.ts';
import { knowing } from '../limits/known.ts';

const demoPump = changed(demoFour, { use: { kind: 'stationary', coupling: 'clutch of the pump' } });

describe('before anybody touches the engine', () => {
  it('the job, the people, the weather and both stop words are gone through, in this order', () => {
    const weather = { outside: 'again', readBackIn: 'job.figures' };
    expect(asksOf(demoSix, 'job')).toStrictEqual([
      { id: 'job.card', ok: 'cardRight' },
      { id: 'job.makerFirst', ok: 'understood' },
      { id: 'job.protection', ok: 'protectionOn', gate: 'peopleSafe' },
      { id: 'job.hazards', ok: 'understood', gate: 'peopleSafe' },
      { id: 'job.ventilation', ok: 'airGood', gate: 'peopleSafe' },
      { id: 'job.extinguisher', ok: 'extinguisherReady', gate: 'peopleSafe' },
      { id: 'job.parked', ok: 'vehicleSecured', gate: 'peopleSafe' },
      { id: 'job.cutOff', ok: 'cutOffReady', gate: 'peopleSafe' },
      { id: 'job.ambient', quantity: 'ambientTemperature', ...weather },
      { id: 'job.coldestNight', quantity: 'coldestNight', ...weather },
      { id: 'job.altitude', quantity: 'altitude', ...weather },
      {
        id: 'job.figures',
        ok: 'yes',
        gate: 'coolantReady',
        readsBack: ['job.ambient', 'job.coldestNight', 'job.altitude'],
      },
      { id: 'job.stopTechnician', ok: 'thatWasTheDrill', gate: 'stopWordsProved', drill: true },
      { id: 'job.stopSecond', ok: 'thatWasTheDrill', gate: 'stopWordsProved', drill: true, by: 'second' },
    ]);
  });

  it.each<[string, Profile, Partial<Record<StepId, [string, object]>>]>([
    ['a vehicle is parked', demoSix, { 'job.parked': ['vehicleSecured', {}] }],
    [
      'a generating set is locked out and its breaker opened',
      demoGenset,
      {
        'job.autoStart': ['lockedOut', { at: 'mode switch of the control panel' }],
        'job.breaker': ['breakerOpen', { at: 'output breaker of the set' }],
      },
    ],
    ['a boat is in neutral', demoBoat, { 'job.gearLever': ['inNeutral', { at: 'gear lever at the helm' }] }],
    [
      'what stands and drives is uncoupled',
      demoPump,
      { 'job.coupling': ['uncoupled', { at: 'clutch of the pump' }] },
    ],
  ])('%s, for the safety of people, and nothing else is asked of it', (_, profile, secured) => {
    const others = idsOf(demoSix, 'job').filter(id => id !== 'job.parked');
    expect(idsOf(profile, 'job').filter(id => !others.includes(id))).toEqual(Object.keys(secured));
    for (const [id, [ok, values]] of Object.entries(secured)) {
      const step = stepOf(profile, id as StepId, 'confirm');
      expect(step).toMatchObject({ ok, gate: 'peopleSafe' });
      expect(step.values?.(knowing(profile, {})) ?? {}).toEqual(values);
    }
  });

  it('the card is read out as it was filled in', () => {
    const context = knowing(demoSix, {});
    const { vehicle, engine, technician, second } = context.job;
    expect(stepOf(demoSix, 'job.card', 'confirm').values?.(context)).toEqual({
      vehicle,
      engine,
      technician,
      second,
    });
  });

  it('the cut-off is named where the profile names one, and otherwise asked for', () => {
    const how = (profile: Profile) => stepOf(profile, 'job.cutOff', 'confirm').values?.(knowing(profile, {}));
    const { cutOff: _, ...older } = demoSix;
    expect(how(changed(demoSix, { cutOff: { at: 'red knob' } }))).toEqual({
      how: { line: 'cutOffAt', values: { at: 'red knob' } },
    });
    expect(how({ ...older })).toEqual({ how: { line: 'cutOffKnown', values: {} } });
  });

  it.each([
    ['job.ambient', 'degC', -40, 50],
    ['job.coldestNight', 'degC', -40, 35],
    ['job.altitude', 'm', -500, 6000],
  ] as const)('%s is taken in %s from %d to %d, and not beyond', (id, unit, least, most) => {
    const { judge } = stepOf(demoSix, id, 'reading');
    const context = knowing(demoSix, {});
    expect(met(judge, context, least, most)).toEqual([true, true]);
    expect(met(judge, context, least - 0.1, most + 0.1, Number.NaN)).toEqual([false, false, false]);
    expect(judge(context, 0)).toMatchObject({ value: { unit } });
  });

  it('the weather is read back as it was told, and as no number where it was not', () => {
    const { values } = stepOf(demoSix, 'job.figures', 'confirm');
    expect(values?.(knowing(demoSix, { ambientTemperature: 5, coldestNight: -8, altitude: 300 }))).toEqual({
      air: { brief: 'ambientTemperature', si: 5, asSaid: true },
      coldest: { brief: 'coldestNight', si: -8, asSaid: true },
      altitude: { brief: 'altitude', si: 300, asSaid: true },
    });
    expect(values?.(knowing(demoSix, {}))).toMatchObject({ air: { si: Number.NaN } });
  });

  it.each(['job.stopTechnician', 'job.stopSecond'] as const)('%s shows the words that stop', id => {
    expect(stepOf(demoSix, id, 'confirm').values?.(knowing(demoSix, {}))).toEqual(emergencyWords);
  });
});
