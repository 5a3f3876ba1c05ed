import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { StepId } from '../../prompts/types.ts';
import { Driver } from './helpers/driver.ts';
import { demoFour, demoSix } from './helpers/profiles.ts';

const BUS = { via: 'bus' } as const;
const charging = new Driver(demoSix).goodUntil('checks.charging.asking');
const voltage = new Driver(demoSix).goodUntil('noFuelCrank.voltage.asking');
const pressure = new Driver(demoSix).goodUntil('checks.oilPressure.asking');
const idle = new Driver(demoSix).goodUntil('checks.idle.item1');
const between = new Driver(demoSix).goodUntil('warmUp.watch.between');
const asking = new Driver(demoSix).goodUntil('warmUp.watch.asking');
const LOW_V = 12;

describe('a reading that is not as it should be and stops nothing', () => {
  const outside = charging.fork().value('chargingVoltage', LOW_V).reply('yes');

  it('is judged on the record and aloud, and may be left open', () => {
    expect(outside.name).toBe('checks.charging.outside');
    expect(outside.lines).toEqual(['outside', 'orLeaveOpen']);
    expect(outside.last.said[1]?.values).toEqual({ name: { quantityName: 'chargingVoltage' } });
    expect(outside.last.notes).toMatchObject([{ kind: 'verdict', data: { value: LOW_V, met: false } }]);
    expect(offerOf(outside.moment)).toMatchObject({
      replies: ['notYet', 'leaveOpen'],
      quantity: 'chargingVoltage',
    });
    expect(outside.context).toMatchObject({ pending: null, misheard: 0 });
  });

  it('may be read again, and is asked for like before', () => {
    const again = outside.fork().value('chargingVoltage', 14.2).reply('yes');
    expect(again.context.done).toContain('checks.charging');
    expect(again.context.openItems).toEqual([]);
    expect(outside.fork().reply('notYet').lines).toEqual(['notYet']);
  });

  it('is left open after a read-back only, with what was read last, and by whom', () => {
    const leaving = outside.fork().reply('leaveOpen');
    expect(leaving.name).toBe('checks.charging.leavingOpen');
    expect(leaving.last.said).toMatchObject([
      { line: 'readBackReply', values: { reply: { reply: 'leaveOpen' } } },
    ]);
    expect(leaving.fork().reply('no').name).toBe(outside.name);
    leaving.reply('yes', { by: 'technician' });
    const item = { step: 'checks.charging', quantity: 'chargingVoltage', si: LOW_V, by: 'technician' };
    expect(leaving.context.openItems).toEqual([item]);
    expect(leaving.last.said[0]).toMatchObject({ line: 'leftOpen', values: {} });
    expect(leaving.last.notes).toContainEqual({
      kind: 'leftOpen',
      data: {
        step: 'checks.charging',
        quantity: 'chargingVoltage',
        value: LOW_V,
        unit: 'V',
        by: 'technician',
      },
    });
    expect(leaving.context.done).toContain('checks.charging');
  });

  it('is not left open by a voice that was not understood three times', () => {
    const unclear = outside.fork();
    for (let time = 0; time < 3; time += 1) unclear.send({ type: 'unclear' });
    expect(unclear.reply('leaveOpen', { by: 'technician' }).name).toBe(outside.name);
  });

  it('cannot be left open before it was read', () => {
    expect(charging.fork().reply('leaveOpen').name).toBe(charging.name);
  });

  it('comes from the bus as well, and waits for people', () => {
    const driver = charging.fork().value('chargingVoltage', LOW_V, BUS);
    expect(driver.name).toBe('checks.charging.outside');
    expect(driver.context.pending).toBeNull();
    expect(driver.last.said[0]).toMatchObject({ line: 'outside', prefix: 'fromBus' });
    expect(driver.value('chargingVoltage', 14.2, BUS).context.done).toContain('checks.charging');
  });
});

