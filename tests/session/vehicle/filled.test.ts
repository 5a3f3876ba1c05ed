import { describe, expect, it } from 'vitest';
import type { Context } from '../../../machines/context.ts';
import type { Code } from '../../../machines/events.ts';
import { procedureFor } from '../../../machines/first-start.ts';
import type { BusQuantity } from '../../../machines/limits/agreement.ts';
import type { Moment } from '../../../machines/moment.ts';
import { createFiller } from '../../../src/session/vehicle/filling.ts';
import type { VehicleLook } from '../../../src/session/vehicle/vehicle.ts';
import type { Driver } from '../../machines/helpers/driver.ts';
import { demoFour, demoSix } from '../../machines/helpers/profiles.ts';
import { sessionAt } from '../../machines/limits/sessions.ts';

/* What the bus answers by itself, and when. Demo-six lets it give five quantities; the air has to be spoken. */
type Shown = Partial<Record<BusQuantity, number>>;
const showing = (shown: Shown, codes: readonly Code[] | null = null): VehicleLook => ({
  value: quantity => shown[quantity] ?? null,
  lamps: () => ({}),
  codes: () => codes,
  redStop: () => false,
});

const at = (state: string) => sessionAt(demoSix, state);

/** The same moment once more, as after an event that led nowhere; or with something else known. */
const again = (driver: Driver, known: Partial<Context> = {}): Moment =>
  driver.machine.resolveState({
    value: driver.moment.value,
    context: { ...driver.moment.context, ...known },
  });

/** What a filler of its own gives at these seconds, each time for a new moment of the same question. */
function given(driver: Driver, looks: readonly (readonly [seconds: number, look: VehicleLook])[]) {
  const filler = createFiller(procedureFor(driver.profile));
  return looks.map(([s, look]) => {
    const body = filler.next(again(driver), s * 1000, look);
    return body?.type === 'value' ? body.si : body;
  });
}
const once = (driver: Driver, look: VehicleLook) => given(driver, [[0, look]])[0];

describe('a question that one value answers', () => {
  const pressure = (oilPressure: number) => showing({ oilPressure, engineSpeed: 850 });

  it('is answered by it, once for each moment', () => {
    const driver = at('checks.oilPressure.asking');
    const filler = createFiller(procedureFor(demoSix));
    expect(filler.next(driver.moment, 0, pressure(300))).toEqual({
      type: 'value',
      quantity: 'oilPressure',
      si: 300,
    });
    expect(filler.next(driver.moment, 500_000, pressure(300))).toBeNull();
  });

  it('is not answered again within a second of an answer that led nowhere', () => {
    const driver = at('checks.oilPressure.asking');
    expect(
      given(driver, [
        [0, pressure(300)],
        [0.999, pressure(300)],
        [1, pressure(301)],
      ]),
    ).toEqual([300, null, 301]);
  });

  it('is answered once by a value outside its limits, and by such a one again after two minutes', () => {
    const driver = at('checks.oilPressure.asking');
    expect(
      given(driver, [
        [0, pressure(50)],
        [119.9, pressure(50)],
        [120, pressure(51)],
        [130, pressure(300)],
      ]),
    ).toEqual([50, null, 51, 300]);
  });

  it('is not answered by what the bus does not show', () => {
    expect(once(at('checks.oilPressure.asking'), showing({ engineSpeed: 850 }))).toBeNull();
  });

  it('is left to people where the profile wants it spoken, or has no bus, or the bus has no such thing', () => {
    expect(once(at('job.ambient.asking'), showing({ ambientTemperature: 5 }))).toBeNull();
    const four = sessionAt(demoFour, 'checks.oilPressure.asking');
    expect(once(four, pressure(300))).toBeNull();
    expect(once(at('fill.fuelInTank.asking'), pressure(300))).toBeNull();
  });

  it('is left to people while something is held, stopped, over, misheard or doubted', () => {
    const asking = () => at('checks.oilPressure.asking');
    expect(once(asking().send({ type: 'hold' }), pressure(300))).toBeNull();
    expect(once(asking().stop(), pressure(300))).toBeNull();
    expect(once(at('signedOff'), pressure(300))).toBeNull();
    const filler = createFiller(procedureFor(demoSix));
    for (const known of [{ misheard: 1 }, { doubted: { quantity: 'oilPressure', si: 5 } }] as const)
      expect(filler.next(again(asking(), known), 0, pressure(300))).toBeNull();
    expect(filler.next(asking().moment, 0, pressure(300))).not.toBeNull();
  });
});

