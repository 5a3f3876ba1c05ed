import { describe, expect, it } from 'vitest';
import { handsOff } from '../../src/rehearsal/model/controls.ts';
import { controlsAt } from '../../src/rehearsal/operator.ts';
import { demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

describe('the speed that people hold while it warms', () => {
  const hose = sessionAt(demoSix, 'warmUp.watch.asking')
    .value('coolantTemperature', demoSix.thermostat.opensC, { afterMs: 600_000 })
    .reply('yes');
  const fastIdle = { ...handsOff, keyOn: true, demandRpm: 1400 };

  it('stays until the upper hose is hot, as at idle it may never get so', () => {
    expect(hose.context.step).toBe('warmUp.hose');
    expect(controlsAt(hose.moment, fastIdle, demoSix).demandRpm).toBe(1400);
    expect(controlsAt(hose.moment, { ...fastIdle, demandRpm: null }, demoSix).demandRpm).toBeNull();
  });

  it('is idle again for the steering', () => {
    const steering = hose.reply('thermostatOpen');
    expect(steering.context.step).toBe('warmUp.steeringLocks');
    expect(controlsAt(steering.moment, fastIdle, demoSix).demandRpm).toBeNull();
  });
});
