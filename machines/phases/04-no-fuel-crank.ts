import type { LineId } from '../../prompts/types.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { OUTCOME_WITHIN_S } from '../kinds/crank.ts';
import { crankingVoltage } from '../limits/electrics.ts';
import { earliestPressure, primingSeconds } from '../limits/oil.ts';
import { confirm, crank, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import type { Gate } from '../vocabulary.ts';

/** What has to be true before the starter turns the engine at all. */
export const beforeAnyCranking: readonly Gate[] = [
  'stopWordsProved',
  'peopleSafe',
  'coolantReady',
  'oilReady',
  'sensorsConnected',
  'walkRoundDone',
  'turnsFreely',
];

const beforeThisCranking: readonly Gate[] = [...beforeAnyCranking, 'fuellingDisabled', 'batteryUnderLoad'];

/**
 * How an engine is kept from firing, and how that is proved. A high-pressure pump that is turned dry is ruined, so the
 * feed stays open and primed. Common practice, no published source.
 */
const disabling = {
  electric: 'disableElectric',
  lever: 'disableLever',
  solenoid: 'disableSolenoid',
  stopSolenoid: 'disableStopSolenoid',
} as const satisfies Record<Profile['fuelling']['disabledBy'], LineId>;
const proving = {
  electric: 'proveElectric',
  lever: 'proveLever',
  solenoid: 'proveSolenoid',
  // Without current it lets the engine fuel: no click would tell nothing.
  stopSolenoid: 'proveLever',
} as const satisfies Record<Profile['fuelling']['disabledBy'], LineId>;

/** Oil to the bearings by the starter alone: no fuel until pressure shows, and shows again. */
export const noFuelCrankSteps = ({ starter, priming, fuelling }: Profile): readonly Step[] => [
  confirm('noFuelCrank.disabled', 'fuellingDisabled', {
    gate: 'fuellingDisabled',
    values: () => ({ how: { line: disabling[fuelling.disabledBy], values: { at: fuelling.at } } }),
  }),
  confirm('noFuelCrank.proved', 'provedOff', {
    gate: 'fuellingDisabled',
    values: () => ({ proof: { line: proving[fuelling.disabledBy], values: { at: fuelling.at } } }),
  }),
  // A weak battery is found here, not at the end of a long burst that slows down and tells nothing.
  reading('noFuelCrank.batteryLoad', 'crankingVoltage', crankingVoltage, { gate: 'batteryUnderLoad' }),
  crank('noFuelCrank.untilPressure', {
    needs: beforeThisCranking,
    announces: () => [
      { line: 'sayInTime', values: { time: { unit: 's', si: OUTCOME_WITHIN_S } } },
      { line: 'watchVoltage', values: {} },
    ],
    until: 'oilPressureShows',
    readBack: true,
    gate: 'oilPrimed',
    earliest: earliestPressure,
    burst: () => starter.longestBurstS,
    giveUp: {
      seconds: context => {
        const time = primingSeconds(context);
        return time.ok ? time.value.giveUpS : starter.longestBurstS;
      },
      cause: 'noOilPressure',
    },
    values: context => {
      const time = primingSeconds(context);
      return { expected: time.ok ? { unit: 's', si: time.value.expectedS } : { issue: time.issue } };
    },
  }),
  crank('noFuelCrank.holds', {
    needs: beforeThisCranking,
    until: 'oilPressureShows',
    readBack: true,
    gate: 'oilPrimed',
    burst: () => priming.holdS,
    giveUp: { seconds: () => 3 * priming.holdS, cause: 'noOilPressure' },
  }),
  reading('noFuelCrank.voltage', 'crankingVoltage', crankingVoltage, {
    by: 'second',
    gate: 'batteryReady',
    notMeasured: { again: 'noFuelCrank.holds' },
  }),
  // The galleries hold now what the sump held before.
  confirm('noFuelCrank.oilLevel', 'levelGood', { gate: 'oilPrimed', dipstick: true }),
  confirm('noFuelCrank.restored', 'fuellingRestored', { gate: 'fuellingRestored' }),
];
