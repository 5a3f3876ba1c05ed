import { describe, expect, it } from 'vitest';
import type { Driver } from './helpers/driver.ts';
import { changed, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const HOT_C = 118;
const asking = () => sessionAt(demoSix, 'warmUp.watch.asking');
const between = () => sessionAt(demoSix, 'warmUp.watch.between');

const isStoppedFor = (driver: Driver) => ({
  name: driver.name,
  cause: driver.context.stop?.cause ?? null,
  found: driver.context.stop?.found ?? null,
});
const OVERHEATED = { name: 'stopped.makingSafe', cause: 'overheating', found: 'overheating' };

describe('coolant that is told in the warm-up and is too hot', () => {
  it.each([
    ['asked for', 'voice', asking],
    ['asked for', 'keys', asking],
    ['told between two looks', 'voice', between],
    ['told between two looks', 'touch', between],
  ] as const)('%s, by %s, counts unless it is denied within 8 s', (_, via, at) => {
    const driver = at().value('coolantTemperature', HOT_C, { via });
    expect(driver.name).toBe('warmUp.watch.readingBackValue');
    expect(driver.context.pending).toMatchObject({ stops: 'overheating' });
    expect((driver.alarmMs ?? Number.NaN) - driver.nowMs).toBe(8000);
    expect(driver.fork().clock(7999).name).toBe('warmUp.watch.readingBackValue');
    expect(isStoppedFor(driver.clock(8000))).toEqual(OVERHEATED);
  });

  it('is put off by no hold, no noise and no word that is not "wrong"', () => {
    const driver = asking().value('coolantTemperature', HOT_C, { via: 'voice' });
    driver.send({ type: 'hold' }).send({ type: 'unclear' }).send({ type: 'sayAgain' });
    expect(driver.lines).not.toContain('onHoldRunning');
    expect(isStoppedFor(driver.clock(5000))).toEqual(OVERHEATED);
  });

  it('stops at once where it is confirmed, and is asked for again where it is denied', () => {
    const said = asking().value('coolantTemperature', HOT_C, { via: 'voice' });
    expect(isStoppedFor(said.fork().reply('yes'))).toEqual(OVERHEATED);
    const denied = said.reply('no');
    expect(denied.name).toBe('warmUp.watch.asking');
    expect(denied.context.deadline).toBeNull();
    expect(denied.value('coolantTemperature', 60, { via: 'voice' }).context.deadline).toBeNull();
  });

  it('is not passed over by the end of the warm-up with an open item', () => {
    const short = changed(demoSix, { warmUp: { ...demoSix.warmUp, minS: 240, maxS: 600, idleMaxS: 300 } });
    const driver = sessionAt(short, 'warmUp.watch.asking');
    const { timer } = driver.context;
    const endsMs = (timer?.startedMs ?? 0) + (timer?.totalMs ?? 0);
    driver.value('coolantTemperature', HOT_C, { via: 'voice', afterMs: endsMs - driver.nowMs - 3000 });
    expect(driver.name).toBe('warmUp.watch.readingBackValue');
    expect(isStoppedFor(driver.ring())).toEqual(OVERHEATED);
    expect(driver.nowMs).toBe(endsMs);
  });

  it('has the coolant and its cap looked at before the engine is started again', () => {
    const driver = asking().value('coolantTemperature', HOT_C, { via: 'voice' }).clock(8000);
    driver.reply('allOff', { via: 'keys' }).reply('yes', { via: 'keys' });
    expect(driver.lines).toContain('hotCap');
    expect(driver.context.reopened).toContain('fill.coolantFilled');
  });
});