describe('a reading with a gate', () => {
  it('is not passed by the bus, which only stops', () => {
    const driver = pressure.fork().value('oilPressure', 280, BUS);
    expect(driver.name).not.toBe('checks.coolant.asking');
    expect(driver.context.done).not.toContain('checks.oilPressure');
  });

  it('outside its limits is read back with a time in which to deny it', () => {
    const driver = pressure.fork().value('oilPressure', 20);
    expect(driver.context.pending).toMatchObject({ si: 20, stops: 'noOilPressure' });
    expect(driver.context.deadline).toMatchObject({ cause: 'noOilPressure' });
    expect(driver.moment.hasTag('critical')).toBe(true);
    expect(driver.reply('no').context.deadline).toBeNull();
  });
});

describe('a reading that nobody took', () => {
  it('costs what it is taken in once more, and is said so', () => {
    const driver = voltage.fork().reply('notMeasured', { by: 'second' });
    expect(driver.context.step).toBe('noFuelCrank.holds');
    expect(driver.last.said[0]).toMatchObject({
      line: 'notMeasuredPrice',
      values: { title: { step: 'noFuelCrank.holds' } },
    });
    expect(driver.context.done).not.toContain('noFuelCrank.holds');
    expect(driver.context.done).toContain('noFuelCrank.untilPressure');
    expect(driver.context.misheard).toBe(0);
  });

  it('and can be left out nowhere else', () => {
    expect(charging.fork().reply('notMeasured').name).toBe(charging.name);
  });
});

