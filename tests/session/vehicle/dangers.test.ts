import { describe, expect, it } from 'vitest';
import type { Context } from '../../../machines/context.ts';
import { procedureFor } from '../../../machines/first-start.ts';
import type { BusQuantity } from '../../../machines/limits/agreement.ts';
import type { Moment } from '../../../machines/moment.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { createStopper } from '../../../src/session/vehicle/stops.ts';
import { createVanishing } from '../../../src/session/vehicle/vanishing.ts';
import type { VehicleLook } from '../../../src/session/vehicle/vehicle.ts';
import type { Driver } from '../../machines/helpers/driver.ts';
import { demoFour, demoGenset, demoSix } from '../../machines/helpers/profiles.ts';
import { sessionAt } from '../../machines/limits/sessions.ts';

/*
 * Demo-six: stopped at 3000 rpm by its bus; the starter turns it at 150 rpm and it idles warm from 650 on, so that it runs
 * by itself from 400; 8 s to oil pressure. Floor at 20 degC and colder: 150 kPa at 700 rpm, 220 at 1200; at 130 degC: 60 at
 * 400, 90 at 700.
 */
type Shown = Partial<Record<BusQuantity, number>>;

const showing = (shown: Shown, redStop = false): VehicleLook => ({
  value: quantity => shown[quantity] ?? null,
  lamps: () => ({}),
  codes: () => null,
  redStop: () => redStop,
});
const redStop = showing({}, true);

const at = (state: string, profile: Profile = demoSix) => sessionAt(profile, state);
const RUNNING = 'checks.leaks.item1';

/** The same moment with something else known. */
const knowing = (driver: Driver, known: Partial<Context>): Moment =>
  driver.machine.resolveState({
    value: driver.moment.value,
    context: { ...driver.moment.context, ...known },
  });

/** Looks at a bus that shows the same all the time, at these seconds. */
const calledAt = (moment: Moment, look: VehicleLook, seconds: readonly number[], profile = demoSix) => {
  const stopper = createStopper(procedureFor(profile));
  return seconds.map(s => stopper.check(moment, s * 1000, look));
};
const calledAtOnce = (moment: Moment, look: VehicleLook) => calledAt(moment, look, [0])[0];
/** What is called once the seconds to oil pressure are over. */
const calledInTheEnd = (moment: Moment, look: VehicleLook, profile = demoSix) =>
  calledAt(moment, look, [0, 100], profile)[1];

describe('a speed on the bus', () => {
  it('stops the session from that of the profile on, whatever is being done', () => {
    for (const state of [RUNNING, 'job.card.asking', 'firstFire.crank.cranking', 'shutdown.keyOff.asking']) {
      const { moment } = at(state);
      expect(calledAtOnce(moment, showing({ engineSpeed: 2999.9 })), state).toBeNull();
      expect(calledAtOnce(moment, showing({ engineSpeed: 3000 })), state).toBe('overspeed');
    }
  });

  it('stops nothing where the profile names none, and nothing after the end', () => {
    const four = at(RUNNING, demoFour).moment;
    expect(calledAt(four, showing({ engineSpeed: 9000 }), [0], demoFour)).toEqual([null]);
    const over = at('signedOff').moment;
    expect(calledAtOnce(over, showing({ engineSpeed: 9000 }, true))).toBeNull();
  });
});

