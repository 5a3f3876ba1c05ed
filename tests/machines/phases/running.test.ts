import { describe, expect, it } from 'vitest';
import { ordinals, sweepRpm, sweepStepIds } from '../../../machines/phases/numbered.ts';
import type { StepId } from '../../../prompts/types.ts';
import { asksOf, idsOf, met, stepOf } from '../helpers/asks.ts';
import { changed, demoBoat, demoGenset, demoSix } from '../helpers/profiles.ts';
import { knowing, readAt } from '../limits/known.ts';

const weather = { ambientTemperature: 5, coldestNight: -8, altitude: 300 };

describe('the running checks', () => {
  it('are idle, pressure, coolant and charge by gauge, then leaks, noise, smell and smoke by the second person', () => {
    const running = { engine: 'running', needs: ['engineFired', 'nothingAmiss', 'restarted'] };
    expect(asksOf(demoSix, 'checks')).toStrictEqual([
      {
        id: 'checks.idle',
        quantity: 'engineSpeed',
        outside: 'again',
        ...running,
        series: {
          count: 5,
          extremes: { trouble: { reply: 'hunting', cause: 'other' } },
          bounds: { cause: 'overspeed' },
        },
      },
      {
        id: 'checks.oilPressure',
        quantity: 'oilPressure',
        outside: 'noOilPressure',
        ...running,
        gate: 'oilPressureShown',
      },
      { id: 'checks.coolant', quantity: 'coolantTemperature', outside: 'overheating', ...running },
      {
        id: 'checks.charging',
        quantity: 'chargingVoltage',
        outside: 'again',
        ...running,
        mayStayOpen: true,
        patience: 'hunt',
      },
      {
        id: 'checks.leaks',
        by: 'second',
        ...running,
        gate: 'noLeaks',
        patience: 'hunt',
        points: [
          { id: 'fuelJoints', cause: 'fuelLeak' },
          { id: 'coolantJoints', cause: 'coolantLeak' },
          { id: 'oilJoints', cause: 'oilLeak' },
          { id: 'boots', cause: 'looseOrNoise' },
          { id: 'hiss', cause: 'looseOrNoise' },
          { id: 'smellAndSmoke', cause: 'smokeOrFire' },
        ],
        together: { from: 'boots', ok: 'bootsSoundSmell' },
      },
    ]);
  });

  it('look at its own speed where it runs at one', () => {
    expect(idsOf(demoGenset, 'checks')[0]).toBe('checks.fixedSpeed');
    expect(stepOf(demoGenset, 'checks.fixedSpeed', 'reading').series?.count).toBe(5);
  });

  it('hold the oil pressure against the floor at the speed that was read, and at the cold idle where none was', () => {
    const { judge } = stepOf(demoSix, 'checks.oilPressure', 'reading');
    const floorAt = (engineSpeed?: number) => {
      const judgement = judge(
        knowing(demoSix, { ...weather, ...(engineSpeed === undefined ? {} : { engineSpeed }) }),
        300,
      );
      return judgement.ok ? judgement.value.min : null;
    };
    expect(floorAt(1200)).toBeGreaterThan(floorAt(700) ?? 0);
    expect(floorAt()).toBe(floorAt(demoSix.idle.cold.minRpm));
  });

  it.each(['checks.idle', 'checks.oilPressure', 'checks.coolant', 'checks.charging'] as const)(
    '%s asks in the unit of its gauge',
    id => {
      const { values, quantity } = stepOf(demoSix, id, 'reading');
      expect(values?.(knowing(demoSix, {}))).toEqual({ unit: { unitOf: quantity } });
    },
  );
});

