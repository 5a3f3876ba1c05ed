import { describe, expect, it } from 'vitest';
import { quantities } from '../../../src/engineering/quantities/table.ts';
import { busQuantities } from '../../../src/profile/schema.ts';
import { withSight } from '../../../src/session/vehicle/sight.ts';
import { createThinning } from '../../../src/session/vehicle/thinning.ts';
import { createVehicle, type VehicleLook } from '../../../src/session/vehicle/vehicle.ts';
import { dm1Frame, parameterFrame } from '../../helpers/bus-rig.ts';
import { demoSix } from '../../machines/helpers/profiles.ts';

const nothing: VehicleLook = {
  value: () => null,
  lamps: () => ({}),
  codes: () => null,
  redStop: () => false,
};

describe('what goes on the record of all that the bus says', () => {
  function thinning() {
    const thin = createThinning(['engineSpeed', 'oilPressure']);
    return (seconds: number, speed: number | null, running = true, pressure: number | null = null) =>
      thin
        .due(seconds * 1000, running, {
          ...nothing,
          value: quantity => (quantity === 'engineSpeed' ? speed : pressure),
        })
        .map(({ quantity, si }) => [quantity, si]);
  }

  it('is what is first seen of each, and nothing of what is not there', () => {
    const due = thinning();
    expect(due(0, 800)).toEqual([['engineSpeed', 800]]);
    expect(due(0.1, null)).toEqual([]);
    expect(due(0.2, 800, true, 300)).toEqual([['oilPressure', 300]]);
  });

  it('is a change that is worth it, up or down: 50 rpm, at most once a second', () => {
    for (const [to, kept] of [
      [850, true],
      [849.9, false],
      [750, true],
      [750.1, false],
    ] as const) {
      const due = thinning();
      due(0, 800);
      expect(due(0.999, to), 'too soon').toEqual([]);
      expect(due(1, to)).toEqual(kept ? [['engineSpeed', to]] : []);
    }
  });

  it('is measured from what was kept last', () => {
    const due = thinning();
    due(0, 800);
    due(1, 860);
    expect(due(2, 900)).toEqual([]);
    expect(due(3, 910)).toEqual([['engineSpeed', 910]]);
  });

  it('is, while the engine runs, what stays the same too: once a minute', () => {
    const running = thinning();
    running(0, 800);
    expect(running(59.999, 800)).toEqual([]);
    expect(running(60, 800)).toEqual([['engineSpeed', 800]]);
    const standing = thinning();
    standing(0, 0, false);
    expect(standing(600, 0, false)).toEqual([]);
  });

  it('is weighed for each quantity by itself', () => {
    for (const quantity of busQuantities) {
      const { worth } = quantities[quantity].bus;
      const thin = createThinning([quantity]);
      const due = (ms: number, si: number) => thin.due(ms, false, { ...nothing, value: () => si }).length;
      due(0, 64);
      expect(due(1000, 64 + 0.9 * worth), quantity).toBe(0);
      expect(due(2000, 64 + 1.1 * worth), quantity).toBe(1);
    }
  });
});

describe('what stands beside an answer', () => {
  const look: VehicleLook = {
    value: quantity => (quantity === 'engineSpeed' ? 800 : null),
    lamps: () => ({ redStop: 'dark' }),
    codes: () => [{ spn: 157, fmi: 18 }],
    redStop: () => false,
  };

  it('is the value that the bus shows of the same quantity', () => {
    const value = { type: 'value', quantity: 'engineSpeed', si: 810 } as const;
    expect(withSight(value, look)).toEqual({ ...value, bus: { si: 800 } });
    for (const quantity of ['oilPressure', 'altitude'] as const)
      expect(withSight({ ...value, quantity }, look)).toEqual({ ...value, quantity });
  });

  it.each([
    'lit',
    'dark',
    'firstLamps',
    'secondLamps',
    'thirdLamps',
    'firstLampsRunning',
    'secondLampsRunning',
    'thirdLampsRunning',
  ] as const)('is the lamps, where lamps are told: %s', id => {
    expect(withSight({ type: 'reply', id }, look)).toEqual({
      type: 'reply',
      id,
      bus: { lamps: { redStop: 'dark' } },
    });
  });

  it.each(['noCodes', 'noMoreCodes', 'faultCleared'] as const)(
    'is the codes where it is said that none is left, unless they are not all known: %s',
    id => {
      const reply = { type: 'reply', id } as const;
      expect(withSight(reply, look)).toEqual({ ...reply, bus: { codes: [{ spn: 157, fmi: 18 }] } });
      expect(withSight(reply, nothing)).toEqual(reply);
    },
  );

  it.each(['allOff', 'engineOff'] as const)('is the speed where the engine is said to stand: %s', id => {
    expect(withSight({ type: 'reply', id }, look)).toEqual({ type: 'reply', id, bus: { speedRpm: 800 } });
    expect(withSight({ type: 'reply', id }, nothing)).toEqual({ type: 'reply', id });
  });

  it('is what else an engine that runs shows, too: beside "correct" in a stop as well, and in no other', () => {
    const shown: Partial<Record<string, number>> = { oilPressure: 300, chargingVoltage: 28.4 };
    const running: VehicleLook = { ...nothing, value: quantity => shown[quantity] ?? null };
    const bus = { oilPressureKpa: 300, chargingV: 28.4 };
    for (const id of ['allOff', 'engineOff'] as const)
      expect(withSight({ type: 'reply', id }, running)).toEqual({ type: 'reply', id, bus });
    const yes = { type: 'reply', id: 'yes' } as const;
    expect(withSight(yes, running, true)).toEqual({ ...yes, bus });
    expect(withSight(yes, nothing, true)).toEqual(yes);
    expect(withSight(yes, running)).toEqual(yes);
  });

  it('is nothing beside anything else', () => {
    for (const body of [
      { type: 'reply', id: 'yes' },
      { type: 'stop' },
      { type: 'hold' },
      { type: 'unclear' },
      { type: 'reason', text: 'lit' },
    ] as const)
      expect(withSight(body, look)).toEqual(body);
  });
});