describe('oil pressure on the bus', () => {
  const none = showing({ engineSpeed: 850, oilPressure: 0 });

  it('has eight seconds from when the engine runs, and not one more', () => {
    const { moment } = at('firstFire.oilPressure.asking');
    expect(calledAt(moment, none, [10, 17.999, 18])).toEqual([null, null, 'noOilPressure']);
  });

  it('has them from when the speed shows that the engine runs by itself, where nobody has said so yet', () => {
    const { moment } = at('firstFire.crank.cranking');
    const turning = (engineSpeed: number) => showing({ engineSpeed, oilPressure: 0 });
    expect(calledAt(moment, turning(399.9), [0, 20])).toEqual([null, null]);
    expect(calledAt(moment, turning(400), [0, 7.999, 8])).toEqual([null, null, 'noOilPressure']);
    const stopper = createStopper(procedureFor(demoSix));
    const check = (s: number, rpm: number) => stopper.check(moment, s * 1000, turning(rpm));
    // It died and ran again: the seconds begin anew.
    expect([check(0, 400), check(5, 100), check(6, 400), check(13.9, 400), check(14, 400)]).toEqual([
      null,
      null,
      null,
      null,
      'noOilPressure',
    ]);
  });

  it('is not missed in an engine that stands, and is in one that turns by itself, whatever is asked', () => {
    for (const state of ['job.card.asking', 'keyOn.faults.asking']) {
      expect(calledInTheEnd(at(state).moment, showing({ engineSpeed: 0, oilPressure: 0 })), state).toBeNull();
      expect(calledInTheEnd(at(state).moment, none), state).toBe('runsUnasked');
    }
    expect(calledInTheEnd(at(RUNNING).moment, showing({ engineSpeed: 399.9, oilPressure: 0 }))).toBeNull();
    expect(calledInTheEnd(at(RUNNING).moment, showing({ engineSpeed: 400, oilPressure: 0 }))).toBe(
      'noOilPressure',
    );
  });

  it('that is not known stops nothing', () => {
    expect(calledInTheEnd(at(RUNNING).moment, showing({ engineSpeed: 850 }))).toBeNull();
  });

  /** Whether so much is enough. */
  const enough = (oilPressure: number, shown: Shown, moment = at(RUNNING).moment) =>
    calledInTheEnd(moment, showing({ ...shown, oilPressure })) === null;

  it('is held against the floor at the speed and the temperature that the bus shows', () => {
    // Half way between the rows: 120 kPa of 700 rpm.
    const warm = { engineSpeed: 700, coolantTemperature: 75 };
    expect([enough(120.1, warm), enough(119.9, warm)]).toEqual([true, false]);
    const hot = { engineSpeed: 400, coolantTemperature: 130 };
    expect([enough(60.1, hot), enough(59.9, hot)]).toEqual([true, false]);
  });

  it('is held against the hottest row where it is hotter still', () => {
    const hotter = { engineSpeed: 700, coolantTemperature: 150 };
    expect([enough(90, hotter), enough(89.9, hotter)]).toEqual([true, false]);
    const [cold, hot] = demoSix.oilPressure.floor;
    if (!cold || !hot) throw new Error('demo-six has two rows.');
    const floor = [
      cold,
      { ...hot, oilC: 80 },
      { ...hot, points: hot.points.map(each => ({ ...each, minKpa: 80 })) },
    ];
    const threeRows = knowing(at(RUNNING), {
      profile: { ...demoSix, oilPressure: { ...demoSix.oilPressure, floor } },
    });
    expect([enough(80, hotter, threeRows), enough(79.9, hotter, threeRows)]).toEqual([true, false]);
  });

  it('goes by the coolant that was read last, else by the air, else by the coldest row', () => {
    const read = (readings: Context['readings']) => knowing(at(RUNNING), { readings });
    const reading = (quantity: 'coolantTemperature' | 'ambientTemperature', si: number) => ({
      quantity,
      si,
      // Of this run of the engine: what was read before has cooled since.
      atMs: at(RUNNING).moment.context.bursts.at(-1)?.endMs ?? 0,
      step: 'job.ambient' as const,
    });
    const speed = { engineSpeed: 700 };
    const warm = read([reading('ambientTemperature', 20), reading('coolantTemperature', 75)]);
    expect([enough(120.1, speed, warm), enough(119.9, speed, warm)]).toEqual([true, false]);
    const summer = read([reading('ambientTemperature', 42)]);
    // A fifth of the way from 150 to 90.
    expect([enough(138.1, speed, summer), enough(137.9, speed, summer)]).toEqual([true, false]);
    const unread = read([]);
    expect([enough(150, speed, unread), enough(149.9, speed, unread)]).toEqual([true, false]);
  });

  it('is held against the slowest warm idle, 650 rpm, where no speed is shown', () => {
    const hot = { coolantTemperature: 130 };
    expect([enough(85.1, hot), enough(84.9, hot)]).toEqual([true, false]);
  });

  it('is missed without a speed too, wherever somebody has only to say that something is so', () => {
    const { moment } = at('firstFire.oilPressure.asking');
    expect(calledInTheEnd(moment, showing({ oilPressure: 0 }))).toBe('noOilPressure');
  });

  it('is held against the ends of the table beyond its speeds', () => {
    const four = at(RUNNING, demoFour).moment;
    const fast = (oilPressure: number) =>
      calledInTheEnd(four, showing({ engineSpeed: 3600, coolantTemperature: 130, oilPressure }), demoFour) ===
      null;
    expect([fast(280), fast(279.9)]).toEqual([true, false]);
    const floor = demoSix.oilPressure.floor.map(({ oilC, points }) => ({ oilC, points: points.slice(2) }));
    const from1200 = knowing(at(RUNNING), {
      profile: { ...demoSix, oilPressure: { ...demoSix.oilPressure, floor } },
    });
    const slow = { engineSpeed: 700, coolantTemperature: 130 };
    expect([enough(180, slow, from1200), enough(179.9, slow, from1200)]).toEqual([true, false]);
  });

  it('goes with an engine that is being turned off: that stands, or of which no speed is shown any more', () => {
    const { moment } = at('shutdown.keyOff.asking');
    expect(calledInTheEnd(moment, showing({ oilPressure: 0 }))).toBeNull();
    expect(calledInTheEnd(moment, showing({ engineSpeed: 300, oilPressure: 0 }))).toBeNull();
    expect(calledInTheEnd(moment, showing({ engineSpeed: 700, oilPressure: 0 }))).toBe('noOilPressure');
  });
});