describe('the warm-up', () => {
  const needs = ['engineFired', 'oilPressureShown', 'noLeaks'];
  const running = { engine: 'running', needs };

  it('watches the coolant up to the thermostat, then feels the hose, and looks at locks and bottles', () => {
    const coolant = { quantity: 'coolantTemperature', cause: 'overheating' };
    expect(asksOf(demoSix, 'warmUp')).toStrictEqual([
      {
        id: 'warmUp.watch',
        ...running,
        ok: 'thermostatOpen',
        follows: { step: 'checks.coolant', line: 'warmUpBegins' },
        timeUp: { open: 'idledLongEnough' },
        reading: coolant,
      },
      {
        id: 'warmUp.fastIdle',
        ...running,
        ok: 'thermostatOpen',
        timeUp: { open: 'notOpenedInTime' },
        settles: 'warmUp.watch',
        reading: coolant,
      },
      { id: 'warmUp.hose', ok: 'thermostatOpen', ...running, patience: 'hunt' },
      { id: 'warmUp.steeringLocks', ok: 'noBubbles', ...running, patience: 'hunt' },
      { id: 'warmUp.levels', ok: 'levelsGood', ...running, patience: 'hunt' },
    ]);
  });

  it('looks at one bottle where the steering has none', () => {
    const ids = idsOf(demoGenset, 'warmUp');
    expect(ids.slice(-2)).toEqual(['warmUp.hose', 'warmUp.bottle']);
    expect(stepOf(demoGenset, 'warmUp.bottle', 'confirm')).toMatchObject({
      ok: 'levelsGood',
      patience: 'hunt',
      needs,
    });
  });

  describe('at idle', () => {
    const step = stepOf(demoSix, 'warmUp.watch', 'watch');
    const context = knowing(demoSix, weather);

    it('lasts at least as long as the profile says, and no longer than new rings may idle', () => {
      expect(step.atLeastS(context)).toBe(240);
      expect([239, 240].map(seconds => step.enough?.(seconds))).toEqual([
        expect.objectContaining({ value: expect.objectContaining({ met: false }) }),
        expect.objectContaining({ value: expect.objectContaining({ met: true }) }),
      ]);
      expect(step.timeUp.seconds(context)).toBe(900);
      expect(step.everyS(context)).toBe(60);
      expect(step.values?.(context)).toEqual({ unit: { unitOf: 'coolantTemperature' } });
    });

    it('where no other speed is allowed lasts for all of its time, and its end is said as that', () => {
      const { fastIdleRpm: _, idleMaxS: __, ...warmUp } = demoSix.warmUp;
      const slow = changed(demoSix, { warmUp });
      const only = stepOf(slow, 'warmUp.watch', 'watch');
      expect(only.timeUp).toMatchObject({ open: 'notOpenedInTime' });
      expect(only.timeUp.seconds(context)).toBe(2700);
      expect(idsOf(slow, 'warmUp')).not.toContain('warmUp.fastIdle');
    });
  });

  describe('at fast idle', () => {
    const step = stepOf(demoSix, 'warmUp.fastIdle', 'watch');
    const open = { step: 'warmUp.watch', by: 'technician' } as const;

    it('goes on where idle was not enough, until it is through', () => {
      expect(step.when?.(knowing(demoSix, {}, { openItems: [open] }))).toBe(true);
      expect(step.when?.(knowing(demoSix, {}, { step: 'warmUp.fastIdle' }))).toBe(true);
      expect(step.when?.(knowing(demoSix, {}, { openItems: [{ ...open, step: 'checks.charging' }] }))).toBe(
        false,
      );
      expect(step.when?.(knowing(demoSix, {}))).toBe(false);
    });

    it('lasts for what is left of its time, a second at least', () => {
      const context = knowing(demoSix, {});
      expect(step.timeUp.seconds(context)).toBe(2700 - 900);
      expect(step.atLeastS(context)).toBe(0);
      expect(step.everyS(context)).toBe(60);
      const none = changed(demoSix, { warmUp: { ...demoSix.warmUp, maxS: 900 } });
      expect(stepOf(none, 'warmUp.fastIdle', 'watch').timeUp.seconds(knowing(none, {}))).toBe(1);
    });

    it('names its speed', () => {
      expect(step.values?.(knowing(demoSix, {}))).toEqual({
        speed: { unit: 'rpm', si: 1200 },
        unit: { unitOf: 'coolantTemperature' },
      });
    });
  });

  it.each(['warmUp.watch', 'warmUp.fastIdle'] as const)(
    '%s ends at the thermostat by the gauge, believes a hose near it, and stops too hot',
    id => {
      const { reading } = stepOf(demoSix, id, 'watch');
      if (!reading) throw new Error('A gauge is read.');
      const context = knowing(demoSix, weather);
      const { opensC, toleranceK } = demoSix.thermostat;
      expect(met(reading.reached, context, opensC, opensC - 0.1)).toEqual([true, false]);
      expect(met(reading.agrees, context, opensC, opensC - toleranceK, 40)).toEqual([true, true, false]);
      expect(met(reading.bounds, context, 95, 120)).toEqual([true, false]);
      expect(reading.farFrom(context, opensC - 20.1)).toBe(true);
      expect(reading.farFrom(context, opensC - 20)).toBe(false);
    },
  );

  it('feels the hose once the gauge has come to the thermostat, and not where it has not', () => {
    const { when } = stepOf(demoSix, 'warmUp.hose', 'confirm');
    const { opensC } = demoSix.thermostat;
    const at = (...readings: ReturnType<typeof readAt>[]) =>
      when?.(knowing(demoSix, {}, { readings: readings.flat() }));
    const read = (step: StepId, si: number, s = 0) => readAt(step, [[s, si]]);
    expect(at()).toBe(false);
    expect(at(read('warmUp.watch', opensC))).toBe(true);
    expect(at(read('warmUp.fastIdle', opensC))).toBe(true);
    expect(at(read('warmUp.watch', opensC - 0.1))).toBe(false);
    // The last look counts, and another step's says nothing.
    expect(at(read('warmUp.watch', opensC), read('warmUp.fastIdle', 60, 60))).toBe(false);
    expect(at(read('warmUp.watch', 60), read('checks.coolant', opensC, 60))).toBe(false);
  });
});

