import type { Profile } from '../../src/profile/schema.ts';
import { switchedOn } from '../controls.ts';
import {
  batteryAtRest,
  crankedNearItsLimit,
  heaterLamp,
  heaterSeconds,
  TALK_S,
} from '../limits/electrics.ts';
import { confirm, faults, hold, lamps, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import { rawWaterShut } from './raw-water.ts';

/** Battery, lamps, fault codes and intake heater, with the key on and the engine standing. */
export function keyOnSteps(profile: Profile): readonly Step[] {
  const { lamps: all, heater, afterTreatment } = profile;
  return [
    // What has just cranked well needs no look at rest; its voltage there tells of a battery that came near its limit.
    reading('keyOn.battery', 'batteryVoltage', batteryAtRest, { when: crankedNearItsLimit }),
    lamps('keyOn.lamps', {
      lamps: all,
      expected: 'keyOn',
      wrong: 'again',
      gate: 'lampsRight',
      words: { on: switchedOn(profile) },
    }),
    ...(afterTreatment === 'none'
      ? []
      : // Regeneration makes an exhaust glow beside joints that nobody has looked at yet. Common practice.
        [confirm('keyOn.regeneration', 'regenerationOff', { gate: 'regenerationOff' })]),
    // Whatever was done since, it is shut for the next crank.
    ...rawWaterShut(profile, 'keyOn.rawWater', 'rawWaterShut'),
    faults('keyOn.faults', { gate: 'noBlockingFault' }),
    // Last: what it gave is gone soon, and a first burst on cold plugs is the longest.
    ...(heater
      ? [
          hold('keyOn.heaterHold', heaterSeconds, {
            gate: 'heaterHoldDone',
            // What it gave is gone by the end of a pause.
            unbroken: true,
            when: context => heaterSeconds(context) > 0,
          }),
          confirm('keyOn.heaterDone', 'lampOut', {
            gate: 'heaterHoldDone',
            within: { seconds: () => heater.toleranceS + TALK_S, cause: 'faultCode', judge: heaterLamp },
          }),
        ]
      : []),
  ];
}
