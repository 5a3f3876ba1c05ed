import type { Profile } from '../../src/profile/schema.ts';
import { confirm, sensors } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import { rawWaterShut } from './raw-water.ts';

const sensorGroups = ['firstSensors', 'secondSensors', 'thirdSensors', 'fourthSensors'] as const;
const front = { group: 'hosesBootsBelts', ok: 'frontGood' } as const;
const wiring = { group: 'wiringFasteners', ok: 'wiringAndFasteners' } as const;

/** Every plug, clamp, boot and belt, by name, before anything turns. */
export const walkRoundSteps = (profile: Profile): readonly Step[] => [
  sensors('walkRound.sensors', {
    items: profile.sensors,
    ok: 'pluggedIn',
    groups: sensorGroups,
    gate: 'sensorsConnected',
  }),
  confirm('walkRound.hoses', 'hosesGood', { gate: 'walkRoundDone', together: front }),
  confirm('walkRound.boots', 'bootsGood', { gate: 'walkRoundDone', together: front }),
  confirm('walkRound.belts', 'beltsGood', { gate: 'walkRoundDone', together: front }),
  confirm('walkRound.tools', 'toolsOut', { gate: 'walkRoundDone' }),
  confirm('walkRound.wiring', 'wiringGood', { gate: 'walkRoundDone', together: wiring }),
  confirm('walkRound.fasteners', 'fastenersMarked', { gate: 'walkRoundDone', together: wiring }),
  // Cranked without firing, the raw water pump fills the exhaust, and from there the cylinders. Common practice, no
  // published source.
  ...rawWaterShut(profile, 'walkRound.rawWater', 'walkRoundDone'),
  ...(profile.exhaust.kind === 'wet'
    ? [confirm('walkRound.strainer', 'strainerClean', { gate: 'walkRoundDone' })]
    : []),
];