describe('the sweeps', () => {
  const running = { engine: 'running', needs: ['engineFired', 'oilPressureShown', 'noLeaks'] };
  const pressure = { quantity: 'oilPressure', ...running };

  it('go up through the speeds of the profile; each stops below its floor, and the last is looked at again', () => {
    const between = { outside: 'noOilPressure', ...pressure, passesAfterS: 15 };
    expect(asksOf(demoSix, 'sweeps')).toStrictEqual([
      { id: 'sweeps.first', outside: 'noOilPressure', ...pressure, atRpm: 1000 },
      { id: 'sweeps.second', ...between, atRpm: 1200 },
      { id: 'sweeps.third', ...between, atRpm: 1400 },
      { id: 'sweeps.fourth', ...between, atRpm: 1600 },
      {
        id: 'sweeps.fifth',
        outside: 'again',
        ...pressure,
        atRpm: 1800,
        bounds: { cause: 'noOilPressure' },
      },
      { id: 'sweeps.faults', ...running },
    ]);
  });

  it('name each speed; the needle is read off at both ends and followed between them', () => {
    const speed = (si: number) => ({ brief: 'engineSpeed', si });
    const ask = { line: 'sweepAsk', values: { unit: { unitOf: 'oilPressure' } } };
    const values = sweepStepIds
      .slice(0, 5)
      .map(id => stepOf(demoSix, id, 'reading').values?.(knowing(demoSix, {})));
    expect(values).toEqual([
      { speed: speed(1000), ask },
      { speed: speed(1200), ask: { line: 'sweepFollow', values: {} } },
      { speed: speed(1400), ask: { line: 'sweepFollowOn', values: {} } },
      { speed: speed(1600), ask: { line: 'sweepFollowOn', values: {} } },
      { speed: speed(1800), ask },
    ]);
  });

  it('hold each pressure against the floor at its own speed', () => {
    const context = knowing(demoSix, { ...weather, coolantTemperature: 85 });
    const floors = sweepStepIds.slice(0, 5).map((id, index) => {
      const { judge, bounds } = stepOf(demoSix, id, 'reading');
      const judgement = (index === 4 ? bounds?.judge : judge)?.(context, 1000);
      return judgement?.ok ? judgement.value.min : undefined;
    });
    expect(floors).toEqual(floors.toSorted((one, other) => (one ?? 0) - (other ?? 0)));
    expect(new Set(floors).size).toBe(5);
    expect(floors).not.toContain(undefined);
  });

  it('at the last speed hold the pressures against one another: they rise', () => {
    const { judge } = stepOf(demoSix, 'sweeps.fifth', 'reading');
    const readings = (...kpa: readonly number[]) => [
      ...knowing(demoSix, { ...weather, coolantTemperature: 85 }).readings,
      ...kpa.flatMap((si, index) => readAt(sweepStepIds[index] ?? 'job.card', [[index, si]], 'oilPressure')),
    ];
    const at = (...kpa: readonly number[]) =>
      judge(knowing(demoSix, {}, { readings: readings(...kpa) }), 330);
    expect(at(270, 285, 300, 315)).toMatchObject({ ok: true, value: { met: true } });
    expect(at(330, 328, 331, 329)).toMatchObject({ ok: false, line: 'pressureDoesNotFollow' });
    // Higher at its end than at its begin, and not because it follows.
    expect(at(290, 420, 410, 400)).toMatchObject({ ok: false, line: 'pressureDoesNotFollow' });
  });

  it('are one reading at the one speed of an engine that has no other, and no new code', () => {
    expect(asksOf(demoGenset, 'sweeps')).toStrictEqual([
      { id: 'sweeps.fixedPressure', outside: 'noOilPressure', ...pressure },
      { id: 'sweeps.newFaults', ...running },
    ]);
    const { judge } = stepOf(demoGenset, 'sweeps.fixedPressure', 'reading');
    const judgement = judge(knowing(demoGenset, { ...weather, coolantTemperature: 85 }), 300);
    expect(judgement.ok && judgement.value.min).toBeGreaterThan(150);
  });
});

describe('what is done several times', () => {
  it('is told apart by its number', () => {
    expect(ordinals).toEqual(['first', 'second', 'third', 'fourth', 'fifth', 'sixth']);
    expect(sweepStepIds).toEqual(ordinals.map(ordinal => `sweeps.${ordinal}`));
  });

  it('has a speed where it is a step of the sweep, and one that the profile has', () => {
    expect(sweepRpm('sweeps.first', demoBoat)).toBe(1000);
    expect(sweepRpm('sweeps.fifth', demoSix)).toBe(1800);
    expect(sweepRpm('sweeps.sixth', demoSix)).toBeUndefined();
    expect(sweepRpm('sweeps.faults', demoSix)).toBeUndefined();
  });
});
