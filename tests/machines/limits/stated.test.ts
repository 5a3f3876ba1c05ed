import { describe, expect, it } from 'vitest';
import { isBusQuantity } from '../../../machines/limits/agreement.ts';
import {
  beforeKeyOff,
  coolantFill,
  freezeLimit,
  glycolShare,
  runningCoolant,
  soakLimit,
} from '../../../machines/limits/coolant.ts';
import {
  batteryAtRest,
  charging,
  crankingVoltage,
  heaterLamp,
  heaterSeconds,
  leastRestVoltage,
} from '../../../machines/limits/electrics.ts';
import {
  governed,
  idleRun,
  idleSpeed,
  nearThermostat,
  thermostatReached,
} from '../../../machines/limits/engine.ts';
import { biodieselLimit, fuelAdvice } from '../../../machines/limits/fuel.ts';
import { listenedRange } from '../../../machines/limits/gauges.ts';
import {
  earliestPressure,
  firstPressure,
  oilQuantity,
  pressureAt,
  primingSeconds,
  sweepPressure,
} from '../../../machines/limits/oil.ts';
import { withinRange } from '../../../machines/limits/readings.ts';
import type { Judge } from '../../../machines/steps.ts';
import type { Quantity } from '../../../machines/vocabulary.ts';
import { isQuantity, quantities } from '../../../src/engineering/quantities/table.ts';
import { changed, demoFour, demoSix } from '../helpers/profiles.ts';
import { knowing } from './known.ts';

const missing = (input: string) => ({ ok: false, issue: { code: 'missing', input } });
const weather = { ambientTemperature: 5, coldestNight: -5, altitude: 0 };
const know = knowing(demoSix, weather);
const nothing = knowing(demoSix, {});

describe('a verdict says in what unit, by which rule and with what limits', () => {
  const profileFigure = /figure of the engine profile/;
  const verdicts: readonly (readonly [
    name: string,
    judge: Judge,
    si: number,
    verdict: { readonly unit: string; readonly value?: number; readonly min?: number; readonly max?: number },
    rule: string,
    source: RegExp,
  ])[] = [
    ['oil quantity', oilQuantity, 15, { unit: 'litre', min: 14, max: 16 }, 'oil-capacity', profileFigure],
    ['freezing point', freezeLimit, -20, { unit: 'degC', max: -10 }, 'ashrae-ethylene-glycol', /ASHRAE/],
    ['running coolant', runningCoolant, 60, { unit: 'degC', max: 107 }, 'coolant-boiling', /Raoult/],
    ['heat soak, 12 K of it', soakLimit, 60, { unit: 'degC', value: 72 }, 'heat-soak-boil-margin', /IAPWS/],
    ['battery', batteryAtRest, 12.6, { unit: 'V', max: 13 }, 'lead-acid-rest-voltage', /Battery Council/],
    ['cranking', crankingVoltage, 11, { unit: 'V' }, 'cranking-voltage-floor', /Load-test/],
    ['charging', charging, 14.4, { unit: 'V' }, 'charging-window', /./],
    ['idle', idleSpeed, 800, { unit: 'rpm', min: 700, max: 1000 }, 'idle-range', profileFigure],
    ['thermostat', thermostatReached, 90, { unit: 'degC', min: 82 }, 'thermostat-opens', profileFigure],
    // 4 K of the thermostat and 4 of the gauge.
    ['a hot hose', nearThermostat, 80, { unit: 'degC', min: 74 }, 'thermostat-opens', profileFigure],
    [
      'governed',
      governed,
      800,
      { unit: 'rpm', max: 1500 },
      'idle-governed',
      /one and a half times the fastest idle of the engine profile/,
    ],
    ['biodiesel', biodieselLimit, 5, { unit: '%', max: 20 }, 'biodiesel-share', /./],
    ['first pressure', firstPressure, 3, { unit: 's', max: 8 }, 'first-oil-pressure', /engine profile/],
    [
      'height',
      withinRange('altitude', { max: 6000 }),
      5,
      { unit: 'm', max: 6000 },
      'plausible-range',
      /hold/,
    ],
  ];

  it.each(verdicts)('%s', (_, judge, si, verdict, id, source) => {
    expect(judge(know, si)).toMatchObject({
      ok: true,
      value: {
        met: true,
        value: si,
        ...verdict,
        rule: { id, source: expect.stringMatching(source), validity: expect.stringMatching(/\w/) },
      },
    });
  });

  it('also where it is not met: coolant hotter than an open thermostat leaves it, 95 degC and 4 K', () => {
    expect(beforeKeyOff(know, 99.1)).toEqual({
      ok: false,
      line: 'hotAfterRun',
      verdict: {
        met: false,
        value: 99.1,
        unit: 'degC',
        max: 99,
        margin: expect.closeTo(-0.1, 9),
        rule: {
          id: 'thermostat-regulates',
          source:
            'wide open, a thermostat that works lets out all the heat of an engine without load; tolerance from the engine ' +
            'profile; common practice, no published source',
          validity: 'warm engine without load',
        },
      },
    });
    expect(beforeKeyOff(know, 60)).toMatchObject({
      ok: true,
      value: { rule: { id: 'heat-soak-boil-margin' } },
    });
  });

  it('of the profile and of what is plausible, for which engine and which start', () => {
    const validityOf = (judge: Judge) => {
      const judged = judge(know, 15);
      return judged.ok ? judged.value.rule.validity : '';
    };
    expect(validityOf(oilQuantity)).toBe('the engine that the profile describes');
    expect(validityOf(withinRange('altitude', {}))).toBe('any first start');
  });

  it('of biodiesel, how much of the hundred is left', () => {
    expect(biodieselLimit(know, 5)).toMatchObject({ ok: true, value: { value: 5, margin: 15 } });
    expect(biodieselLimit(know, 25)).toMatchObject({ ok: true, value: { met: false, margin: -5 } });
  });

  it('of the first pressure, at the second at which it was there', () => {
    expect(firstPressure(know, 9)).toMatchObject({ ok: true, value: { met: false, value: 9, max: 8 } });
  });
});

