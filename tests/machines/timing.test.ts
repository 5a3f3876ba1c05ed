import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Driver } from './helpers/driver.ts';
import { changed, demoFour, demoSix } from './helpers/profiles.ts';

const six = new Driver(demoSix);
const startOf = (name: string) => six.goodUntil(name).fork();
const bleed = startOf('fill.coolantBleed.counting');
const untilPressure = startOf('noFuelCrank.untilPressure.askingClear');
const heaterDone = startOf('keyOn.heaterDone.asking');
const firstFire = startOf('firstFire.crank.ready');
const pressure = startOf('firstFire.oilPressure.asking');
const idlePressure = startOf('checks.oilPressure.asking');
const warmUp = startOf('warmUp.watch.asking');

const BLEED_MS = demoSix.coolant.bleedHoldS * 1000;

describe('a hold', () => {
  it('is not over just before its time, and is over when its time has come', () => {
    expect(bleed.fork().clock(BLEED_MS - 1).name).toBe('fill.coolantBleed.counting');
    expect(bleed.fork().clock(BLEED_MS).name).toBe('fill.coolantBled.together');
  });

  /** What is said in it, and when, ms. */
  const saidIn = (bleedHoldS: number) => {
    const driver = new Driver(changed(demoSix, { coolant: { ...demoSix.coolant, bleedHoldS } }));
    driver.goodUntil('fill.coolantBleed.counting');
    expect(driver.lines).toEqual(['ask', 'holdStarts']);
    const spoken: [number, string][] = [];
    const startMs = driver.nowMs;
    while (driver.name === 'fill.coolantBleed.counting') {
      driver.ring();
      spoken.push([driver.nowMs - startMs, driver.lines[0] ?? '']);
    }
    return spoken;
  };

  it('of four minutes says its length, its half, its last ten seconds and its end', () => {
    expect(saidIn(240)).toEqual([
      [120_000, 'holdHalf'],
      [230_000, 'holdTenSeconds'],
      [240_000, 'holdDone'],
    ]);
  });

  it('too short for its half says only its last ten seconds, and shorter still only its end', () => {
    expect(saidIn(239).map(([, line]) => line)).toEqual(['holdTenSeconds', 'holdDone']);
    expect(saidIn(20).map(([, line]) => line)).toEqual(['holdTenSeconds', 'holdDone']);
    expect(saidIn(19).map(([, line]) => line)).toEqual(['holdDone']);
  });

  it('takes no reply and no number for its end', () => {
    const driver = bleed.fork().reply('yes').reply('noMoreAir').value('coolantTemperature', 20);
    expect(driver.name).toBe('fill.coolantBleed.counting');
  });

  it('tells how much is left, and keeps that while on hold', () => {
    const driver = bleed.fork().clock(30_000).send({ type: 'timeLeft' }, { afterMs: 0 });
    const left = { time: { unit: 's', si: BLEED_MS / 1000 - 30 } };
    expect(driver.last.said[0]).toMatchObject({ line: 'timeLeft', values: left });
    driver.send({ type: 'hold' }, { afterMs: 0 });
    expect(driver.name).toBe('held');
    expect(driver.alarmMs).toBe(null);
    expect(driver.clock(3_600_000).name).toBe('held');
    expect(driver.send({ type: 'timeLeft' }).last.said[0]).toMatchObject({ line: 'timeLeft', values: left });
    driver.send({ type: 'continue' });
    expect(driver.send({ type: 'timeLeft' }, { afterMs: 0 }).last.said[0]).toMatchObject({ values: left });
    const resumedMs = driver.nowMs;
    expect(driver.goodUntil('fill.coolantBled.together').nowMs - resumedMs).toBe(BLEED_MS - 30_000);
  });

  it('of ten minutes ends to the millisecond however oddly the clock is looked at, holds and all', () => {
    const profile = changed(demoSix, { coolant: { ...demoSix.coolant, bleedHoldS: 600 } });
    const start = new Driver(profile).goodUntil('fill.coolantBleed.counting');
    fc.assert(
      fc.property(
        fc.array(fc.record({ afterMs: fc.nat(7001), heldMs: fc.option(fc.nat(90_001)) }), {
          minLength: 50,
          maxLength: 300,
          size: 'max',
        }),
        turns => {
          const driver = start.fork();
          const beginMs = driver.nowMs;
          let heldMs = 0;
          const leftMs = () => 600_000 - (driver.nowMs - beginMs - heldMs);
          for (const turn of turns) {
            if (turn.afterMs >= leftMs()) break;
            driver.clock(turn.afterMs);
            if (turn.heldMs === null) continue;
            driver
              .send({ type: 'hold' }, { afterMs: 0 })
              .send({ type: 'continue' }, { afterMs: turn.heldMs });
            heldMs += turn.heldMs;
          }
          driver.clock(leftMs() - 1);
          expect(driver.name).toBe('fill.coolantBleed.counting');
          expect(driver.clock(1).name).toBe('fill.coolantBled.together');
        },
      ),
      { seed: 600, numRuns: 15 },
    );
  });

  it('of the intake heater ends by the timer and opens half of its gate', () => {
    const driver = new Driver(demoSix).goodUntil('keyOn.heaterHold.counting');
    // 5 degC: ten seconds, by the profile.
    expect(driver.fork().clock(9_999).name).toBe('keyOn.heaterHold.counting');
    expect(driver.clock(10_000).name).toBe('keyOn.heaterDone.asking');
    expect(driver.last.notes[0]?.data).toMatchObject({ step: 'keyOn.heaterHold', gate: 'heaterHoldDone' });
  });
});

