import { describe, expect, it } from 'vitest';
import { OUTCOME_WITHIN_S } from '../../../machines/kinds/deadline.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { asksOf, idsOf, met, stepOf } from '../helpers/asks.ts';
import { anyCranking } from '../helpers/gates-by-hand.ts';
import { changed, demoBoat, demoFour, demoGenset, demoSix } from '../helpers/profiles.ts';
import { knowing } from '../limits/known.ts';

const weather = { ambientTemperature: 5, coldestNight: -8 };

describe('cranking without fuel', () => {
  it('has fuelling off and proved, a battery that holds, pressure twice, and fuelling on again', () => {
    const crank = {
      engine: 'cranking',
      needs: [...anyCranking, 'fuellingDisabled', 'batteryUnderLoad'],
      trouble: { reply: 'fired', cause: 'firedUnfuelled' },
      until: 'oilPressureShows',
      readBack: true,
      gate: 'oilPrimed',
      giveUp: { cause: 'noOilPressure' },
    };
    expect(asksOf(demoSix, 'noFuelCrank')).toStrictEqual([
      { id: 'noFuelCrank.disabled', ok: 'fuellingDisabled', gate: 'fuellingDisabled' },
      { id: 'noFuelCrank.proved', ok: 'provedOff', gate: 'fuellingDisabled' },
      {
        id: 'noFuelCrank.batteryLoad',
        quantity: 'crankingVoltage',
        outside: 'again',
        gate: 'batteryUnderLoad',
        without: 'noTester',
      },
      {
        id: 'noFuelCrank.batteryRest',
        quantity: 'batteryVoltage',
        outside: 'again',
        gate: 'batteryUnderLoad',
      },
      { id: 'noFuelCrank.untilPressure', ...crank },
      { id: 'noFuelCrank.holds', ...crank },
      {
        id: 'noFuelCrank.voltage',
        quantity: 'crankingVoltage',
        outside: 'again',
        by: 'second',
        gate: 'batteryReady',
        notMeasured: { again: 'noFuelCrank.holds' },
      },
      { id: 'noFuelCrank.oilLevel', ok: 'levelGood', gate: 'oilPrimed', dipstick: true },
      { id: 'noFuelCrank.restored', ok: 'fuellingRestored', gate: 'fuellingRestored' },
    ]);
  });

  it.each<[Profile['fuelling']['disabledBy'], string, string]>([
    ['electric', 'disableElectric', 'proveElectric'],
    ['lever', 'disableLever', 'proveLever'],
    ['solenoid', 'disableSolenoid', 'proveSolenoid'],
    // Without current it lets the engine fuel: its lever is looked at.
    ['stopSolenoid', 'disableStopSolenoid', 'proveLever'],
  ])(
    'fuelling that is %s is disabled and proved in its own way, at its own place',
    (disabledBy, off, proof) => {
      const profile = changed(demoSix, { fuelling: { disabledBy, at: 'the place' } });
      const context = knowing(profile, {});
      const at = { at: 'the place' };
      expect(stepOf(profile, 'noFuelCrank.disabled', 'confirm').values?.(context)).toEqual({
        how: { line: off, values: at },
      });
      expect(stepOf(profile, 'noFuelCrank.proved', 'confirm').values?.(context)).toEqual({
        proof: { line: proof, values: at },
      });
    },
  );

  it('looks at the battery at rest only where there was no tester', () => {
    const { when } = stepOf(demoSix, 'noFuelCrank.batteryRest', 'reading');
    expect(when?.(knowing(demoSix, {}))).toBe(false);
    expect(when?.(knowing(demoSix, {}, { without: ['keyOn.battery'] }))).toBe(false);
    expect(when?.(knowing(demoSix, {}, { without: ['noFuelCrank.batteryLoad'] }))).toBe(true);
  });

  describe('a generating set', () => {
    const { use } = demoGenset;
    if (use.kind !== 'generator') throw new Error('It is a generating set.');
    const bare = changed(demoGenset, { use: { ...use, modeSwitch: null } });
    const needs = (profile: Profile) => stepOf(profile, 'noFuelCrank.untilPressure', 'crank').needs;

    it('has its mode switch put to manual first, by its name', () => {
      const manual = stepOf(demoGenset, 'noFuelCrank.manual', 'confirm');
      expect(manual).toMatchObject({ ok: 'inManual', gate: 'inManual', by: 'technician', engine: 'off' });
      expect(manual.values?.(knowing(demoGenset, {}))).toEqual({ at: 'mode switch of the control panel' });
      expect(needs(demoGenset)).toContain('inManual');
      const ids = idsOf(demoGenset, 'noFuelCrank');
      expect(ids[ids.indexOf('noFuelCrank.manual') + 1]).toBe('noFuelCrank.untilPressure');
    });

    it.each([
      ['has no such step without such a switch', bare],
      ['nor has what is no set', demoBoat],
    ])('%s', (_, profile) => {
      expect(idsOf(profile, 'noFuelCrank')).not.toContain('noFuelCrank.manual');
      expect(needs(profile)).not.toContain('inManual');
    });
  });

  describe('until pressure shows', () => {
    const step = stepOf(demoSix, 'noFuelCrank.untilPressure', 'crank');

    it('is told beforehand: what to do where it fires, how soon to tell, and whose eyes are on the voltage', () => {
      expect(step.announces?.(knowing(demoSix, weather))).toEqual([
        { line: 'ifItFires', values: {} },
        { line: 'sayInTime', values: { time: { unit: 's', si: OUTCOME_WITHIN_S } } },
        { line: 'watchVoltage', values: {} },
      ]);
    });

    it('takes no longer bursts than the starter may make', () => {
      expect(step.burst(knowing(demoSix, weather))).toBe(demoSix.starter.longestBurstS);
    });

    it('is expected, looked at twice and given up after seconds worked out for this oil and this cold', () => {
      const context = knowing(demoSix, weather);
      expect(step.values?.(context)).toEqual({ expected: { unit: 's', si: expect.closeTo(15.33, 2) } });
      expect(step.giveUp.seconds(context)).toBeGreaterThan(2 * 15.33);
      const { earliest } = step;
      if (!earliest) throw new Error('It has an earliest moment.');
      expect(met(earliest, context, 1, 15)).toEqual([false, true]);
    });

    it('is given up after one burst where nobody knows how long it takes, and says why it is not known', () => {
      const context = knowing(demoSix, {});
      expect(step.values?.(context)).toMatchObject({ expected: { issue: { code: 'missing' } } });
      expect(step.giveUp.seconds(context)).toBe(demoSix.starter.longestBurstS);
    });
  });

  it('pressure has to hold for as long as the profile says, in a burst as long, of which three are made at most', () => {
    const step = stepOf(demoSix, 'noFuelCrank.holds', 'crank');
    const context = knowing(demoSix, {});
    const { holdS } = demoSix.priming;
    expect(step.burst(context)).toBe(holdS);
    expect(step.heldS?.(context)).toBe(holdS);
    expect(step.giveUp.seconds(context)).toBe(3 * holdS);
    expect(step.announces?.(context)).toEqual([{ line: 'ifItFires', values: {} }]);
    expect(step.earliest).toBeUndefined();
  });
});