describe('what is not known is named, and nothing is worked out in its place', () => {
  it('the coldest night, by all that hangs on the mix and on the oil', () => {
    for (const result of [glycolShare(nothing), coolantFill(nothing), freezeLimit(nothing, -20)])
      expect(result).toMatchObject(missing('nightLowC'));
    expect(primingSeconds(nothing)).toMatchObject(missing('forecastLowC'));
    expect(earliestPressure(nothing, 20)).toMatchObject(missing('forecastLowC'));
    expect(runningCoolant(nothing, 80)).toMatchObject(missing('nightLowC'));
    expect(fuelAdvice(knowing(demoSix, { fuelInTank: 20 }))).toMatchObject(missing('nightLowC'));
  });

  it('the air of now, by the batteries and the pump', () => {
    const night = knowing(demoSix, { coldestNight: -5 });
    for (const result of [leastRestVoltage(night), batteryAtRest(night, 12.6), crankingVoltage(night, 11)])
      expect(result).toMatchObject(missing('batteryC'));
    expect(charging(night, 14)).toMatchObject(missing('batteryC'));
    expect(primingSeconds(night)).toMatchObject(missing('temperatureC'));
  });

  it('the height, by whatever may boil', () => {
    const flat = knowing(demoSix, { coldestNight: -5 });
    expect(runningCoolant(flat, 80)).toMatchObject(missing('altitudeM'));
    expect(soakLimit(flat, 80)).toMatchObject(missing('altitudeM'));
  });

  it('the oil, where neither the coolant nor the air was read', () => {
    expect(pressureAt(() => 800)(nothing, 200)).toEqual(missing('coolantTemperature'));
  });

  it('a pressure of the sweep', () => {
    const warm = knowing(demoSix, { coolantTemperature: 90 });
    const fifth = sweepPressure(4, ['sweeps.first', 'sweeps.second', 'sweeps.third', 'sweeps.fourth']);
    expect(fifth(warm, 340)).toMatchObject({ ok: false, issue: { code: 'missing', input: 'oilPressure' } });
  });

  it('the speeds of the idle', () => {
    expect(idleRun(know, [])).toMatchObject({ ok: false, issue: { code: 'tooLittleData' } });
  });

  it('a share that is no number', () => {
    expect(biodieselLimit(know, Number.NaN)).toMatchObject({ ok: false, issue: { code: 'notANumber' } });
  });

  it('a figure of the profile that no rule takes', () => {
    const fuel = { ...demoSix, fuel: { ...demoSix.fuel, straightNo1BelowC: 5 } };
    expect(fuelAdvice(knowing(fuel, { ...weather, fuelInTank: 20 }))).toMatchObject({
      ok: false,
      issue: { input: 'straightNo1BelowC' },
    });
    const oil = { ...demoSix, oil: { ...demoSix.oil, fullFlowViscosityMm2S: 0 } };
    expect(primingSeconds(knowing(oil, weather))).toMatchObject({
      ok: false,
      issue: { input: 'fullFlowViscosityMm2S' },
    });
  });

  it('a heater that the engine does not have', () => {
    const without = knowing(demoFour, weather);
    expect(heaterSeconds(without)).toBe(0);
    expect(heaterLamp(without, 5)).toEqual(missing('heater'));
  });
});

