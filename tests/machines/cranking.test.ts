import { describe, expect, it } from 'vitest';
import { OUTCOME_WITHIN_S } from '../../machines/kinds/crank.ts';
import { offerOf } from '../../machines/moment.ts';
import { Driver } from './helpers/driver.ts';
import { changed, demoFour, demoSix } from './helpers/profiles.ts';

const untilPressure = new Driver(demoSix).goodUntil('noFuelCrank.untilPressure.askingClear');
const ready = new Driver(demoSix).goodUntil('firstFire.crank.ready');
const cranking = ready.fork().reply('ready');
const BURST_S = demoSix.starter.longestBurstS;

describe('before the starter turns the engine', () => {
  it('is said what has to be known in the burst, with its seconds, in front of the question', () => {
    expect(untilPressure.context.lastSaid).toMatchObject({ line: 'askClear' });
    const said = new Driver(demoSix)
      .goodUntil(({ context }) => context.step === 'noFuelCrank.untilPressure')
      .last.said.find(({ line }) => line === 'ask');
    expect(said?.values).toMatchObject({
      before: {
        joined: 'plain',
        list: [
          { line: 'ifItFires', values: {} },
          { line: 'sayInTime', values: { time: { unit: 's', si: OUTCOME_WITHIN_S } } },
          { line: 'watchVoltage', values: {} },
        ],
      },
      expected: { unit: 's', si: expect.any(Number) },
    });
    const fire = new Driver(demoSix)
      .goodUntil(({ context }) => context.step === 'firstFire.crank')
      .last.said.find(({ line }) => line === 'ask');
    expect(fire?.values.before).toMatchObject({
      list: [{ line: 'pressureInTime', values: { time: { si: demoSix.oilPressure.firstFireWithinS } } }],
    });
  });

  it('and before it is cranked once more without fuel only what to say if it fires', () => {
    const said = new Driver(demoSix)
      .goodUntil(({ context }) => context.step === 'noFuelCrank.holds')
      .last.said.find(({ line }) => line === 'ask');
    expect(said?.values.before).toEqual({ list: [{ line: 'ifItFires', values: {} }], joined: 'plain' });
  });

  it('the length of the burst is said', () => {
    expect(ready.context.lastSaid).toMatchObject({
      line: 'crankReady',
      values: { burst: { unit: 's', si: BURST_S } },
    });
    expect(offerOf(ready.moment)).toMatchObject({ replies: ['ready', 'no'], by: 'technician' });
  });

  it('"no" gives the clear back, and it is asked for anew', () => {
    const driver = ready.fork().reply('no');
    expect(driver.name).toBe('firstFire.crank.askingClear');
    expect(driver.context.clearAtMs).toBeNull();
    expect(driver.alarmMs).toBeNull();
  });

  it('a clear that has grown old is told as that, and is none any more', () => {
    const driver = ready.fork().ring();
    expect(driver.last.said[0]).toMatchObject({ line: 'clearTooOld', priority: 'notice', values: {} });
    expect(driver.context.clearAtMs).toBeNull();
    expect(driver.alarmMs).toBeNull();
  });

  it('what was not understood is asked again, and after three times a voice alone starts nothing', () => {
    const driver = ready.fork().send({ type: 'unclear' }, { afterMs: 100 });
    expect(driver.last.said).toMatchObject([{ line: 'crankReady', prefix: 'unclear' }]);
    driver.send({ type: 'unclear' }, { afterMs: 100 }).send({ type: 'unclear' }, { afterMs: 100 });
    expect(driver.fork().reply('ready', { by: 'technician', afterMs: 100 }).name).toBe(ready.name);
    expect(driver.reply('ready', { by: 'technician', via: 'keys', afterMs: 100 }).name).toBe(
      'firstFire.crank.cranking',
    );
  });

  it('clear is the second person’s to say, and its read-back theirs', () => {
    const { name, moment } = untilPressure;
    expect(offerOf(moment)).toMatchObject({ by: 'second', awaits: 'clear' });
    const given = untilPressure.fork().reply('clearToCrank', { by: 'second' });
    expect(given.last.said).toMatchObject([
      { line: 'readBackReply', values: { reply: { reply: 'clearToCrank' } } },
    ]);
    expect(offerOf(given.moment)).toMatchObject({ by: 'second', awaits: 'clear' });
    expect(given.fork().reply('no', { by: 'second' }).name).toBe(name);
    const confirmed = given.reply('yes', { by: 'second' });
    expect(confirmed.context).toMatchObject({ clearAtMs: confirmed.nowMs, misheard: 0, pending: null });
  });
});

