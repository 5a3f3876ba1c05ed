import { describe, expect, it } from 'vitest';
import type { Context } from '../../../machines/context.ts';
import { procedureFor } from '../../../machines/first-start.ts';
import { gateMet } from '../../../machines/progress.ts';
import type { Gate } from '../../../machines/vocabulary.ts';
import type { StepId } from '../../../prompts/types.ts';
import type { Driver } from '../helpers/driver.ts';
import { anyCranking, firing } from '../helpers/gates-by-hand.ts';
import { demoBoat, demoFour, demoGenset, demoSix } from '../helpers/profiles.ts';
import { sessionAt } from './sessions.ts';

/** The steps behind each gate, listed by hand; the two engines differ in filters and heater. */
const behind: Readonly<Record<Gate, readonly StepId[]>> = {
  stopWordsProved: ['job.stopTechnician', 'job.stopSecond'],
  peopleSafe: [
    'job.protection',
    'job.hazards',
    'job.ventilation',
    'job.extinguisher',
    'job.parked',
    'job.autoStart',
    'job.breaker',
    'job.gearLever',
    'job.coupling',
    'job.cutOff',
  ],
  coolantReady: [
    'job.figures',
    'fill.jacketHeater',
    'fill.coolantCool',
    'fill.coolantMix',
    'fill.coolantFilled',
    'fill.coolantBled',
  ],
  oilReady: ['fill.oilGrade', 'fill.oilFilterPreFilled', 'fill.oilFilterDry', 'fill.oilLevel'],
  fuelReady: ['fill.fuelGrade', 'fill.firstFilterPreFilled', 'fill.firstFilterDry', 'fill.secondFilterDry'],
  fuelPrimed: ['prime.firm', 'prime.screwedHome', 'prime.electricBled', 'prime.noWeeps'],
  sensorsConnected: ['walkRound.sensors'],
  walkRoundDone: [
    'walkRound.hoses',
    'walkRound.boots',
    'walkRound.belts',
    'walkRound.tools',
    'walkRound.wiring',
    'walkRound.fasteners',
    'walkRound.rawWater',
    'walkRound.strainer',
  ],
  fuellingDisabled: ['noFuelCrank.disabled', 'noFuelCrank.proved'],
  oilPrimed: ['noFuelCrank.untilPressure', 'noFuelCrank.holds', 'noFuelCrank.oilLevel'],
  fuellingRestored: ['noFuelCrank.restored'],
  batteryReady: ['noFuelCrank.voltage'],
  lampsRight: ['keyOn.lamps'],
  heaterHoldDone: ['keyOn.heaterHold', 'keyOn.heaterDone'],
  rawWaterShut: ['keyOn.rawWater'],
  regenerationOff: ['keyOn.regeneration'],
  noBlockingFault: ['keyOn.faults'],
  // Asked for before each burst, and held by no step.
  secondPersonClear: [],
  turnsFreely: [
    'barOver.isolated',
    'barOver.prelube',
    'barOver.turboFeed',
    'barOver.turned',
    'barOver.toolOut',
  ],
  // At rest only where there was no tester: tests/machines/no-tester.test.ts.
  batteryUnderLoad: ['noFuelCrank.batteryLoad', 'noFuelCrank.batteryRest'],
  inManual: ['noFuelCrank.manual'],
  nothingAmiss: ['firstFire.rawWater', 'firstFire.eyes'],
  firstRunSeen: ['firstRun.oilLevel', 'firstRun.look', 'firstRun.rawWater'],
  restarted: ['firstRun.restart'],
  engineFired: ['firstFire.crank'],
  oilPressureShown: [
    'firstFire.oilPressure',
    'firstFire.lamps',
    'firstFire.warningLamp',
    'firstRun.oilPressure',
    'firstRun.rawWaterOpen',
    'checks.oilPressure',
  ],
  noLeaks: ['checks.leaks'],
  noLeaksAfter: ['shutdown.firstLook', 'shutdown.secondLook', 'shutdown.thirdLook'],
  coolEnough: ['signOff.cool'],
  coldLevels: ['signOff.oilLevel', 'signOff.coolantLevel', 'signOff.steeringLevel'],
  handedBack: ['signOff.handBack'],
  signature: ['signOff.sign'],
};