describe('what the vehicle shows', () => {
  function vehicle(readings = demoSix.bus?.readings ?? []) {
    let nowS = 100;
    let heard = 0;
    const { bus } = demoSix;
    if (!bus) throw new Error('demo-six has a bus.');
    const shown = createVehicle(
      { ...bus, readings },
      () => nowS,
      () => {
        heard += 1;
      },
    );
    return {
      shown,
      heard: () => heard,
      pass: (seconds: number) => {
        nowS += seconds;
        shown.tick();
      },
    };
  }

  it('is fresh, good and of its own engine, and else nothing', () => {
    const { shown, pass } = vehicle();
    expect(shown.value('engineSpeed')).toBeNull();
    shown.push(parameterFrame(190, 800));
    expect(shown.value('engineSpeed')).toBe(800);
    shown.push(parameterFrame(190, 900, 3));
    expect(shown.value('engineSpeed')).toBe(800);
    shown.push(parameterFrame(190, 'error'));
    expect(shown.value('engineSpeed')).toBeNull();
    shown.push(parameterFrame(190, 800));
    shown.push(parameterFrame(190, 'notAvailable'));
    expect(shown.value('engineSpeed')).toBeNull();
    shown.push(parameterFrame(190, 800));
    pass(60);
    expect(shown.value('engineSpeed')).toBeNull();
  });

  it('is none of what the profile does not list', () => {
    const { shown } = vehicle(['oilPressure']);
    shown.push(parameterFrame(190, 800));
    expect(shown.value('engineSpeed')).toBeNull();
  });

  it('calls for a look at what a session acts on, and at nothing else', () => {
    const { shown, heard } = vehicle();
    shown.push(parameterFrame(190, 800));
    expect(heard()).toBe(1);
    // Engine hours.
    shown.push(parameterFrame(247, 100));
    expect(heard()).toBe(1);
    shown.push(dm1Frame(null));
    expect(heard()).toBe(2);
    shown.push(dm1Frame(null, {}, 3));
    expect(heard()).toBe(2);
  });

  it('is each lamp that can be known, lit or dark', () => {
    const { shown } = vehicle();
    expect(shown.lamps()).toEqual({});
    shown.push(dm1Frame(null, { redStop: true }));
    const four = { malfunction: 'dark', redStop: 'lit', amberWarning: 'dark', protect: 'dark' };
    expect(shown.lamps()).toEqual(four);
    expect(shown.redStop()).toBe(true);
    for (const [spn, id] of [
      [1081, 'waitToStart'],
      [97, 'waterInFuel'],
    ] as const) {
      for (const [content, state] of [
        [0, 'dark'],
        [1, 'lit'],
      ] as const) {
        shown.push(parameterFrame(spn, content));
        expect(shown.lamps()).toMatchObject({ ...four, [id]: state });
      }
      shown.push(parameterFrame(spn, 'error'));
      expect(shown.lamps()).not.toHaveProperty(id);
    }
  });

  it('is every active code, while all of them are known', () => {
    const { shown, pass } = vehicle();
    expect(shown.codes()).toBeNull();
    shown.push(dm1Frame(null));
    expect(shown.codes()).toEqual([]);
    shown.push(dm1Frame({ spn: 157, fmi: 18 }, { redStop: true }));
    expect(shown.codes()).toEqual([{ spn: 157, fmi: 18 }]);
    pass(60);
    expect(shown.codes()).toBeNull();
    expect(shown.redStop()).toBe(false);
    expect(shown.lamps()).toEqual({});
  });
});
