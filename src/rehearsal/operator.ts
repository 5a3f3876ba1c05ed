import { heaterSeconds } from '../../machines/limits/electrics.ts';
import { type Moment, offerOf } from '../../machines/moment.ts';
import { sweepRpm } from '../../machines/phases/numbered.ts';
import { leftMs } from '../../machines/timing.ts';
import type { PhaseId, StepId } from '../../prompts/types.ts';
import type { Profile } from '../profile/schema.ts';
import type { Controls } from './model/controls.ts';

/** Steps that are done with the key on, in the order of the procedure; those before and after have it off. */
const keyOnPhases: readonly string[] = [
  'keyOn',
  'firstFire',
  'checks',
  'warmUp',
  'sweeps',
] satisfies PhaseId[];
const keyOnSteps: readonly string[] = [
  'firstRun.run',
  'firstRun.runUnloaded',
  'firstRun.restart',
  'firstRun.oilPressure',
  'firstRun.rawWaterOpen',
  'shutdown.settle',
  'shutdown.settleUnloaded',
  'shutdown.coolant',
] satisfies StepId[];
const keyOffSteps: readonly string[] = ['keyOn.battery'] satisfies StepId[];

/** A hand turns a key off and on within this; a bus that falls silent for so long is not missed yet. */
const KEY_TURN_MS = 1000;

/** A heater works anew each time the key is turned on: where its wait begins, and where a rest before the next burst ends. */
function turnsKeyForHeater(moment: Moment, nowMs: number): boolean {
  const { context } = moment;
  const left = leftMs(context, nowMs);
  if (context.timer === null || left === null || offerOf(moment).awaits !== 'time') return false;
  if (context.step === 'keyOn.heaterHold') return context.timer.totalMs - left < KEY_TURN_MS;
  const rests = moment.hasTag('starting') && !context.step.startsWith('noFuelCrank.');
  return rests && heaterSeconds(context) > 0 && left <= KEY_TURN_MS;
}

/** The speed that is held there, rpm; null where the engine is left to its idle. */
function demandAt(step: StepId, before: Controls, profile: Profile): number | null {
  if (step === 'warmUp.fastIdle') return profile.warmUp.fastIdleRpm ?? null;
  // Nobody was told to come down yet, and at idle a cold hose may never get hot.
  if (step === 'warmUp.hose') return before.demandRpm;
  return sweepRpm(step, profile) ?? null;
}

/**
 * What the people at the engine do, going by where the procedure is: they do what it asks when it asks. On hold
 * everything stays as it is; on a stop everything goes off.
 * @param nowMs session time
 */
export function controlsAt(moment: Moment, before: Controls, profile: Profile, nowMs: number): Controls {
  if (moment.matches('held')) return before;
  const off: Controls = {
    ...before,
    keyOn: false,
    starter: false,
    demandRpm: null,
    pumpingByHand: false,
    bleeding: false,
    steering: false,
  };
  if (moment.matches('stopped') || moment.status === 'done') return off;
  const { step } = moment.context;
  const [phase = ''] = step.split('.');
  const starter = offerOf(moment).awaits === 'starter';
  const fuelOff = phase === 'noFuelCrank' && step !== 'noFuelCrank.restored';
  return {
    keyOn:
      starter ||
      (!turnsKeyForHeater(moment, nowMs) &&
        ((before.keyOn && moment.hasTag('starting')) ||
          (keyOnPhases.includes(phase) && !keyOffSteps.includes(step)) ||
          keyOnSteps.includes(step))),
    starter,
    fuelling: !fuelOff,
    demandRpm: demandAt(step, before, profile),
    pumpingByHand: step === 'prime.strokes' || step === 'prime.electric' || step === 'prime.electricBled',
    bleeding: step === 'fill.coolantBleed' || step === 'fill.coolantBled',
    steering: step === 'warmUp.steeringLocks',
    oilFilled: before.oilFilled || step === 'fill.oilQuantity',
    // Asked together with its mix, it is in by the time that it is bled.
    coolantFilled: before.coolantFilled || step === 'fill.coolantFilled' || step === 'fill.coolantBleed',
  };
}
