import type { LineId } from '../../prompts/types.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { modeSwitchOf } from '../controls.ts';
import { OUTCOME_WITHIN_S } from '../kinds/deadline.ts';
import { batteryAtRest, crankingVoltage } from '../limits/electrics.ts';
import { earliestPressure, primingSeconds } from '../limits/oil.ts';
import { confirm, crank, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import type { Gate } from '../vocabulary.ts';

/** What has to be true before the starter turns the engine at all. */
export const beforeAnyCranking = (profile: Profile): readonly Gate[] => [
  'stopWordsProved',
  'peopleSafe',
  'coolantReady',
  'oilReady',
  'sensorsConnected',
  'walkRoundDone',
  'turnsFreely',
  ...inManual(profile),
];

/** The mode switch of a set was put to manual, and is not where it starts by itself. */
const inManual = (profile: Profile): readonly Gate[] => (modeSwitchOf(profile) === null ? [] : ['inManual']);

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

/** An engine that fires then fuels all the same, or burns what is in its inlet. Common practice, no published source. */
const mustNotFire = { reply: 'fired', cause: 'firedUnfuelled' } as const;
const ifItFires = { line: 'ifItFires', values: {} } as const;

/** Locked out until now, its mode switch starts it by hand from here on; what it is in is asked before each new try. */
function manualSteps(profile: Profile): readonly Step[] {
  const at = modeSwitchOf(profile);
  return at === null
    ? []
    : [confirm('noFuelCrank.manual', 'inManual', { gate: 'inManual', values: () => ({ at }) })];
}

/** Oil to the bearings by the starter alone: no fuel until pressure shows, and shows again. */
export function noFuelCrankSteps(profile: Profile): readonly Step[] {
  const { starter, priming, fuelling } = profile;
  const needs: readonly Gate[] = [...beforeAnyCranking(profile), 'fuellingDisabled', 'batteryUnderLoad'];
  return [
    confirm('noFuelCrank.disabled', 'fuellingDisabled', {
      gate: 'fuellingDisabled',
      values: () => ({ how: { line: disabling[fuelling.disabledBy], values: { at: fuelling.at } } }),
    }),
    confirm('noFuelCrank.proved', 'provedOff', {
      gate: 'fuellingDisabled',
      values: () => ({ proof: { line: proving[fuelling.disabledBy], values: { at: fuelling.at } } }),
    }),
    // A weak battery is found here, not at the end of a long burst that slows down and tells nothing. Its floor is that of
    // half the cold-cranking current: lamps and a blower draw a twentieth of it, and a dying battery holds that.
    reading('noFuelCrank.batteryLoad', 'crankingVoltage', crankingVoltage, {
      gate: 'batteryUnderLoad',
      without: 'noTester',
    }),
    // Then the starter is its load, and the voltage while it cranks the gate.
    reading('noFuelCrank.batteryRest', 'batteryVoltage', batteryAtRest, {
      gate: 'batteryUnderLoad',
      when: ({ without }) => without.includes('noFuelCrank.batteryLoad'),
    }),
    ...manualSteps(profile),
    crank('noFuelCrank.untilPressure', {
      needs,
      trouble: mustNotFire,
      announces: () => [
        ifItFires,
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
      needs,
      trouble: mustNotFire,
      announces: () => [ifItFires],
      until: 'oilPressureShows',
      readBack: true,
      gate: 'oilPrimed',
      burst: () => priming.holdS,
      heldS: () => priming.holdS,
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
}