const FIRE_MS = demoSix.oilPressure.firstFireWithinS * 1000;

describe('oil pressure after the first fire', () => {
  it('that is not answered in time stops the engine, and not a moment before', () => {
    expect(pressure.fork().clock(FIRE_MS - 1).name).toBe('firstFire.oilPressure.asking');
    const late = pressure.fork().clock(FIRE_MS);
    expect(late.name).toBe('stopped.makingSafe');
    expect(late.context.stop).toMatchObject({ cause: 'noOilPressure', step: 'firstFire.oilPressure' });
    // The stop is called out before anybody is told what was late.
    expect(late.last.said.slice(0, 2)).toMatchObject([
      { line: 'stopCause', priority: 'hazard' },
      { line: 'answerLate', values: { time: { unit: 's', si: FIRE_MS / 1000 } } },
    ]);
    expect(late.alarmMs).toBe(late.context.nextLookMs);
  });

  it('that is answered late counts as no, even if nobody has looked at the clock yet', () => {
    expect(pressure.fork().reply('pressureGood', { afterMs: FIRE_MS }).name).toBe('stopped.makingSafe');
    expect(pressure.fork().send({ type: 'unclear' }, { afterMs: FIRE_MS }).name).toBe('stopped.makingSafe');
    const inTime = pressure.fork().reply('pressureGood', { afterMs: FIRE_MS - 1 });
    expect(inTime.name).toBe('firstFire.oilPressure.readingBack');
  });

  it('that is answered in time may be read back past the limit; what is denied by then was no answer', () => {
    const answered = pressure.fork().reply('pressureGood', { afterMs: FIRE_MS - 1000 });
    expect(answered.fork().clock(7_999).name).toBe('firstFire.oilPressure.readingBack');
    expect(answered.fork().reply('yes', { afterMs: 7_999 }).name).toBe('firstFire.eyes.item1');
    expect(answered.fork().reply('yes', { afterMs: 8_000 }).name).toBe('stopped.makingSafe');
    expect(answered.fork().clock(8_000).context.stop?.cause).toBe('noOilPressure');
    expect(answered.fork().reply('no', { afterMs: 1_000 }).context.stop?.cause).toBe('noOilPressure');
    const again = answered.fork().reply('no', { afterMs: 998 }).reply('pressureGood', { afterMs: 1 });
    expect(again.name).toBe('firstFire.oilPressure.readingBack');
    expect(again.fork().reply('yes', { afterMs: 7_999 }).name).toBe('firstFire.eyes.item1');
    expect(again.fork().reply('yes', { afterMs: 8_000 }).name).toBe('stopped.makingSafe');
  });

  it('that is answered at once has not less time for its read-back than there was without it', () => {
    const long = heaterDone.fork();
    const limitMs = (demoSix.heater?.toleranceS ?? 0) * 1000 + 10_000;
    const beginMs = long.nowMs;
    long.reply('lampOut').reply('no');
    expect(long.fork().clock(limitMs - (long.nowMs - beginMs) - 1).name).toBe('keyOn.heaterDone.asking');
    expect(long.clock(limitMs - (long.nowMs - beginMs)).context.stop?.cause).toBe('faultCode');
  });

  it('that is confirmed leaves no timer behind', () => {
    const driver = pressure.fork().reply('pressureGood').reply('yes');
    expect(driver.context).toMatchObject({ timer: null, deadline: null });
    expect(driver.clock(59_000).name).toBe('firstFire.eyes.item1');
  });

  it('that is missing stops at one word', () => {
    const driver = pressure.fork().reply('noOilPressure');
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop?.cause).toBe('noOilPressure');
  });
});