describe('a red-stop lamp on the bus', () => {
  it('counts from the lamp test until key-off, and whenever the engine turns', () => {
    const counts = (state: string) => calledAtOnce(at(state).moment, redStop);
    for (const state of ['noFuelCrank.untilPressure.cranking', 'keyOn.faults.asking', RUNNING])
      expect(counts(state), state).toBe('faultCode');
    for (const state of ['job.card.asking', 'keyOn.lamps.item1', 'signOff.cool.asking'])
      expect(counts(state), state).toBeNull();
  });
});

describe('a danger', () => {
  const fast = showing({ engineSpeed: 3500 });
  const good = showing({ engineSpeed: 850 });

  it('is called once for as long as it lasts, and again when it comes back', () => {
    const { moment } = at(RUNNING);
    const stopper = createStopper(procedureFor(demoSix));
    const looks = [fast, fast, good, fast, redStop, redStop];
    expect(looks.map((look, s) => stopper.check(moment, s * 1000, look))).toEqual([
      'overspeed',
      null,
      null,
      'overspeed',
      'faultCode',
      null,
    ]);
  });

  it('of a stopped session is overspeed alone, and the others are called again once work goes on', () => {
    const running = at(RUNNING).moment;
    const stopped = at(RUNNING).stop().moment;
    const stopper = createStopper(procedureFor(demoSix));
    const lit = showing({ engineSpeed: 850, oilPressure: 0 }, true);
    expect(stopper.check(running, 0, lit)).toBe('faultCode');
    expect(stopper.check(stopped, 60_000, lit)).toBeNull();
    expect(stopper.check(stopped, 61_000, fast)).toBe('overspeed');
    expect(stopper.check(running, 62_000, lit)).toBe('faultCode');
    // And the seconds to oil pressure begin anew.
    expect(stopper.check(running, 69_999, lit)).toBeNull();
    expect(stopper.check(running, 70_000, lit)).toBe('noOilPressure');
  });
});