describe('with the key on', () => {
  it('battery, lamps, codes and heater are gone through, the heater last', () => {
    expect(asksOf(demoSix, 'keyOn')).toStrictEqual([
      { id: 'keyOn.battery', quantity: 'batteryVoltage', outside: 'again' },
      {
        id: 'keyOn.lamps',
        groups: ['firstLamps', 'secondLamps', 'thirdLamps'],
        lamps: demoSix.lamps,
        expected: 'keyOn',
        wrong: 'again',
        gate: 'lampsRight',
        words: { on: { line: 'keyOn', values: {} } },
      },
      { id: 'keyOn.faults', gate: 'noBlockingFault' },
      { id: 'keyOn.heaterHold', gate: 'heaterHoldDone', unbroken: true },
      { id: 'keyOn.heaterDone', ok: 'lampOut', gate: 'heaterHoldDone', within: { cause: 'faultCode' } },
    ]);
  });

  it('the battery is looked at again only where it came near its limit as it cranked', () => {
    const { when } = stepOf(demoSix, 'keyOn.battery', 'reading');
    expect(when?.(knowing(demoSix, { ...weather, crankingVoltage: 11.5 }))).toBe(false);
    expect(when?.(knowing(demoSix, { ...weather, crankingVoltage: 9.7 }))).toBe(true);
    expect(when?.(knowing(demoSix, weather))).toBe(true);
  });

  it('regeneration is off where there is a particulate filter, and raw water shut where the exhaust is wet', () => {
    expect(asksOf(demoGenset, 'keyOn')).toContainEqual({
      id: 'keyOn.regeneration',
      ok: 'regenerationOff',
      gate: 'regenerationOff',
    });
    expect(asksOf(demoBoat, 'keyOn')).toContainEqual({
      id: 'keyOn.rawWater',
      ok: 'valveClosed',
      gate: 'rawWaterShut',
    });
    expect(idsOf(demoFour, 'keyOn')).toEqual(['keyOn.battery', 'keyOn.lamps', 'keyOn.faults']);
  });

  it('the heater works for as long as this cold wants, and not at all where it wants none', () => {
    const { when, seconds } = stepOf(demoSix, 'keyOn.heaterHold', 'hold');
    const at = (ambientTemperature: number) => knowing(demoSix, { ambientTemperature });
    expect([5, 19.9, 20, 30].map(airC => when?.(at(airC)))).toEqual([true, true, false, false]);
    expect(seconds(at(5))).toBe(10);
    expect(seconds(at(-10))).toBe(25);
  });

  it('its lamp goes out within what the profile allows and the time to say so, or is a fault', () => {
    const within = stepOf(demoSix, 'keyOn.heaterDone', 'confirm').within;
    if (!within) throw new Error('It has a limit.');
    const context = knowing(demoSix, weather);
    expect(within.seconds(context)).toBe(15 + 10);
    expect(met(within.judge, context, 25, 25.1)).toEqual([true, false]);
  });
});