describe('a series', () => {
  it('of people is the lowest and the highest, read back together and judged together', () => {
    const driver = idle.fork().value('engineSpeed', 840);
    expect(driver.name).toBe('checks.idle.item2');
    expect(driver.last.said).toMatchObject([{ line: 'highest', values: {} }]);
    driver.value('engineSpeed', 860);
    expect(driver.last.said).toMatchObject([
      {
        line: 'readBackValue',
        values: {
          name: { quantityName: 'engineSpeed' },
          spoken: {
            list: [
              { number: { quantity: 'engineSpeed', si: 840 } },
              { number: { quantity: 'engineSpeed', si: 860 } },
            ],
          },
        },
      },
    ]);
    const readMs = driver.nowMs;
    expect(driver.fork().reply('no').name).toBe('checks.idle.item1');
    expect(driver.fork().reply('no').context.series).toEqual([]);
    driver.reply('yes');
    expect(driver.last.notes[0]).toMatchObject({
      kind: 'verdict',
      data: {
        step: 'checks.idle',
        quantity: 'engineSpeed',
        value: 860,
        series: [840, 860],
        unit: 'rpm',
        met: true,
      },
    });
    expect(driver.last.notes[0]?.data).not.toHaveProperty('via');
    expect(driver.last.said[0]).not.toHaveProperty('prefix');
    expect(driver.context.readings.slice(-2)).toEqual([
      { quantity: 'engineSpeed', si: 840, atMs: readMs - 1000, step: 'checks.idle' },
      { quantity: 'engineSpeed', si: 860, atMs: readMs, step: 'checks.idle' },
    ]);
  });

  it('that is outside its limits is asked for from the beginning, with nothing kept of it', () => {
    const driver = idle.fork().value('engineSpeed', 700).value('engineSpeed', 1390).reply('yes');
    expect(driver.name).toBe('checks.idle.item1');
    expect(driver.context).toMatchObject({ series: [], misheard: 0 });
    expect(driver.last.notes[0]).toMatchObject({ data: { met: false } });
  });

  it('by keys passes unread, by a voice in it never', () => {
    const KEYS = { via: 'keys' } as const;
    const typed = idle.fork().value('engineSpeed', 850, KEYS).value('engineSpeed', 852, KEYS);
    expect(typed.context.done).toContain('checks.idle');
    const mixed = idle.fork().value('engineSpeed', 850).value('engineSpeed', 852, KEYS);
    expect(mixed.name).toBe('checks.idle.readingBack');
    expect(mixed.context.spokenInList).toBe(true);
  });

  it('that hunts is said so by one word, and stops', () => {
    expect(idle.fork().reply('hunting').context.stop).toMatchObject({ cause: 'other' });
  });

  it('with a value that stops the engine is read back with a time in which to deny it', () => {
    const driver = idle.fork().value('engineSpeed', 3100);
    expect(driver.name).toBe('checks.idle.stopping');
    expect(driver.context.deadline).toMatchObject({ cause: 'overspeed' });
    expect(driver.fork().reply('no').name).toBe('checks.idle.item1');
    expect(driver.fork().reply('no').context.deadline).toBeNull();
    const stopped = driver.fork().reply('yes');
    expect(stopped.context.stop?.cause).toBe('overspeed');
    expect(stopped.last.notes[0]).toMatchObject({ kind: 'verdict', data: { value: 3100, met: false } });
    expect(driver.ring().context.stop?.cause).toBe('overspeed');
  });

  it('of the bus comes without a word, and is judged by all of its values', () => {
    const driver = idle.fork();
    for (const rpm of [850, 852, 848, 851]) {
      driver.value('engineSpeed', rpm, BUS);
      expect(driver.name).toBe('checks.idle.sampling');
      expect(driver.last.said).toEqual([]);
      expect(driver.context.nextLookMs).toBe(driver.nowMs + 6000);
    }
    expect(offerOf(driver.moment)).toEqual({
      replies: [],
      by: 'technician',
      measures: 'next',
      awaits: 'time',
    });
    const silent = driver.fork().clock(6000);
    expect(silent.name).toBe('checks.idle.item1');
    expect(silent.context).toMatchObject({ series: [], nextLookMs: null });
    driver.value('engineSpeed', 849, BUS);
    expect(driver.context.done).toContain('checks.idle');
    expect(driver.last.said[0]).toMatchObject({ prefix: 'fromBus' });
    expect(driver.last.notes[0]).toMatchObject({
      data: { via: 'bus', series: [850, 852, 848, 851, 849], value: 849, met: true },
    });
  });

  it('of the bus with a value that stops the engine stops it at once', () => {
    expect(idle.fork().value('engineSpeed', 3100, BUS).context.stop?.cause).toBe('overspeed');
    const later = idle.fork().value('engineSpeed', 850, BUS).value('engineSpeed', 3100, BUS);
    expect(later.context.stop?.cause).toBe('overspeed');
    expect(later.last.notes[0]).toMatchObject({
      kind: 'verdict',
      data: { value: 3100, via: 'bus', met: false },
    });
  });
});

/** Whoever is asked says at each look that it is not there yet, until the step is out of time. */
function waitOut(driver: Driver, step: StepId): void {
  while (driver.ring().context.step === step) if (driver.name.endsWith('.asking')) driver.reply('notYet');
}