describe('a reading that would stop the engine', () => {
  it('has to be denied in time, or it counts', () => {
    const low = idlePressure.fork().value('oilPressure', 20);
    expect(low.name).toBe('checks.oilPressure.readingBack');
    expect(low.fork().clock(7_999).name).toBe('checks.oilPressure.readingBack');
    expect(low.fork().clock(8_000).context.stop?.cause).toBe('noOilPressure');
    expect(low.fork().reply('no', { afterMs: 8_000 }).name).toBe('stopped.makingSafe');
    expect(low.fork().reply('yes').context.stop?.cause).toBe('noOilPressure');
    const denied = low.fork().reply('no');
    expect(denied.name).toBe('checks.oilPressure.asking');
    expect(denied.context.deadline).toBe(null);
  });

  it('inside its limits has no other limit of time for its read-back than any silence beside a running engine', () => {
    const good = idlePressure.fork().value('oilPressure', 280);
    expect(good.context.deadline).toBe(null);
    expect(good.fork().clock(60_000).context.stop).toMatchObject({ cause: null, lateAfterS: 60 });
    expect(good.reply('yes', { afterMs: 59_999 }).name).toBe('checks.coolant.asking');
  });
});

describe('the clear of the second person', () => {
  const VALID_MS = demoSix.walkRound.clearValidS * 1000;

  it('holds good until just before its time is up', () => {
    expect(firstFire.fork().reply('ready', { afterMs: VALID_MS - 1 }).name).toBe('firstFire.crank.cranking');
    const old = firstFire.fork().reply('ready', { afterMs: VALID_MS });
    expect(old.name).toBe('firstFire.crank.askingClear');
    expect(old.lines[0]).toBe('clearTooOld');
  });

  it('is asked for again when it has grown old, without a word from anybody', () => {
    const old = firstFire.fork().ring();
    expect(old.nowMs - firstFire.nowMs).toBe(VALID_MS);
    expect(old.name).toBe('firstFire.crank.askingClear');
  });

  it('grows old while on hold too', () => {
    const held = firstFire.fork().send({ type: 'hold' }).send({ type: 'continue' }, { afterMs: VALID_MS });
    expect(held.reply('ready').name).toBe('firstFire.crank.askingClear');
  });

  it("is nobody else's to give or to confirm", () => {
    const asked = firstFire.fork().ring();
    const others = ['technician', 'supervisor'] as const;
    for (const by of others)
      expect(asked.fork().reply('clearToCrank', { by }).name).toBe('firstFire.crank.askingClear');
    const given = asked.reply('clearToCrank', { by: 'second' });
    for (const by of others)
      expect(given.fork().reply('yes', { by }).name).toBe('firstFire.crank.clearReadBack');
    expect(given.reply('yes', { by: 'second' }).name).toBe('firstFire.crank.ready');
  });

  it('is used up by one burst', () => {
    const again = firstFire.fork().reply('ready').reply('nothingYet').reply('nothingYet');
    expect(again.name).toBe('firstFire.crank.resting');
    again.goodUntil(driver => driver.name.endsWith('.askingClear'));
    expect(again.context.clearAtMs).toBe(null);
    expect(again.reply('ready').name).toBe('firstFire.crank.askingClear');
  });
});