describe('while the starter turns the engine', () => {
  it('it is said at once, and only what ends it may be answered', () => {
    expect(cranking.last.said).toMatchObject([{ line: 'crankNow', values: {} }]);
    expect(offerOf(cranking.moment)).toEqual({
      replies: ['fired', 'nothingYet'],
      by: 'technician',
      awaits: 'starter',
    });
    expect(cranking.context.timer).toMatchObject({ totalMs: BURST_S * 1000 });
    expect(cranking.context.clearAtMs).toBeNull();
  });

  it('that it fired lets the starter go at once, said once: the seconds for oil pressure run', () => {
    const driver = cranking.fork().reply('fired', { afterMs: 3000 });
    expect(driver.last.said[0]).toEqual({
      line: 'release',
      step: 'firstFire.crank',
      values: {},
      priority: 'hazard',
      once: true,
    });
    expect(driver.context.bursts.at(-1)).toEqual({
      step: 'firstFire.crank',
      startMs: cranking.nowMs,
      endMs: driver.nowMs,
    });
    expect(driver.context.step).toBe('firstFire.oilPressure');
  });

  it('oil pressure lets the starter go at once and is read back after that', () => {
    const driver = new Driver(demoSix).goodUntil('noFuelCrank.untilPressure.cranking');
    driver.reply('oilPressureShows', { afterMs: 12_000 });
    expect(driver.name).toBe('noFuelCrank.untilPressure.released');
    expect(driver.last.said).toMatchObject([
      { line: 'release', priority: 'hazard' },
      { line: 'readBackReply', values: { reply: { reply: 'oilPressureShows' } } },
    ]);
    expect(driver.last.said[0]).not.toHaveProperty('once');
    expect(driver.fork().reply('no').name).toBe('noFuelCrank.untilPressure.outcome');
    expect(driver.fork().reply('yes').context.done).toContain('noFuelCrank.untilPressure');
    // By keys nothing is misheard, and the starter is let go all the same.
    const typed = new Driver(demoSix).goodUntil('noFuelCrank.untilPressure.cranking');
    typed.reply('oilPressureShows', { afterMs: 12_000, via: 'keys' });
    expect(typed.context.done).toContain('noFuelCrank.untilPressure');
    expect(typed.last.said[0]).toMatchObject({ line: 'release', priority: 'hazard' });
  });

  it('its last ten seconds are told', () => {
    const driver = cranking.fork().ring();
    expect(driver.nowMs - cranking.nowMs).toBe((BURST_S - 10) * 1000);
    expect(driver.last.said).toMatchObject([{ line: 'holdTenSeconds' }]);
  });
});