describe('a question at a speed', () => {
  // The first sweep is at 1000 rpm.
  const driver = () => at('sweeps.first.asking');
  const shown = (engineSpeed: number | undefined, oilPressure = 300) =>
    showing(engineSpeed === undefined ? { oilPressure } : { engineSpeed, oilPressure });

  it('is answered once the speed has been held for two seconds, within 50 rpm', () => {
    for (const rpm of [950, 1000, 1050])
      expect(
        given(driver(), [
          [0, shown(rpm)],
          [1.999, shown(rpm)],
          [2, shown(rpm)],
        ]),
      ).toEqual([null, null, 300]);
    for (const rpm of [949.9, 1050.1, undefined])
      expect(
        given(driver(), [
          [0, shown(rpm)],
          [60, shown(rpm)],
        ]),
      ).toEqual([null, null]);
  });

  it('waits anew where the speed was left meanwhile', () => {
    expect(
      given(driver(), [
        [0, shown(1000)],
        [1, shown(1200)],
        [2, shown(1000)],
        [3.9, shown(1000)],
        [4, shown(1000)],
      ]),
    ).toEqual([null, null, null, null, 300]);
  });

  it('waits anew at the next speed, though this one was held within it', () => {
    const filler = createFiller(procedureFor(demoSix));
    const first = at('sweeps.first.asking');
    const second = at('sweeps.second.asking');
    const next = (driver: Driver, s: number, rpm: number) =>
      filler.next(again(driver), s * 1000, shown(rpm)) !== null;
    expect([next(first, 0, 1000), next(first, 2, 1000)]).toEqual([false, true]);
    expect([next(second, 3, 1200), next(second, 4.9, 1200), next(second, 5, 1200)]).toEqual([
      false,
      false,
      true,
    ]);
  });
});

describe('a series', () => {
  const speed = (engineSpeed: number) => showing({ engineSpeed });

  it('is begun by the first value, and not again within two minutes where that led nowhere', () => {
    expect(
      given(at('checks.idle.item1'), [
        [0, speed(850)],
        [119.9, speed(850)],
        [120, speed(851)],
      ]),
    ).toEqual([850, null, 851]);
  });

  it('is left to people from its second value on, where they began it', () => {
    expect(once(at('checks.idle.item2'), speed(850))).toBeNull();
  });

  it('goes on every two seconds where the bus began it', () => {
    const driver = at('checks.idle.item1');
    driver.send({ type: 'value', quantity: 'engineSpeed', si: 850 }, { via: 'bus' });
    expect(driver.name).toBe('checks.idle.sampling');
    expect(
      given(driver, [
        [0, speed(850)],
        [1.999, speed(851)],
        [2, speed(852)],
      ]),
    ).toEqual([850, null, 852]);
  });
});

describe('a watch', () => {
  const coolant = showing({ coolantTemperature: 40 });

  it('is answered as soon as it asks, and then shortly before it would ask again: by a second and a half', () => {
    const asking = at('warmUp.watch.asking');
    expect(once(asking, coolant)).toBe(40);
    const between = asking.fork([]).value('coolantTemperature', 20).reply('yes');
    expect(between.name).toBe('warmUp.watch.between');
    const { nextLookMs } = between.context;
    if (nextLookMs === null) throw new Error('It would not ask again.');
    const nextS = nextLookMs / 1000;
    expect(
      given(between, [
        [nextS - 1.501, coolant],
        [nextS - 1.5, coolant],
      ]),
    ).toEqual([null, 40]);
  });

  it('is left to people while what was read is read back', () => {
    const readBack = at('warmUp.watch.asking').value('coolantTemperature', 20);
    expect(readBack.name).toBe('warmUp.watch.readingBackValue');
    expect(once(readBack, coolant)).toBeNull();
  });

  it('that reads nothing is left to people', () => {
    expect(once(at('firstFire.oilPressure.asking'), showing({ oilPressure: 300 }))).toBeNull();
  });
});

describe('fault codes', () => {
  const codes = [{ spn: 157, fmi: 18 }];

  it('are given where all of them are asked for, none of them too', () => {
    const asking = at('keyOn.faults.asking');
    expect(once(asking, showing({}, codes))).toEqual({ type: 'codes', codes });
    expect(once(asking, showing({}, []))).toEqual({ type: 'codes', codes: [] });
    expect(once(asking, showing({}))).toBeNull();
  });

  it('are left to people while one is read number by number', () => {
    expect(once(at('keyOn.faults.asking').reply('readACode'), showing({}, codes))).toBeNull();
  });
});