describe('a sensor that vanishes', () => {
  const watched = ['engineSpeed', 'oilPressure', 'coolantTemperature'] as const;
  const all = showing({ engineSpeed: 850, oilPressure: 300, coolantTemperature: 80 });
  const vanished = (state: string | Moment, before: VehicleLook = all, now = showing({})) => {
    const moment = typeof state === 'string' ? at(state).moment : state;
    const vanishing = createVanishing(watched, procedureFor(demoSix));
    return [before, now, now].map((look, second) => vanishing.check(moment, look, second));
  };

  it('and that guards a running engine is missed once; one that nobody needs is not', () => {
    expect(vanished(RUNNING)).toEqual([[], ['engineSpeed', 'oilPressure'], []]);
    expect(vanished(RUNNING, all, showing({ engineSpeed: 850 }))).toEqual([[], ['oilPressure'], []]);
  });

  it('is missed too where somebody has only to say that something is so', () => {
    expect(vanished('firstFire.oilPressure.asking')).toEqual([[], ['engineSpeed', 'oilPressure'], []]);
  });

  it('is missed again once it was back', () => {
    const vanishing = createVanishing(watched, procedureFor(demoSix));
    const { moment } = at(RUNNING);
    const looks = [all, showing({}), all, showing({})];
    expect(looks.map((look, second) => vanishing.check(moment, look, second).length)).toEqual([0, 2, 0, 2]);
  });

  it('is missed where it is asked for', () => {
    expect(vanished('checks.coolant.asking', showing({ coolantTemperature: 80 }))).toEqual([
      [],
      ['coolantTemperature'],
      [],
    ]);
  });

  it('and never was there is not missed', () => {
    expect(vanished(RUNNING, showing({}))).toEqual([[], [], []]);
  });

  it('is not missed of an engine that stands, is turned off or was stopped', () => {
    for (const moment of [
      at('job.card.asking').moment,
      at('keyOn.faults.asking').moment,
      at('shutdown.keyOff.asking').moment,
      at(RUNNING).stop().moment,
    ])
      expect(vanished(moment)).toEqual([[], [], []]);
  });
});

describe('an engine that runs where everybody takes it to stand', () => {
  const runs = showing({ engineSpeed: 900, oilPressure: 400, coolantTemperature: 40 });
  const secondsFrom = (moment: Moment, look: VehicleLook, profile = demoSix) =>
    calledAt(moment, look, [0, 1, 2, 2.9, 3, 60], profile);

  it.each([
    'job.card.asking',
    'fill.fuelInTank.asking',
    'barOver.turned.asking',
    'keyOn.faults.asking',
    'firstRun.oilLevel.dipstick',
    'firstRun.look.item1',
    'shutdown.firstSoak.counting',
    'shutdown.firstLook.item1',
    'signOff.oilLevel.dipstick',
    'signOff.sign.asking',
  ])('in %s is called out within seconds, once', state => {
    expect(secondsFrom(at(state).moment, runs)).toEqual([null, null, null, null, 'runsUnasked', null]);
  });

  it('is one from where it runs by itself on, not by the starter that bars it, nor a bus that tells no speed', () => {
    const { moment } = at('barOver.turned.asking');
    expect(calledInTheEnd(moment, showing({ engineSpeed: 400, oilPressure: 400 }))).toBe('runsUnasked');
    for (const shown of [
      { engineSpeed: 399 },
      { engineSpeed: 150, oilPressure: 100 },
      { oilPressure: 400 },
      {},
    ])
      expect(secondsFrom(moment, showing(shown))).toEqual([null, null, null, null, null, null]);
  });

  it('has the time of a key to run down, and late frames bring nothing', () => {
    const { moment } = at('firstRun.drain.counting');
    const stopper = createStopper(procedureFor(demoSix));
    for (const s of [0, 1, 2]) expect(stopper.check(moment, s * 1000, runs)).toBeNull();
    expect(stopper.check(moment, 2900, showing({ engineSpeed: 300 }))).toBeNull();
    // A single frame, much later.
    expect(stopper.check(moment, 30_000, runs)).toBeNull();
    expect(stopper.check(moment, 30_500, showing({}))).toBeNull();
    expect(stopper.check(moment, 40_000, runs)).toBeNull();
    expect(stopper.check(moment, 42_000, runs)).toBe('runsUnasked');
  });

  it('is stopped on hold as well, and not once more while it is being stopped', () => {
    const driver = at('firstRun.look.item1').send({ type: 'hold' });
    expect(calledInTheEnd(driver.moment, runs)).toBe('runsUnasked');
    expect(calledInTheEnd(at('firstRun.look.item1').stop().moment, runs)).toBeNull();
  });

  it('is nothing amiss of a set that has been given back its automatic start, and is before', () => {
    for (const state of ['signOff.handBack.asking', 'signOff.sign.asking'])
      expect(secondsFrom(at(state, demoGenset).moment, runs, demoGenset), state).not.toContain('runsUnasked');
    const before = at('signOff.oilLevel.dipstick', demoGenset).moment;
    expect(secondsFrom(before, runs, demoGenset)).toContain('runsUnasked');
  });
});
