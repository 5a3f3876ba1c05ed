import { describe, expect, it } from 'vitest';
import { createContradictions } from '../../src/rehearsal/contradictions.ts';
import type { Gauges } from '../../src/rehearsal/gauges.ts';
import { demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

/** An engine that idles warm, with nothing wrong to be seen. */
const warm: Gauges = {
  rpm: 750,
  oilPressureKpa: 300,
  coolantC: 85,
  batteryV: 14.2,
  crankingV: 10.4,
  underLoadV: 10.4,
  oilFilledL: demoSix.oil.capacityL,
  strokes: 40,
  primerFirm: true,
  firing: true,
  hunting: false,
  coolantAir: false,
  steeringAir: false,
  coolantShort: false,
  upperHoseHot: true,
  wrongAt: new Set(),
  lit: new Set(),
  litAtKeyOn: new Set(),
  codes: [],
};

describe('coolant of 60 degC where the gauge shows 85', () => {
  const answered = (via: 'keys' | 'bus') => {
    const contradictions = createContradictions(demoSix, 5);
    const driver = sessionAt(demoSix, 'warmUp.watch.asking');
    contradictions.look(driver.moment, warm, driver.nowMs);
    const asked = contradictions.found.length;
    driver.send({ type: 'value', quantity: 'coolantTemperature', si: 60 }, { via, afterMs: 120_000 });
    contradictions.look(driver.moment, warm, driver.nowMs);
    return contradictions.found.slice(asked);
  };

  it('is held against whoever said it', () => {
    expect(answered('keys')).toEqual([
      {
        step: 'warmUp.watch',
        atMs: expect.any(Number),
        value: { quantity: 'coolantTemperature', said: 60, shown: 85 },
      },
    ]);
  });

  it('is held against nobody where the bus gave it', () => {
    expect(answered('bus')).toEqual([]);
  });
});