describe('the mix of the coolant', () => {
  it('is said with what it stands: 40 % at least, which freezes at -24.8 degC', () => {
    // ASHRAE: 39.5 % by volume freezes at -24.3 degC, 40.5 % at -25.3; of 24 L 0.4/0.95 are concentrate.
    const fill = coolantFill(know);
    if (!fill.ok) throw new Error(JSON.stringify(fill));
    expect(fill.value.concentrateLitres).toBeCloseTo((24 * 0.4) / 0.95, 6);
    expect(fill.value.waterLitres).toBeCloseTo(24 - (24 * 0.4) / 0.95, 6);
    expect(fill.value.freezeC).toBeCloseTo(-24.8, 6);
  });

  /** The lowest freezing point that is believed of a mix no stronger than this. */
  const lowest = (maxShare: number) => {
    const profile = changed(demoSix, { coolant: { ...demoSix.coolant, minShare: 0.3, maxShare } });
    const judged = freezeLimit(knowing(profile, weather), -20);
    return judged.ok ? judged.value.min : undefined;
  };

  it('may freeze no lower than the strongest that is allowed, less 2 K of the refractometer', () => {
    // Rows of ASHRAE's table.
    expect(lowest(0.537)).toBeCloseTo(-42.6 - 2, 6);
    expect(lowest(0.568)).toBeCloseTo(-47.1 - 2, 6);
  });

  it('beyond the table, as it falls at its end: by 1.33 K for each hundredth', () => {
    // -45.6 degC at 55.7 %, -47.1 at 56.8, -48.3 at 57.8: straight lines give -46.01 at 56 % and -47.34 at 57.
    expect(lowest(0.6)).toBeCloseTo(-47.34 - 3 * 1.331 - 2, 2);
  });
});

describe('the pump fills the engine', () => {
  const thin = changed(demoSix, { oil: { ...demoSix.oil, fullFlowViscosityMm2S: 100 } });
  const expected = (coldestNight: number) => {
    const time = primingSeconds(knowing(thin, { coldestNight, ambientTemperature: 20 }));
    return time.ok ? time.value.expectedS : Number.NaN;
  };

  it('sooner where the thickest of the oils does not suit the night', () => {
    expect(expected(-25)).toBeLessThan(expected(-5));
  });

  it('never before three quarters of it at its best: 9.8 s', () => {
    // 1.6 L less a quarter, by 0.048 L x 1.2 x 2.5 a second at 85 %.
    const earliestS = (1.6 * 0.75) / (0.048 * 1.2 * 2.5 * 0.85);
    const at = (seconds: number) =>
      earliestPressure(knowing(demoSix, { ...weather, ambientTemperature: 30 }), seconds);
    expect(at(earliestS + 0.01)).toMatchObject({
      ok: true,
      value: { met: true, unit: 's', rule: { id: 'priming-time' } },
    });
    expect(at(earliestS - 0.01)).toMatchObject({ ok: true, value: { met: false } });
  });
});

describe('the fuel to add', () => {
  const advice = (coldestNight: number) => {
    const given = fuelAdvice(knowing(demoSix, { coldestNight, fuelInTank: 0 }));
    return given.ok ? given.value : given;
  };

  it('comes with what the trade fills, and with what may become of the fuel in the tank', () => {
    // No. 2 that clouds at -4 degC, with 3 K to stay clear of it; straight No. 1 below -30.
    expect(advice(2)).toMatchObject({ practice: 'no2', risk: 'clear', no1Litres: 0, no2Litres: 180 });
    expect(advice(-2)).toMatchObject({ practice: 'blend', risk: 'nearCloud' });
    expect(advice(-31)).toMatchObject({ practice: 'no1', risk: 'belowCloud' });
  });
});

describe('the intake heater', () => {
  const { heater } = demoSix;
  it('is waited for by its table, and longest where the air is not known', () => {
    expect(heaterSeconds(knowing(demoSix, { ambientTemperature: -10 }))).toBe(25);
    expect(heaterSeconds(nothing)).toBe(Math.max(...(heater?.waits ?? []).map(({ waitS }) => waitS)));
    expect(heaterSeconds(nothing)).toBe(60);
  });
});

