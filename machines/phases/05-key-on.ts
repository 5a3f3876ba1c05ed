import type { Profile } from '../../src/profile/schema.ts';
import { batteryAtRest, heaterLamp, heaterSeconds, TALK_S } from '../limits/electrics.ts';
import { confirm, faults, hold, lamps, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';

/** Battery, lamps, intake heater and fault codes, with the key on and the engine standing. */
export const keyOnSteps = ({ lamps: all, heater }: Profile): readonly Step[] => [
  reading('keyOn.battery', 'batteryVoltage', batteryAtRest),
  confirm('keyOn.keyOn', 'keyIsOn'),
  lamps('keyOn.lamps', { lamps: all, expected: 'keyOn', wrong: 'again', gate: 'lampsRight' }),
  ...(heater
    ? [
        hold('keyOn.heaterHold', heaterSeconds, {
          gate: 'heaterHoldDone',
          when: context => heaterSeconds(context) > 0,
        }),
        confirm('keyOn.heaterDone', 'lampOut', {
          gate: 'heaterHoldDone',
          within: { seconds: () => heater.toleranceS + TALK_S, cause: 'faultCode', judge: heaterLamp },
        }),
      ]
    : []),
  faults('keyOn.faults', { gate: 'noBlockingFault' }),
];