describe('cranking', () => {
  const cranking = untilPressure.fork().goodUntil('noFuelCrank.untilPressure.cranking');
  const BURST_MS = demoSix.starter.longestBurstS * 1000;

  it('ends by itself at the end of the burst, and the starter is called off', () => {
    expect(cranking.fork().clock(BURST_MS - 1).name).toBe('noFuelCrank.untilPressure.cranking');
    const over = cranking.fork().clock(BURST_MS);
    expect(over.name).toBe('noFuelCrank.untilPressure.outcome');
    expect(over.last.said[0]).toMatchObject({ line: 'release', priority: 'hazard' });
  });

  it('stops everything when nobody says what came of a burst', () => {
    const over = cranking.fork().clock(BURST_MS);
    expect(over.fork().clock(9_999).name).toBe('noFuelCrank.untilPressure.outcome');
    expect(over.fork().clock(10_000).context.stop?.cause).toBe('other');
  });

  it('is followed by a rest of at least what the engine maker asks for', () => {
    const resting = cranking.fork().clock(BURST_MS).reply('nothingYet');
    expect(resting.name).toBe('noFuelCrank.untilPressure.resting');
    const restMs = demoSix.starter.minRestS * 1000;
    expect(resting.fork().clock(restMs - 1).name).toBe('noFuelCrank.untilPressure.resting');
    const begin = resting.nowMs;
    resting.goodUntil('noFuelCrank.untilPressure.askingClear');
    expect(resting.nowMs - begin).toBeGreaterThanOrEqual(restMs);
  });

  it('to fire wants the heater again after a rest, and no other cranking does', () => {
    const afterRest = (driver: Driver, place: string) => {
      driver.goodUntil(`${place}.cranking`).clock(BURST_MS).reply('nothingYet');
      expect(driver.name).toBe(`${place}.resting`);
      while (driver.name.endsWith('resting')) driver.ring();
      expect(driver.name).toBe(`${place}.askingClear`);
      return driver.last.said.map(({ line }) => line);
    };
    expect(afterRest(firstFire.fork(), 'firstFire.crank')).toContain('heatAgain');
    expect(afterRest(untilPressure.fork(), 'noFuelCrank.untilPressure')).not.toContain('heatAgain');
    // demo-four has no heater.
    const four = new Driver(demoFour).goodUntil('firstFire.crank.ready');
    expect(afterRest(four, 'firstFire.crank')).not.toContain('heatAgain');
  });

  it('rests before a burst of the next step as well', () => {
    const holds = new Driver(demoSix).goodUntil('noFuelCrank.holds.resting');
    const lastMs = holds.context.bursts.at(-1)?.endMs ?? 0;
    holds.goodUntil('noFuelCrank.holds.askingClear');
    expect(holds.nowMs - lastMs).toBeGreaterThanOrEqual(demoSix.starter.minRestS * 1000);
  });

  it('rests after a stop in the middle of a burst too, and counts that burst', () => {
    const stopped = cranking.fork().stop({ afterMs: 6_000 });
    expect(stopped.context.bursts.at(-1)).toMatchObject({ startMs: cranking.nowMs, endMs: stopped.nowMs });
    const again = stopped.goodUntil('noFuelCrank.untilPressure.askingClear');
    expect(again.nowMs - (again.context.bursts.at(-1)?.endMs ?? 0)).toBeGreaterThanOrEqual(60_000);
  });

  it('never asks for more than the thermal budget leaves', () => {
    const warm = firstFire.fork();
    const lengths: number[] = [];
    while (!warm.name.startsWith('stopped')) {
      warm.goodUntil('firstFire.crank.cranking');
      lengths.push((warm.context.timer?.totalMs ?? 0) / 1000);
      warm.ring();
      while (warm.name.endsWith('cranking')) warm.ring();
      warm.reply('nothingYet');
    }
    for (const length of lengths) {
      expect(length).toBeGreaterThan(0);
      expect(length).toBeLessThanOrEqual(demoSix.starter.longestBurstS);
    }
  });

  it('gives up with the cause that the engine would not start, and has its whole budget on the next try', () => {
    const giveUp = (driver: Driver) => {
      while (!driver.name.startsWith('stopped')) {
        driver.goodUntil('firstFire.crank.cranking').clock(BURST_MS);
        driver.reply('nothingYet');
      }
      return driver;
    };
    const first = giveUp(firstFire.fork());
    expect(first.context.stop?.cause).toBe('noStart');
    const bursts = first.context.bursts.length;
    const again = first.reply('allOff').reply('yes').reply('yes').reply('ready').reply('yes');
    again.goodUntil('firstFire.crank.cranking').clock(BURST_MS).reply('nothingYet');
    expect(again.name).toBe('firstFire.crank.resting');
    expect(again.context.bursts.length).toBe(bursts + 1);
  });

  it('for oil pressure gives up for want of it, after so many bursts', () => {
    const profile = changed(demoFour, { starter: { ...demoFour.starter, maxBursts: 2 } });
    const driver = new Driver(profile);
    for (const _ of [1, 2])
      driver.goodUntil('noFuelCrank.untilPressure.cranking').reply('nothingYet').reply('nothingYet');
    expect(driver.context.stop?.cause).toBe('noOilPressure');
  });
});