describe('after a burst', () => {
  const over = cranking.fork().clock(BURST_S * 1000);

  it('what came of it is asked for, with what was hoped for, and within seconds', () => {
    expect(over.name).toBe('firstFire.crank.outcome');
    expect(over.last.said).toMatchObject([
      { line: 'release', priority: 'hazard' },
      { line: 'burstOver', priority: 'prompt', values: { reply: { reply: 'fired' } } },
    ]);
    expect(offerOf(over.moment)).toMatchObject({ awaits: 'outcome', by: 'technician' });
    expect(over.context.deadline).toMatchObject({
      atMs: over.nowMs + OUTCOME_WITHIN_S * 1000,
      cause: 'other',
    });
  });

  it('what was not understood is asked again, in the same seconds', () => {
    const driver = over.fork().send({ type: 'unclear' });
    expect(driver.last.said).toMatchObject([
      { line: 'burstOver', prefix: 'unclear', values: { reply: { reply: 'fired' } } },
    ]);
    expect(driver.context.deadline?.atMs).toBe(over.context.deadline?.atMs);
  });

  it('it may have fired all the same', () => {
    const driver = over.fork().reply('fired');
    expect(driver.context.step).toBe('firstFire.oilPressure');
    expect(driver.lines[0]).toBe('release');
  });

  it('the rest is as long as is said', () => {
    const driver = over.fork().reply('nothingYet');
    expect(driver.name).toBe('firstFire.crank.resting');
    const rest = driver.last.said[0];
    expect(rest).toMatchObject({ line: 'rest', values: { time: { unit: 's', si: expect.any(Number) } } });
    const time = rest?.values.time as { readonly si: number };
    expect(driver.context.timer?.totalMs).toBe(Math.round(time.si * 1000));
    expect(time.si).toBeGreaterThanOrEqual(demoSix.starter.minRestS);
    expect(driver.context.deadline).toBeNull();
    expect(offerOf(driver.moment)).toEqual({ replies: [], by: 'technician', awaits: 'time' });
  });

  it('that was the last of its seconds, the session stops: three longest bursts to fire', () => {
    const bursts = (lengthS: number) => {
      const profile = changed(demoFour, {
        starter: { ...demoFour.starter, maxBursts: 20, limitC: 250, longestBurstS: 15 },
      });
      const driver = new Driver(profile).goodUntil('firstFire.crank.ready');
      const before = driver.context.bursts.length;
      while (!driver.name.startsWith('stopped')) {
        driver.goodUntil('firstFire.crank.cranking').reply('nothingYet', { afterMs: lengthS * 1000 });
        driver.reply('nothingYet');
      }
      expect(driver.context.stop?.cause).toBe('noStart');
      return driver.context.bursts.length - before;
    };
    expect(bursts(9)).toBe(5);
    expect(bursts(8.9)).toBe(6);
  });

  it('that was the last of so many, the session stops though seconds are left', () => {
    const profile = changed(demoFour, { starter: { ...demoFour.starter, maxBursts: 2 } });
    const driver = new Driver(profile).goodUntil('firstFire.crank.cranking');
    driver.reply('nothingYet').reply('nothingYet');
    expect(driver.name).toBe('firstFire.crank.resting');
    driver.goodUntil('firstFire.crank.cranking').reply('nothingYet').reply('nothingYet');
    expect(driver.context.stop?.cause).toBe('noStart');
  });
});

describe('oil pressure that comes too early to be true', () => {
  const early = new Driver(demoSix).goodUntil('noFuelCrank.untilPressure.cranking');
  early.reply('oilPressureShows', { afterMs: 500 });

  it('lets the starter go, is doubted on the record, and is for the second person to see', () => {
    expect(early.name).toBe('noFuelCrank.untilPressure.early');
    expect(early.last.said).toMatchObject([
      { line: 'release', priority: 'hazard', values: {} },
      {
        line: 'early',
        values: {
          reply: { reply: 'oilPressureShows' },
          time: { unit: 's', si: 0.5 },
          limits: expect.anything(),
        },
      },
    ]);
    expect(early.last.notes[0]).toMatchObject({
      kind: 'doubted',
      data: {
        step: 'noFuelCrank.untilPressure',
        reply: 'oilPressureShows',
        value: 0.5,
        unit: 's',
        met: false,
      },
    });
    expect(offerOf(early.moment)).toMatchObject({ by: 'second' });
  });

  it('is vouched for by nobody else', () => {
    for (const by of ['technician', 'supervisor'] as const)
      expect(early.fork().reply('oilPressureShows', { by }).name).toBe(early.name);
    const vouched = early.fork().reply('oilPressureShows', { by: 'second' });
    expect(vouched.name).toBe('noFuelCrank.untilPressure.released');
    expect(vouched.last.notes).toContainEqual({
      kind: 'vouched',
      data: { step: 'noFuelCrank.untilPressure', reply: 'oilPressureShows', by: 'second' },
    });
    expect(vouched.last.said.at(-1)).toMatchObject({ values: { reply: { reply: 'oilPressureShows' } } });
  });

  it('is not pressed for: the starter is let go, and work may stand still', () => {
    expect(early.moment.hasTag('critical')).toBe(false);
    expect(early.fork().send({ type: 'hold' }).name).toBe('held');
  });

  it('or there is nothing yet, and the starter rests', () => {
    expect(early.fork().reply('nothingYet', { by: 'second' }).name).toBe('noFuelCrank.untilPressure.resting');
  });

  it('is no longer too early for the seconds of all bursts together', () => {
    const again = early.fork().reply('nothingYet', { by: 'second' });
    again.goodUntil('noFuelCrank.untilPressure.cranking').reply('nothingYet', { afterMs: 8000 });
    again.reply('nothingYet').goodUntil('noFuelCrank.untilPressure.cranking');
    again.reply('oilPressureShows', { afterMs: 4000 });
    expect(again.name).toBe('noFuelCrank.untilPressure.released');
  });
});
