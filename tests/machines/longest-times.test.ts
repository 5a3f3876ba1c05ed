import { describe, expect, it } from 'vitest';
import type { EventBody } from '../../src/session/hearing.ts';
import type { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const KEYS = { via: 'keys' } as const;
const WRONG: EventBody = { type: 'takeBack' };
const BACK: EventBody = { type: 'goBack' };

const read = (driver: Driver) =>
  driver.context.readings.filter(({ step }) => step === 'warmUp.watch').map(({ si }) => si);

/** The warm-up with these values, each typed when it is asked for. */
function warmedTo(...values: readonly number[]) {
  const driver = sessionAt(demoSix, 'warmUp.watch.between');
  const beganMs = driver.context.timer?.startedMs ?? Number.NaN;
  for (const si of values) {
    for (let turn = 0; driver.name === 'warmUp.watch.between' && turn < 20; turn += 1) driver.ring();
    expect(driver.name).toBe('warmUp.watch.asking');
    driver.value('coolantTemperature', si, KEYS);
  }
  return { driver, beganMs };
}

/** Until the watch is left, with a value that leads nowhere wherever one is asked for: after how many seconds. */
function leftAfterS(driver: Driver, beganMs: number): number {
  for (let turn = 0; driver.context.step === 'warmUp.watch' && turn < 100; turn += 1)
    if (driver.name === 'warmUp.watch.asking') driver.value('coolantTemperature', 60, KEYS);
    else driver.ring();
  return (driver.nowMs - beganMs) / 1000;
}

describe('the longest time at idle', () => {
  const { idleMaxS = Number.NaN } = demoSix.warmUp;

  it('runs on where a value of it is taken back, and only that value is', () => {
    const { driver, beganMs } = warmedTo(40, 50, 56);
    expect(read(driver)).toEqual([40, 50, 56]);
    driver.send(WRONG, KEYS);
    expect(driver.lines).toContain('takenBack');
    expect(driver.context.step).toBe('warmUp.watch');
    expect(driver.context.timer?.startedMs).toBe(beganMs);
    expect(read(driver)).toEqual([40, 50]);
    expect(driver.fork([]).send(WRONG, KEYS).context.readings).not.toContainEqual(
      expect.objectContaining({ step: 'warmUp.watch', si: 50 }),
    );
    expect(leftAfterS(driver, beganMs)).toBeLessThanOrEqual(idleMaxS + 5);
  });

  it('runs on where the value is taken back that ended it', () => {
    const { driver, beganMs } = warmedTo(40, 60, 84);
    expect(driver.context.step).not.toBe('warmUp.watch');
    driver.send(WRONG, KEYS);
    expect(driver.context.step).toBe('warmUp.watch');
    expect(driver.context.timer?.startedMs).toBe(beganMs);
    expect(read(driver)).toEqual([40, 60]);
  });

  it('is over where its watch was passed: nobody is led back to have it end at once', () => {
    const { driver, beganMs } = warmedTo(40, 60, 84);
    expect(driver.context.step).toBe('warmUp.hose');
    const before = driver.fork([]);
    before.nowMs = beganMs + idleMaxS * 1000 - 1;
    before.send(BACK, { ...KEYS, afterMs: 0 });
    expect(before.context.step).toBe('warmUp.watch');
    driver.nowMs = beganMs + idleMaxS * 1000;
    driver.send(BACK, { ...KEYS, afterMs: 0 });
    expect(driver.lines).toEqual(['cannotGoBack']);
    expect(driver.context).toMatchObject({ step: 'warmUp.hose', openItems: [] });
    expect(driver.context.done).toContain('warmUp.watch');
  });

  it('begins anew after a stop', () => {
    const { driver } = warmedTo(40, 50);
    expect(driver.context.watchesBegan).toHaveProperty(['warmUp.watch']);
    expect(driver.stop().context.watchesBegan).toEqual({});
  });
});

describe('the time of a code that is watched', () => {
  const watched = (profile = demoSix) => {
    const driver = sessionAt(profile, 'keyOn.faults.asking').reply('readACode', KEYS);
    driver.value('suspectParameter', 157, KEYS).value('failureMode', 18, KEYS).reply('yes', KEYS);
    return driver.reply('noMoreCodes', KEYS).goodUntil('firstFire.transient.asking');
  };

  it('is lengthened by no going back and coming again', () => {
    const driver = watched();
    const beganMs = driver.nowMs;
    for (let times = 0; times < 2; times += 1) {
      driver.send(BACK, KEYS);
      expect(driver.context.step).not.toBe('firstFire.transient');
      driver.goodUntil(({ context }) => context.step === 'firstFire.transient');
    }
    expect(driver.context.timer).toMatchObject({ startedMs: beganMs, totalMs: 60_000 });
    expect(driver.alarmMs).toBeLessThanOrEqual(beganMs + 60_000);
    driver.clock(beganMs + 60_000 - driver.nowMs);
    expect(driver.context.stop).toMatchObject({ cause: 'faultCode' });
  });

  it('is over when it is come back to late: "cleared" counts no more', () => {
    const driver = watched();
    const beganMs = driver.nowMs;
    driver.send(BACK, KEYS);
    driver.nowMs = beganMs + 60_000;
    driver.goodUntil(
      ({ context }) => context.step !== 'firstFire.lamps' && context.step !== 'firstFire.eyes',
    );
    driver.reply('faultCleared', KEYS);
    expect(driver.context.stop).toMatchObject({ cause: 'faultCode' });
  });

  it.each([
    [59_999, 'firstFire.transient'],
    [60_000, 'firstFire.warningLamp'],
  ] as const)(
    'is no trap %d ms after it began, where it has cleared in time: going back leads to %s',
    (ms, step) => {
      const driver = watched();
      const beganMs = driver.nowMs;
      driver.reply('faultCleared', KEYS);
      expect(driver.context.step).toBe('firstFire.warningLamp');
      driver.nowMs = beganMs + ms;
      driver.send(BACK, { ...KEYS, afterMs: 0 });
      expect(driver.context.step).toBe(step);
      expect(driver.lines.includes('cannotGoBack')).toBe(step === 'firstFire.warningLamp');
      expect(driver.context.stop).toBeNull();
    },
  );

  it('is its own where another code is read later', () => {
    const other = { spn: 94, fmi: 18, judgement: 'watch', watchS: 60, because: 'invented' } as const;
    const profile = { ...demoSix, faults: [...demoSix.faults, other] };
    const driver = watched(profile).reply('faultCleared', KEYS).goodUntil('sweeps.faults.asking');
    driver.reply('readACode', KEYS).value('suspectParameter', other.spn, KEYS);
    driver.value('failureMode', other.fmi, KEYS).reply('yes', KEYS);
    expect(driver.context.watchesBegan).not.toHaveProperty(['firstFire.transient']);
    driver.reply('noMoreCodes', KEYS).goodUntil('firstFire.transient.asking');
    expect(driver.context.timer?.startedMs).toBe(driver.nowMs);
  });
});