describe('the watch of the warm-up', () => {
  it('tells what the bus shows, without a read-back, and looks again', () => {
    const driver = between.fork().value('coolantTemperature', 25, { ...BUS, afterMs: 60_000 });
    expect(driver.name).toBe('warmUp.watch.between');
    expect(driver.last.said[0]).toMatchObject({
      line: 'busValue',
      priority: 'notice',
      values: {
        name: { quantityName: 'coolantTemperature' },
        spoken: { quantity: 'coolantTemperature', si: 25 },
      },
    });
    expect(driver.last.notes).toMatchObject([
      { kind: 'verdict', data: { value: 25, via: 'bus', met: true } },
    ]);
    expect(driver.context.nextLookMs).toBe(driver.nowMs + demoSix.warmUp.readEveryS * 1000);
    expect(driver.context.readings.at(-1)).toMatchObject({ si: 25, byBus: true });
    expect(driver.context.lastSaid).toMatchObject({ line: 'ask', step: 'warmUp.watch', priority: 'prompt' });
  });

  it('by the bus is over once the coolant is there and the time long enough, and stops when it is too hot', () => {
    const startedMs = between.context.timer?.startedMs ?? 0;
    const enoughMs = startedMs + demoSix.warmUp.minS * 1000 - between.nowMs;
    const soon = between.fork().value('coolantTemperature', 88, { ...BUS, afterMs: enoughMs - 1 });
    expect(soon.name).toBe('warmUp.watch.between');
    expect(soon.lines[0]).toBe('busValue');
    const later = between.fork().value('coolantTemperature', 88, { ...BUS, afterMs: enoughMs });
    expect(later.context.done).toContain('warmUp.watch');
    expect(between.fork().value('coolantTemperature', 120, BUS).context.stop?.cause).toBe('overheating');
  });

  it('once the gauge was read in it asks only how it is now', () => {
    const first = asking.last.said.find(({ priority }) => priority === 'prompt');
    const read = between.fork().value('coolantTemperature', 25, { afterMs: 60_000 }).reply('yes');
    while (read.name !== 'warmUp.watch.asking') read.ring();
    expect(read.last.said).toMatchObject([
      { line: 'coolantNow', values: { unit: { unitOf: 'coolantTemperature' } } },
    ]);
    expect(first?.line).toBeDefined();
  });

  it('says how long it is still too early, and counts nothing', () => {
    const warm = between.fork().value('coolantTemperature', 80, { afterMs: 200_000 }).reply('yes');
    const early = warm.reply('thermostatOpen').reply('yes');
    const leftS = demoSix.warmUp.minS - (early.nowMs - (early.context.timer?.startedMs ?? 0)) / 1000;
    expect(early.last.said[0]).toMatchObject({
      line: 'tooEarly',
      values: { time: { unit: 's', si: leftS } },
    });
    expect(early.context.done).not.toContain('warmUp.watch');
  });

  it('believes an open thermostat only where the gauge says so too', () => {
    const cold = between.fork().value('coolantTemperature', 25, { afterMs: 60_000 });
    cold.reply('yes').reply('thermostatOpen');
    expect(cold.last.said[0]).toMatchObject({
      line: 'readFirst',
      values: {
        reply: { reply: 'thermostatOpen' },
        name: { quantityName: 'coolantTemperature' },
        limits: { limits: { unit: 'degC', min: expect.any(Number) } },
      },
    });
    expect(cold.last.notes[0]).toMatchObject({
      kind: 'doubted',
      data: { step: 'warmUp.watch', quantity: 'coolantTemperature', reply: 'thermostatOpen', met: false },
    });
    expect(cold.name).not.toContain('readingBack');
  });

  it('by keys goes on without a read-back, is said again, and is over when it is there and long enough', () => {
    const KEYS = { via: 'keys' } as const;
    const on = between.fork().value('coolantTemperature', 25, { ...KEYS, afterMs: 60_000 });
    expect(on.name).toBe('warmUp.watch.between');
    expect(on.lines[0]).toBe('echoShown');
    expect(on.last.notes).toMatchObject([{ kind: 'verdict', data: { value: 25, met: true } }]);
    const startedMs = between.context.timer?.startedMs ?? 0;
    const enoughMs = startedMs + demoSix.warmUp.minS * 1000 - between.nowMs;
    const late = between.fork().value('coolantTemperature', 88, { ...KEYS, afterMs: enoughMs });
    expect(late.context.done).toContain('warmUp.watch');
    const differs = { type: 'value', quantity: 'coolantTemperature', si: 30, bus: { si: 70 } } as const;
    expect(
      between
        .fork()
        .send(differs, { ...KEYS, afterMs: 60_000 })
        .send(differs, KEYS).name,
    ).toBe('warmUp.watch.readingBackValue');
  });

  it('that is out of time is left open, said and noted, and settled by the next', () => {
    const over = between.fork();
    waitOut(over, 'warmUp.watch');
    expect(over.context.step).toBe('warmUp.fastIdle');
    expect(over.context.openItems).toMatchObject([{ step: 'warmUp.watch' }]);
    expect(over.last.notes).toContainEqual(
      expect.objectContaining({ kind: 'leftOpen', data: expect.objectContaining({ step: 'warmUp.watch' }) }),
    );
    expect(over.last.said[0]).toMatchObject({ line: 'idledLongEnough', values: {} });
    const settled = over.fork().value('coolantTemperature', 88).reply('yes');
    expect(settled.context.done).toContain('warmUp.fastIdle');
    expect(settled.context.openItems).toEqual([]);
    expect(settled.last.notes).toContainEqual({ kind: 'settled', data: { step: 'warmUp.watch' } });
    waitOut(over, 'warmUp.fastIdle');
    expect(over.context.openItems).toMatchObject([{ step: 'warmUp.fastIdle' }]);
    expect(over.lines[0]).toBe('notOpenedInTime');
  });

  it('begins with the reading just before it, where that was far from the thermostat', () => {
    const followed = new Driver(demoSix).goodUntil(({ context }) => context.step === 'warmUp.watch');
    expect(followed.name).toBe('warmUp.watch.between');
    expect(followed.last.said.at(-1)).toMatchObject({ line: 'warmUpBegins', values: {} });
    const four = new Driver(demoFour).goodUntil(({ context }) => context.step === 'warmUp.watch');
    expect(four.name).toMatch(/^warmUp\.watch\.(between|asking)$/);
  });

  it('asks at once where that reading is five minutes old', () => {
    const driver = new Driver(demoSix).goodUntil('checks.leaks.item1');
    const readMs = driver.context.readings.findLast(({ step }) => step === 'checks.coolant')?.atMs ?? 0;
    const last = (ageMs: number) => {
      const late = driver.fork().goodUntil('checks.leaks.readingBack');
      return late.reply('yes', { afterMs: readMs + ageMs - late.nowMs }).name;
    };
    expect(last(299_999)).toBe('warmUp.watch.between');
    expect(last(300_000)).toBe('warmUp.watch.asking');
  });
});

