import type { Profile } from '../../src/profile/schema.ts';
import { confirm, sensors } from '../step-makers.ts';
import type { Step } from '../steps.ts';

/** Every plug, clamp, boot and belt, by name, before anything turns. */
export const walkRoundSteps = (profile: Profile): readonly Step[] => [
  sensors('walkRound.sensors', { items: profile.sensors, ok: 'pluggedIn', gate: 'sensorsConnected' }),
  confirm('walkRound.hoses', 'hosesGood', { gate: 'walkRoundDone' }),
  confirm('walkRound.boots', 'bootsGood', { gate: 'walkRoundDone' }),
  confirm('walkRound.belts', 'beltsGood', { gate: 'walkRoundDone' }),
  confirm('walkRound.tools', 'toolsOut', { gate: 'walkRoundDone' }),
  confirm('walkRound.wiring', 'wiringGood', { gate: 'walkRoundDone' }),
  confirm('walkRound.fasteners', 'fastenersMarked', { gate: 'walkRoundDone' }),
];