const cranks = [
  {
    profile: demoSix,
    step: 'noFuelCrank.untilPressure',
    needs: [...anyCranking, 'fuellingDisabled', 'batteryUnderLoad'],
  },
  {
    profile: demoSix,
    step: 'noFuelCrank.holds',
    needs: [...anyCranking, 'fuellingDisabled', 'batteryUnderLoad'],
  },
  { profile: demoSix, step: 'firstFire.crank', needs: [...firing, 'heaterHoldDone'] },
  { profile: demoSix, step: 'firstRun.restart', needs: [...firing, 'heaterHoldDone', 'firstRunSeen'] },
  { profile: demoFour, step: 'firstFire.crank', needs: firing },
  {
    profile: demoGenset,
    step: 'noFuelCrank.untilPressure',
    needs: [...anyCranking, 'inManual', 'fuellingDisabled', 'batteryUnderLoad'],
  },
  { profile: demoGenset, step: 'firstFire.crank', needs: [...firing, 'inManual', 'regenerationOff'] },
  {
    profile: demoBoat,
    step: 'noFuelCrank.untilPressure',
    needs: [...anyCranking, 'fuellingDisabled', 'batteryUnderLoad'],
  },
  { profile: demoBoat, step: 'firstFire.crank', needs: [...firing, 'heaterHoldDone', 'rawWaterShut'] },
  {
    profile: demoBoat,
    step: 'firstRun.restart',
    needs: [...firing, 'heaterHoldDone', 'rawWaterShut', 'firstRunSeen'],
  },
] as const satisfies readonly { step: StepId; needs: readonly Gate[]; profile: unknown }[];

/** They apply only once it has run, and where no tester was at hand. */
const onlyThen: readonly StepId[] = ['fill.coolantCool', 'noFuelCrank.batteryRest'];

/** The same session with one step taken off the list of what is done, as no path of the machine leads to. */
function without(driver: Driver, missing: StepId, child?: string): Driver {
  const { moment, machine } = driver;
  const context: Context = { ...moment.context, done: moment.context.done.filter(id => id !== missing) };
  const [phase = '', step = ''] = driver.context.step.split('.');
  const value = child === undefined ? moment.value : { procedure: { [phase]: { [step]: child } } };
  driver.moment = machine.resolveState({ value, context });
  return driver;
}

describe.each(cranks)('before $step of $profile.name', ({ profile, step, needs }) => {
  const own = new Set(procedureFor(profile).map(({ id }) => id));
  const each = needs.flatMap(gate =>
    behind[gate].flatMap(missing =>
      // Asked for only then: tests/machines/restarts.test.ts, no-tester.test.ts.
      own.has(missing) && !onlyThen.includes(missing) ? [[gate, missing] as const] : [],
    ),
  );

  it('the starter turns when every gate is met', () => {
    expect(sessionAt(profile, `${step}.ready`).reply('ready').name).toBe(`${step}.cranking`);
  });

  it.each(each)('it does not turn while %s lacks %s, though all was ready', (_, missing) => {
    const driver = without(sessionAt(profile, `${step}.ready`), missing).reply('ready');
    expect(driver.name).toBe(`${step}.refused`);
    const bursts = driver.context.bursts.filter(burst => burst.step === step);
    expect(bursts).toEqual([]);
  });

  it.each(each)('%s without %s is refused by name, and asked again as long as it lacks', (gate, missing) => {
    const at = sessionAt(profile, `${step}.ready`);
    const driver = without(at, missing, 'refused').reply('ready');
    expect(driver.name).toBe(`${step}.refused`);
    expect(driver.notes.findLast(({ kind }) => kind === 'refused')?.data).toEqual({ step, unmet: [gate] });
    expect(driver.last.said.find(({ line }) => line === 'gateClosed')?.values).toEqual({
      gates: { list: [{ gate }] },
    });
  });

  it('what was refused goes on once the gate is met', () => {
    const driver = without(sessionAt(profile, `${step}.ready`), step, 'refused').reply('ready');
    expect(driver.name).toMatch(/\.(askingClear|resting)$/);
  });
});

describe('a gate', () => {
  it.each([demoSix, demoFour, demoGenset, demoBoat])(
    'is held by the steps listed here and no others: $name',
    profile => {
      const steps = procedureFor(profile);
      const own = new Set(steps.map(({ id }) => id));
      for (const [gate, listed] of Object.entries(behind)) {
        const holders = steps.filter(step => step.gate === gate).map(({ id }) => id);
        expect(holders, gate).toEqual(listed.filter(id => own.has(id)));
      }
    },
  );

  it('that no step holds is never met', () => {
    const { context } = sessionAt(demoSix, 'signedOff');
    expect(gateMet(procedureFor(demoSix), context, 'secondPersonClear')).toBe(false);
    expect(gateMet([], context, 'coolantReady')).toBe(false);
  });

  it('needs no step that does not apply in this weather', () => {
    const steps = procedureFor(demoSix);
    const { context } = sessionAt(demoSix, 'firstFire.crank.askingClear', { ambientTemperature: 25 });
    expect(context.done).not.toContain('keyOn.heaterHold');
    expect(gateMet(steps, context, 'heaterHoldDone')).toBe(true);
  });
});