describe('an idle that hunts', () => {
  it('by the lowest and the highest that people read, stops the engine like what is said to hunt', () => {
    const driver = idle.fork().value('engineSpeed', 720).value('engineSpeed', 990);
    expect(driver.fork().reply('no').name).toBe('checks.idle.item1');
    driver.reply('yes');
    expect(driver.context.stop).toMatchObject({ cause: 'other', step: 'checks.idle' });
    expect(driver.lines).toContain('idleHunting');
    expect(driver.last.notes[0]).toMatchObject({
      kind: 'verdict',
      data: { series: [720, 990], met: false, why: 'idleHunting' },
    });
    expect(driver.context.readings.slice(-2)).toMatchObject([{ si: 720 }, { si: 990 }]);
  });

  it('by the bus stops it at the fifth of its values', () => {
    const driver = idle.fork();
    for (const si of [720, 960, 720, 960]) driver.value('engineSpeed', si, BUS);
    expect(driver.name).toBe('checks.idle.sampling');
    driver.value('engineSpeed', 720, BUS);
    expect(driver.context.stop).toMatchObject({ cause: 'other', step: 'checks.idle' });
    expect(driver.last.notes[0]).toMatchObject({
      kind: 'verdict',
      data: { series: [720, 960, 720, 960, 720] },
    });
  });

  it('and what falls while it settles is read again', () => {
    const driver = idle.fork();
    for (const si of [960, 900, 840, 780, 720]) driver.value('engineSpeed', si, BUS);
    expect(driver.name).toBe('checks.idle.item1');
    expect(driver.lines).toContain('idleFalling');
  });
});