describe('the warm-up', () => {
  const minMs = demoSix.warmUp.minS * 1000;
  const maxMs = (demoSix.warmUp.idleMaxS ?? demoSix.warmUp.maxS) * 1000;

  it('is not over before its least time, whatever the gauge or the hose says', () => {
    const near = warmUp.fork().clock(30_000).value('coolantTemperature', 80).reply('yes');
    const early = near.fork().reply('thermostatOpen').reply('yes');
    expect(early.name).toBe('warmUp.watch.between');
    expect(early.lines).toContain('tooEarly');
    expect(near.fork().value('coolantTemperature', 90).reply('yes').name).toBe('warmUp.watch.between');
    const beginMs = warmUp.context.timer?.startedMs ?? 0;
    const late = near.fork().reply('thermostatOpen');
    expect(
      late.fork().reply('yes', { afterMs: minMs - (late.nowMs - beginMs) - 1 }).context.done,
    ).not.toContain('warmUp.watch');
    expect(late.reply('yes', { afterMs: minMs - (late.nowMs - beginMs) }).context.done).toContain(
      'warmUp.watch',
    );
  });

  it('is over when its time is up, and no reply counts any more', () => {
    const beginMs = warmUp.context.timer?.startedMs ?? 0;
    // Whoever says nothing for five minutes is looked for: here they answer until the last of them.
    const answering = warmUp.fork();
    while (maxMs - (answering.nowMs - beginMs) > 250_000) answering.reply('notYet', { afterMs: 200_000 });
    const leftMs = maxMs - (answering.nowMs - beginMs);
    const over = 'warmUp.fastIdle.asking';
    expect(answering.fork().clock(leftMs - 1).name).toBe('warmUp.watch.asking');
    expect(answering.fork().clock(leftMs).name).toBe(over);
    expect(answering.fork().reply('thermostatOpen', { afterMs: leftMs }).name).toBe(over);
    expect(answering.fork().value('coolantTemperature', 90, { afterMs: leftMs }).name).toBe(over);
    const readingBack = answering.fork().reply('thermostatOpen');
    expect(readingBack.reply('yes', { afterMs: leftMs }).name).toBe(over);
  });

  it('asks again every so often', () => {
    const noted = warmUp.fork().value('coolantTemperature', 20).reply('yes');
    expect(noted.name).toBe('warmUp.watch.between');
    const everyMs = Math.round((noted.context.nextLookMs ?? 0) - noted.nowMs);
    // Twenty degrees are far from a thermostat of 82, however fast it warms.
    expect(everyMs / 1000).toBeGreaterThan(demoSix.warmUp.readEveryS);
    expect(everyMs / 1000).toBeLessThanOrEqual(4 * demoSix.warmUp.readEveryS);
    expect(noted.fork().clock(everyMs - 1).name).toBe('warmUp.watch.between');
    expect(noted.clock(everyMs + 1).name).toBe('warmUp.watch.asking');
  });

  it('stops at a reading that is too hot', () => {
    const hot = warmUp.fork().value('coolantTemperature', 108).reply('yes');
    expect(hot.context.stop?.cause).toBe('overheating');
  });

  it('of a second run is judged without the readings of the first', () => {
    const again = warmUp.fork().value('coolantTemperature', 70).reply('yes');
    again.send({ type: 'stop', cause: 'falseAlarm' }).goodUntil('warmUp.watch.asking');
    again.value('coolantTemperature', 20).reply('yes');
    expect(again.lines).toContain('warmUpNoted');
  });
});
