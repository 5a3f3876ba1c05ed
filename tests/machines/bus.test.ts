import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import { busQuantities } from '../../src/profile/schema.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import { Driver } from './helpers/driver.ts';
import { isCrankingState, isRunningState } from './helpers/oracle.ts';
import { changed, demoFour, demoSix } from './helpers/profiles.ts';

const SEED = 20_261_125;
const BUS = { via: 'bus' } as const;

const number = fc.oneof(
  fc.double({ min: -50, max: 4000 }),
  fc.constantFrom(0, 5, 12.6, 14.2, 85, 280, 850, Number.NaN, Number.POSITIVE_INFINITY),
);
const byBus: fc.Arbitrary<EventBody> = fc.oneof(
  fc.record({ type: fc.constant('value' as const), quantity: fc.constantFrom(...busQuantities), si: number }),
  fc.record({
    type: fc.constant('codes' as const),
    codes: fc.array(fc.record({ spn: fc.nat(524_287), fmi: fc.nat(31) }), { maxLength: 3 }),
  }),
);

/** An all-good start wherever the bus has something to answer, and at every tenth event besides. */
const starts = (() => {
  const driver = new Driver(demoSix);
  const points: Driver[] = [];
  for (let turn = 0; !driver.over; turn += 1) {
    const { quantity } = offerOf(driver.moment);
    const answers = busQuantities.some(each => each === quantity) || driver.name.endsWith('.faults.asking');
    if (answers || turn % 10 === 0) points.push(driver.fork([]));
    driver.good();
  }
  return points;
})();

describe('what comes over the bus', () => {
  it(`opens no gate, turns no starter and says nothing of an engine that fired, in any order (seed ${SEED})`, () => {
    let changes = 0;
    fc.assert(
      fc.property(
        fc.nat(starts.length - 1),
        fc.array(byBus, { minLength: 1, maxLength: 12 }),
        (place, bodies) => {
          const driver = starts[place]?.fork([]);
          if (!driver) throw new Error('There is no such place.');
          for (const body of bodies) {
            const [from, ran] = [driver.name, isRunningState(driver.name)];
            driver.send(body, BUS);
            if (driver.name !== from) changes += 1;
            expect(driver.last.notes.filter(({ kind, data }) => kind === 'passed' && data.gate)).toEqual([]);
            expect(isCrankingState(driver.name) && driver.name !== from).toBe(false);
            expect(isRunningState(driver.name) && !ran).toBe(false);
          }
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
    // It does answer questions, or this would prove nothing.
    expect(changes).toBeGreaterThan(15);
  });

  it('answers nothing that the profile wants spoken', () => {
    const { bus } = demoSix;
    if (!bus) throw new Error('demo-six has no bus.');
    const spoken = changed(demoSix, { bus: { ...bus, spoken: [...bus.readings] } });
    const driver = new Driver(spoken).goodUntil('checks.coolant.asking');
    driver.value('coolantTemperature', 40, BUS);
    expect(driver.name).toBe('checks.coolant.asking');
  });

  it('answers nothing on an engine without a bus', () => {
    const driver = new Driver(demoFour).goodUntil('checks.coolant.asking');
    driver.value('coolantTemperature', 40, BUS);
    expect(driver.name).toBe('checks.coolant.asking');
  });

  it('answers nothing where something was misunderstood: there people are heard', () => {
    const driver = new Driver(demoSix).goodUntil('checks.coolant.asking').send({ type: 'unclear' });
    driver.value('coolantTemperature', 40, BUS);
    expect(driver.name).toBe('checks.coolant.asking');
  });

  it('stops the session where a value is outside what the engine may have', () => {
    const driver = new Driver(demoSix).goodUntil('checks.oilPressure.asking').value('oilPressure', 20, BUS);
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop?.cause).toBe('noOilPressure');
    const hot = new Driver(demoSix).goodUntil('warmUp.watch.between').value('coolantTemperature', 120, BUS);
    expect(hot.context.stop?.cause).toBe('overheating');
  });

  it('in a series that falls, asks for the series once more', () => {
    const driver = new Driver(demoSix).goodUntil('checks.idle.item1');
    for (const rpm of [960, 900, 840, 780, 720]) driver.value('engineSpeed', rpm, { ...BUS, afterMs: 2000 });
    expect(driver.name).toBe('checks.idle.item1');
    expect(driver.notes.findLast(({ kind }) => kind === 'verdict')?.data).toMatchObject({
      met: false,
      via: 'bus',
    });
    // An alarm that outlives its state would ring for ever.
    expect(driver.context.nextLookMs).toBeNull();
  });
});
