import { describe, expect, it } from 'vitest';
import type { Profile } from '../../src/profile/schema.ts';
import { handsOff } from '../../src/rehearsal/model/controls.ts';
import { createEngine } from '../../src/rehearsal/model/engine.ts';
import { controlsAt } from '../../src/rehearsal/operator.ts';
import type { Driver } from '../machines/helpers/driver.ts';
import { demoFour, demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

describe('the speed that people hold while it warms', () => {
  const hose = sessionAt(demoSix, 'warmUp.watch.asking')
    .value('coolantTemperature', demoSix.thermostat.opensC, { afterMs: 600_000 })
    .reply('yes');
  const fastIdle = { ...handsOff, keyOn: true, demandRpm: 1400 };

  it('stays until the upper hose is hot, as at idle it may never get so', () => {
    expect(hose.context.step).toBe('warmUp.hose');
    expect(controlsAt(hose.moment, fastIdle, demoSix, 0).demandRpm).toBe(1400);
    expect(controlsAt(hose.moment, { ...fastIdle, demandRpm: null }, demoSix, 0).demandRpm).toBeNull();
  });

  it('is idle again for the steering', () => {
    const steering = hose.reply('thermostatOpen');
    expect(steering.context.step).toBe('warmUp.steeringLocks');
    expect(controlsAt(steering.moment, fastIdle, demoSix, 0).demandRpm).toBeNull();
  });
});

describe('the key that people turn for the intake heater', () => {
  const on = { ...handsOff, keyOn: true };
  /** Whether the key is on after so much of a wait. */
  const keyOnAt = (waiting: Driver, afterMs: number, profile = demoSix) =>
    controlsAt(waiting.moment, on, profile, (waiting.context.timer?.startedMs ?? 0) + afterMs).keyOn;

  it('goes off and on where the wait begins: what the heater gave for the lamps is long gone', () => {
    const wait = sessionAt(demoSix, 'keyOn.heaterHold.counting');
    expect([0, 900, 1000, 20_000].map(afterMs => keyOnAt(wait, afterMs))).toEqual([false, false, true, true]);
    // The engine's heater works for its seconds once more, and its lamp is out as the wait ends.
    const engine = createEngine(demoSix, { seed: 1, ambientC: 5 });
    const { startedMs = 0, totalMs = 0 } = wait.context.timer ?? {};
    engine.control(on);
    engine.advanceTo(300);
    expect(engine.state.heaterLeftS).toBe(0);
    const heats: boolean[] = [];
    for (let afterMs = 0; afterMs <= totalMs + 2000; afterMs += 100) {
      engine.control(controlsAt(wait.moment, engine.state.controls, demoSix, startedMs + afterMs));
      engine.advanceTo(300 + afterMs / 1000);
      heats.push(engine.state.heaterLeftS > 0);
    }
    expect(heats.indexOf(true)).toBeGreaterThan(9);
    expect(heats.filter(Boolean).length / 10).toBeCloseTo(engine.plant.heaterS, 0);
    expect(heats.at(-1)).toBe(false);
  });

  it('goes off and on as a rest between two bursts ends, where it is cold, and in no burst without fuel', () => {
    const leftAtRest = (profile: Profile, step: string) => {
      const rest = sessionAt(profile, `${step}.cranking`)
        .clock(profile.starter.longestBurstS * 1000)
        .reply('nothingYet');
      expect(rest.name).toBe(`${step}.resting`);
      const totalMs = rest.context.timer?.totalMs ?? 0;
      return [0, totalMs - 1100, totalMs - 1000, totalMs - 100].map(afterMs =>
        keyOnAt(rest, afterMs, profile),
      );
    };
    expect(leftAtRest(demoSix, 'firstFire.crank')).toEqual([true, true, false, false]);
    expect(leftAtRest(demoFour, 'firstFire.crank')).toEqual([true, true, true, true]);
    expect(leftAtRest(demoSix, 'noFuelCrank.untilPressure')).toEqual([true, true, true, true]);
  });

  it('stays as it is on hold', () => {
    const held = sessionAt(demoSix, 'keyOn.heaterHold.counting').send({ type: 'hold' });
    expect(held.name).toBe('held');
    expect(keyOnAt(held, 0)).toBe(true);
  });
});