describe('a battery at rest', () => {
  it('that has three quarters shows 12.45 V at 26.7 degC', () => {
    const charged = changed(demoSix, { charging: { ...demoSix.charging, minStateOfCharge: 0.75 } });
    const least = leastRestVoltage(knowing(charged, { ambientTemperature: 26.7 }));
    expect(least.ok ? least.value : least).toBeCloseTo(12.45, 6);
  });
});

describe('five speeds in a row', () => {
  /** Read so many seconds apart. */
  const run = (speeds: readonly number[], apartS = 1) =>
    idleRun(
      know,
      speeds.map((si, i) => ({ si, atMs: 60_000 + i * apartS * 1000 })),
    );

  it('in range and steady are good, and out of range are told by their limits', () => {
    expect(run([800, 801, 800, 801, 800])).toMatchObject({ ok: true, value: { met: true } });
    expect(run([600, 601, 600, 601, 600])).toMatchObject({ ok: true, value: { met: false, min: 700 } });
  });

  it('that hunt, fall or rise are told as that', () => {
    expect(run([850, 950, 750, 950, 850])).toMatchObject({
      ok: false,
      line: 'idleHunting',
      verdict: { met: false },
    });
    expect(run([900, 880, 860, 840, 820])).toMatchObject({
      ok: false,
      line: 'idleFalling',
      verdict: { met: false },
    });
    expect(run([820, 840, 860, 880, 900])).toMatchObject({
      ok: false,
      line: 'idleRising',
      verdict: { met: false },
    });
  });

  it('are judged over the time that reading them took', () => {
    expect(run([800, 801, 800, 801, 800], 5)).toMatchObject({ ok: true, value: { met: true } });
  });
});

describe('an engine that no governor holds', () => {
  const most = (parts: Parameters<typeof changed>[1]) => {
    const judged = governed(knowing(changed(demoSix, parts), {}), 800);
    return judged.ok ? judged.value.max : undefined;
  };
  it('is known by half as much again as its fastest idle, or by the overspeed of its bus where that is less', () => {
    const { bus } = demoSix;
    if (!bus) throw new Error('demo-six has a bus.');
    const idle = { ...demoSix.idle, cold: { minRpm: 700, maxRpm: 1400 } };
    expect(most({ idle, bus: { ...bus, overspeedRpm: 2000 } })).toBe(2000);
    expect(most({ idle, bus: { ...bus, overspeedRpm: 2200 } })).toBe(2100);
    expect(most({ idle, bus: undefined })).toBe(2100);
  });
});

describe('what the bus can show', () => {
  it('is what has a parameter there', () => {
    const shown: readonly Quantity[] = [
      'ambientTemperature',
      'batteryVoltage',
      'chargingVoltage',
      'coolantTemperature',
      'engineSpeed',
      'oilPressure',
    ];
    const all = Object.keys(quantities).filter(isQuantity);
    expect(all.filter(isBusQuantity).toSorted()).toEqual(shown);
  });
});

describe('what is listened for', () => {
  const of24V = changed(demoSix, { systemVoltage: 24 });
  const ranges: readonly (readonly [Quantity, number, number, typeof demoSix?])[] = [
    ['ambientTemperature', -40, 50],
    ['coldestNight', -40, 35],
    // Ten thousand feet.
    ['altitude', 0, 3040],
    // Half as much again as goes in: 15 L, 150 strokes.
    ['oilQuantity', 0, 22.5],
    ['primerStrokes', 0, 225],
    ['fuelInTank', 0, 180],
    ['batteryVoltage', 8, 16],
    ['chargingVoltage', 8, 16],
    ['crankingVoltage', 8, 16],
    ['batteryVoltage', 16, 32, of24V],
    ['chargingVoltage', 16, 32, of24V],
    ['crankingVoltage', 16, 32, of24V],
    ['engineSpeed', 0, 4000],
    ['oilPressure', 0, 700],
    ['coolantTemperature', -40, 130],
    // The last of the nineteen bits is no parameter.
    ['suspectParameter', 1, 524_286],
    ['coolantFreezePoint', -70, 0],
    ['biodieselShare', 0, 100],
    ['failureMode', 0, 31],
  ];

  it.each(ranges.map(range => [...range, demoSix] as const))(
    'as %s: %d to %d',
    (quantity, min, max, profile) => {
      expect(listenedRange(quantity, profile ?? demoSix)).toEqual([min, max]);
    },
  );

  it('is listed here for every quantity', () => {
    expect(new Set(ranges.map(([quantity]) => quantity))).toEqual(new Set(Object.keys(quantities)));
  });
});
