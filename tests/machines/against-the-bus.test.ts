import { describe, expect, it } from 'vitest';
import type { EventBody } from '../../src/session/hearing.ts';
import { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';

const air = new Driver(demoSix).goodUntil('job.ambient.asking');
const coolant = new Driver(demoSix).goodUntil('checks.coolant.asking');
const lamps = new Driver(demoSix).goodUntil('firstFire.lamps.item1');
const lampsTogether = new Driver(demoSix).goodUntil('firstFire.lamps.group1');
const keyOnLamps = new Driver(demoSix).goodUntil('keyOn.lamps.item1');
const stopped = coolant.fork().stop().clock(5000);

/** Ten degrees, where the bus shows twenty below. */
const tenDegrees: EventBody = { type: 'value', quantity: 'ambientTemperature', si: 10, bus: { si: -20 } };

const lampSaid = (id: 'lit' | 'dark' | 'firstLampsRunning', lamp: 'lit' | 'dark'): EventBody => ({
  type: 'reply',
  id,
  bus: { lamps: { redStop: lamp } },
});

describe('a number that the bus shows otherwise', () => {
  it('is questioned with both, by name, and is on the record with what the two may differ by', () => {
    const driver = air.fork().send(tenDegrees);
    expect(driver.name).toBe(air.name);
    expect(driver.last.said).toMatchObject([
      {
        line: 'busDiffers',
        priority: 'prompt',
        values: {
          name: { quantityName: 'ambientTemperature' },
          spoken: { quantity: 'ambientTemperature', si: 10 },
          bus: { quantity: 'ambientTemperature', si: -20 },
        },
      },
    ]);
    expect(driver.context.lastSaid).toMatchObject({ line: 'busDiffers' });
    expect(driver.last.notes).toEqual([
      {
        kind: 'disagreement',
        data: {
          step: 'job.ambient',
          quantity: 'ambientTemperature',
          spoken: 10,
          bus: -20,
          unit: 'degC',
          allowed: expect.any(Number),
          rule: expect.any(String),
        },
      },
    ]);
  });

  it('said again just so, by keys too, is read back with both, and judged with both', () => {
    const driver = air.fork().send(tenDegrees, { via: 'keys' }).send(tenDegrees, { via: 'keys' });
    expect(driver.name).toBe('job.ambient.readingBack');
    expect(driver.last.said).toMatchObject([
      {
        line: 'readBackDiffers',
        values: {
          name: { quantityName: 'ambientTemperature' },
          spoken: { brief: 'ambientTemperature', si: 10 },
          bus: { quantity: 'ambientTemperature', si: -20 },
        },
      },
    ]);
    expect(driver.context.pending).toEqual({
      kind: 'value',
      quantity: 'ambientTemperature',
      si: 10,
      busSi: -20,
    });
    const verdict = driver.reply('yes').notes.findLast(({ kind }) => kind === 'verdict');
    expect(verdict?.data).toMatchObject({ value: 10, bus: -20 });
    expect(verdict?.data).not.toHaveProperty('via');
  });

  it('that agrees is read back alone, and is not put aside with what the bus showed', () => {
    const agreed = { type: 'value', quantity: 'coolantTemperature', si: 40, bus: { si: 41 } } as const;
    const driver = coolant.fork().send(agreed);
    expect(driver.last.notes).toEqual([]);
    expect(driver.last.said).toMatchObject([{ line: 'readBackValue', values: { spoken: { si: 40 } } }]);
    expect(driver.last.said[0]).not.toHaveProperty('prefix');
    expect(driver.context.pending).toEqual({ kind: 'value', quantity: 'coolantTemperature', si: 40 });
  });

  it('is another number when another is said: that one is questioned too', () => {
    const driver = air
      .fork()
      .send(tenDegrees)
      .send({ ...tenDegrees, si: 12 });
    expect(driver.lines).toEqual(['busDiffers']);
    expect(driver.name).toBe(air.name);
  });
});

describe('a number of the bus', () => {
  it('is told as one, and is on the record as one', () => {
    const driver = coolant.fork().value('coolantTemperature', 40, { via: 'bus' });
    expect(driver.last.said[0]).toMatchObject({
      line: 'inside',
      prefix: 'fromBus',
      priority: 'notice',
      values: { spoken: { brief: 'coolantTemperature', si: 40 } },
    });
    expect(driver.last.notes[0]).toMatchObject({
      kind: 'verdict',
      data: { value: 40, via: 'bus', met: true },
    });
    expect(driver.context.readings.at(-1)).toEqual({
      quantity: 'coolantTemperature',
      si: 40,
      atMs: driver.nowMs,
      step: 'checks.coolant',
      byBus: true,
    });
  });

  it('is no reading of the bus when a person says it', () => {
    const driver = coolant.fork().value('coolantTemperature', 40, { via: 'keys' });
    expect(driver.context.readings.at(-1)).toEqual({
      quantity: 'coolantTemperature',
      si: 40,
      atMs: driver.nowMs,
      step: 'checks.coolant',
    });
  });
});

describe('a lamp that the bus shows otherwise', () => {
  it('is questioned by its name with what was said and what is shown, once', () => {
    const driver = lamps.fork().send(lampSaid('dark', 'lit'));
    expect(driver.name).toBe(lamps.name);
    expect(driver.last.said).toMatchObject([
      {
        line: 'lampDiffers',
        values: { name: 'red warning', spoken: { reply: 'dark' }, bus: { reply: 'lit' } },
      },
    ]);
    expect(driver.last.notes).toEqual([
      {
        kind: 'disagreement',
        data: { step: 'firstFire.lamps', lamp: 'redStop', spoken: 'dark', bus: 'lit' },
      },
    ]);
    expect(driver.send(lampSaid('dark', 'lit')).name).toBe('firstFire.lamps.item2');
  });

  it('said to burn and dark on the bus is questioned before it stops the engine', () => {
    const driver = lamps.fork().send(lampSaid('lit', 'dark'));
    expect(driver.lines).toEqual(['lampDiffers']);
    expect(driver.last.said[0]?.values).toMatchObject({ spoken: { reply: 'lit' }, bus: { reply: 'dark' } });
    expect(driver.send(lampSaid('lit', 'dark')).context.stop?.cause).toBe('faultCode');
  });

  it('is questioned again when something else is said of it', () => {
    const driver = lamps.fork().send(lampSaid('lit', 'dark')).reply('notYet').send(lampSaid('dark', 'lit'));
    expect(driver.lines).toEqual(['lampDiffers']);
  });

  it('is not questioned where the bus shows what was said, or nothing of it', () => {
    expect(lamps.fork().send(lampSaid('dark', 'dark')).name).toBe('firstFire.lamps.item2');
    const other: EventBody = { type: 'reply', id: 'dark', bus: { lamps: { amberWarning: 'lit' } } };
    expect(lamps.fork().send(other).name).toBe('firstFire.lamps.item2');
  });

  it('is said to be as it should by a reply for several, and questioned as that', () => {
    const driver = lampsTogether.fork().send(lampSaid('firstLampsRunning', 'lit'));
    expect(driver.name).toBe(lampsTogether.name);
    expect(driver.last.said[0]).toMatchObject({
      line: 'lampDiffers',
      values: { spoken: { reply: 'dark' }, bus: { reply: 'lit' } },
    });
    expect(lampsTogether.fork().send(lampSaid('firstLampsRunning', 'dark')).lines).not.toContain(
      'lampDiffers',
    );
  });

  it('with the key on is believed to burn though the bus knows of nothing: that is the lamp test', () => {
    expect(keyOnLamps.fork().send(lampSaid('lit', 'dark')).name).toBe('keyOn.lamps.item2');
    expect(keyOnLamps.fork().send(lampSaid('dark', 'lit')).lines).toEqual(['lampDiffers']);
  });
});

describe('an engine said to stand', () => {
  it('and turning on the bus is contradicted with its speed, as a hazard', () => {
    const driver = stopped.fork().send({ type: 'reply', id: 'allOff', bus: { speedRpm: 640 } });
    expect(driver.name).toBe(stopped.name);
    expect(driver.last.said).toMatchObject([
      { line: 'stillTurns', priority: 'hazard', values: { speed: { unit: 'rpm', si: 640 } } },
    ]);
  });

  it('and turning by ear is contradicted with its speed in whole turns, as a hazard', () => {
    const driver = stopped.fork().send({ type: 'reply', id: 'allOff', ear: { speedRpm: 640.4 } });
    expect(driver.last.said).toMatchObject([
      { line: 'heardTurning', priority: 'hazard', values: { speed: { unit: 'rpm', si: 640 } } },
    ]);
  });
});
