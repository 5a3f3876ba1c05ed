import type { Profile } from '../../src/profile/schema.ts';
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
];

/** Oil to the bearings by the starter alone: no fuel until pressure shows, and shows again. */
export const noFuelCrankSteps = ({ starter, priming }: Profile): readonly Step[] => [
  confirm('noFuelCrank.disabled', 'fuellingDisabled', { gate: 'fuellingDisabled' }),
  confirm('noFuelCrank.proved', 'provedOff', { gate: 'fuellingDisabled' }),
  crank('noFuelCrank.untilPressure', {
    needs: [...beforeAnyCranking, 'fuellingDisabled'],
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
    needs: [...beforeAnyCranking, 'fuellingDisabled'],
    until: 'oilPressureShows',
    readBack: true,
    gate: 'oilPrimed',
    burst: () => priming.holdS,
    giveUp: { seconds: () => 3 * priming.holdS, cause: 'noOilPressure' },
  }),
  reading('noFuelCrank.voltage', 'crankingVoltage', crankingVoltage, { by: 'second', gate: 'batteryReady' }),
  confirm('noFuelCrank.restored', 'fuellingRestored', { gate: 'fuellingRestored' }),
];
