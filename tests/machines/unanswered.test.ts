import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import { isOnlyWaiting } from '../../src/rehearsal/pace.ts';
import type { Driver } from './helpers/driver.ts';
import { demoBoat, demoFour, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const KEYS = { via: 'keys' } as const;

const at = (state: string) => sessionAt(demoSix, state);

/** All that a silence from here brings: after how many seconds, and what; the last is the stop. */
function silence(driver: Driver): [number, string][] {
  const beganMs = driver.nowMs;
  const told: [number, string][] = [];
  while (!driver.name.startsWith('stopped')) {
    driver.ring();
    told.push([(driver.nowMs - beganMs) / 1000, driver.lines[0] ?? '']);
  }
  return told;
}

const glance = (callOut: string) => [
  [20, 'stillWaiting'],
  [40, callOut],
  [60, 'stopHeard'],
];
const hunt = (callOut: string) => [
  [60, 'stillWaiting'],
  [120, 'stillWaiting'],
  [180, callOut],
  [240, 'stillWaiting'],
  [300, 'stopHeard'],
];

describe('a question beside a running engine that nobody answers', () => {
  it.each([
    ['firstFire.eyes.item1', 'lookForSecond'],
    ['firstFire.lamps.group1', 'lookForTechnician'],
    ['checks.oilPressure.asking', 'lookForTechnician'],
    ['checks.coolant.asking', 'lookForTechnician'],
    ['sweeps.first.asking', 'lookForTechnician'],
  ])(
    'at a glance (%s) is reminded after 20 s, called to the other after 40, and off after 60',
    (state, callOut) => {
      expect(silence(at(state))).toEqual(glance(callOut));
    },
  );

  it.each([
    ['checks.leaks.item1', 'lookForSecond'],
    ['checks.idle.item1', 'lookForTechnician'],
    ['checks.charging.asking', 'lookForTechnician'],
    ['warmUp.steeringLocks.asking', 'lookForTechnician'],
    ['sweeps.faults.asking', 'lookForTechnician'],
    ['shutdown.coolant.asking', 'lookForTechnician'],
  ])(
    'in a hunt (%s) is reminded each minute, called to the other after three, and off after five',
    (state, callOut) => {
      expect(silence(at(state))).toEqual(hunt(callOut));
    },
  );

  it('for key-off does not say that the engine runs: that it stands may be what nobody has said yet', () => {
    expect(silence(at('shutdown.keyOff.asking'))).toEqual([
      [60, 'stillWaitingOff'],
      [120, 'stillWaitingOff'],
      [180, 'lookForTechnician'],
      [240, 'stillWaitingOff'],
      [300, 'stopHeard'],
    ]);
  });

  it('calls the other out as a hazard, and tells with the stop what was not answered', () => {
    const driver = at('checks.leaks.item1').clock(60_000).clock(60_000).clock(60_000);
    expect(driver.last.said).toEqual([
      expect.objectContaining({ line: 'lookForSecond', priority: 'hazard' }),
    ]);
    driver.clock(60_000).clock(60_000);
    expect(driver.context.stop).toMatchObject({ cause: null, lateAfterS: 300, step: 'checks.leaks' });
    expect(driver.lines).toEqual(['stopHeard', 'answerLate', 'areAllOff']);
  });

  it.each([
    ['firstFire.eyes.item1', 60_000],
    ['checks.leaks.item1', 300_000],
  ])(
    '%s stops at its time and not a millisecond before, however late the clock is looked at',
    (state, ms) => {
      expect(at(state).clock(ms - 1).name).toBe(state);
      expect(at(state).clock(ms).name).toBe('stopped.makingSafe');
      expect(at(state).clock(ms + 3_600_000).name).toBe('stopped.makingSafe');
    },
  );

  it('is as new once anybody has spoken: still looking, say again, a number that is questioned', () => {
    const looking = at('checks.leaks.item1').clock(290_000).reply('stillLooking');
    expect(looking.name).toBe('checks.leaks.item1');
    expect(looking.clock(299_999).name).toBe('checks.leaks.item1');
    expect(looking.clock(1).name).toBe('stopped.makingSafe');
    const again = at('checks.oilPressure.asking').clock(59_000).send({ type: 'sayAgain' });
    expect(again.clock(59_000).name).toBe('checks.oilPressure.asking');
  });

  it('is not answered by noise that is not understood, nor by the bus', () => {
    const noise = at('firstFire.eyes.item1').clock(50_000).send({ type: 'unclear' });
    expect(noise.clock(10_000).name).toBe('stopped.makingSafe');
    const bus = at('checks.charging.asking').clock(290_000);
    bus.value('coolantTemperature', 20, { via: 'bus' });
    expect(bus.clock(10_000).name).toBe('stopped.makingSafe');
  });

  it('waits for no answer while only time goes by, and never where seconds have their own limit', () => {
    for (const state of ['warmUp.watch.between', 'shutdown.settle.counting', 'sweeps.second.asking'])
      expect(at(state).context.unanswered).toBeNull();
    const critical = sessionAt(demoBoat, 'firstFire.oilPressure.asking');
    expect(critical.moment.hasTag('critical')).toBe(true);
    expect(critical.context.unanswered).toBeNull();
  });

  it('is nobody’s haste beside an engine that stands', () => {
    for (const state of ['walkRound.tools.asking', 'shutdown.firstLook.item1', 'signOff.oilLevel.dipstick']) {
      expect(at(state).context.unanswered).toBeNull();
      expect(at(state).clock(3_600_000).name).toBe(state);
    }
  });

  it('never passes while a rehearsal runs faster: there it runs fast only where nothing is asked', () => {
    for (const state of ['checks.leaks.item1', 'sweeps.first.asking'])
      expect(isOnlyWaiting(at(state).moment)).toBe(false);
    const sweep = at('sweeps.second.asking');
    expect(isOnlyWaiting(sweep.moment)).toBe(true);
    expect(isOnlyWaiting(sweep.send({ type: 'unclear' }).moment)).toBe(false);
  });

  it('is stopped by the word at any moment of it', () => {
    for (const ms of [1, 20_000, 45_000]) {
      const driver = at('firstFire.eyes.item1').clock(ms).stop();
      expect(driver.name).toBe('stopped.makingSafe');
      // All off is asked for until it is said.
      expect(driver.alarmMs).toBe(driver.nowMs + 15_000);
    }
  });
});

describe('anything wrong that is said of a running engine in a look round it', () => {
  it.each([
    ['firstFire.eyes.item1'],
    ['firstFire.eyes.group1'],
    ['checks.leaks.item2'],
    ['checks.leaks.group1'],
  ])('at %s stops it, and the cause is asked', state => {
    const driver = at(state);
    expect(offerOf(driver.moment).replies).toEqual(
      expect.arrayContaining(['somethingWrong', 'stillLooking']),
    );
    expect(offerOf(driver.moment).replies).not.toContain('notYet');
    driver.reply('somethingWrong', { by: 'second', via: 'voice' });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop?.cause).toBeNull();
  });

  it('stops nothing beside an engine that stands: there it is not yet', () => {
    const driver = at('shutdown.firstLook.item1');
    expect(offerOf(driver.moment).replies).not.toContain('somethingWrong');
    expect(driver.reply('notYet').name).toBe('shutdown.firstLook.item1');
  });
});

describe('a hold', () => {
  it('beside a running engine says so, is reminded, and ends in a stop after a minute', () => {
    const driver = at('checks.leaks.item1').send({ type: 'hold' });
    expect(driver.name).toBe('held');
    expect(driver.last.said).toContainEqual(
      expect.objectContaining({
        line: 'onHoldRunning',
        values: { time: { unit: 's', si: 60 } },
        priority: 'hazard',
      }),
    );
    expect(silence(driver)).toEqual([
      [20, 'holdRunsOut'],
      [40, 'holdRunsOut'],
      [60, 'stopHeard'],
    ]);
    expect(driver.context.stop).toMatchObject({ cause: null, lateAfterS: 60 });
  });

  it('is lengthened by no word but "continue"', () => {
    const driver = at('checks.leaks.item1').send({ type: 'hold' }).clock(50_000).send({ type: 'sayAgain' });
    expect(driver.clock(8999).name).toBe('held');
    expect(driver.clock(1).name).toBe('stopped.makingSafe');
    const goesOn = at('checks.leaks.item1')
      .send({ type: 'hold' })
      .clock(59_999)
      .send({ type: 'continue' }, { afterMs: 0 });
    expect(goesOn.name).toBe('checks.leaks.item1');
  });

  it('puts off no look at the coolant, nor the longest time that it may warm up', () => {
    const driver = at('warmUp.watch.between');
    const { nextLookMs, timer } = driver.context;
    for (let nth = 0; nth < 3; nth += 1)
      driver.send({ type: 'hold' }).clock(50_000).send({ type: 'continue' });
    expect(driver.name).toBe('warmUp.watch.between');
    expect(driver.context.nextLookMs).toBe(nextLookMs);
    expect(driver.context.timer).toEqual(timer);
    const late = driver.send({ type: 'hold' }).clock(50_000);
    while (late.nowMs < (nextLookMs ?? 0))
      late.send({ type: 'continue' }).send({ type: 'hold' }).clock(50_000);
    expect(late.send({ type: 'continue' }).ring().name).toBe('warmUp.watch.asking');
  });

  it('puts off no longest time that ends in a stop', () => {
    const driver = at('keyOn.faults.asking').reply('readACode', KEYS);
    driver.value('suspectParameter', 157, KEYS).value('failureMode', 18, KEYS).reply('yes', KEYS);
    driver.reply('noMoreCodes', KEYS).goodUntil('firstFire.transient.asking');
    const beganMs = driver.nowMs;
    driver.clock(55_000).send({ type: 'hold' }, { afterMs: 1000 });
    expect(driver.alarmMs).toBe(beganMs + 60_000);
    expect(driver.fork().clock(3999).name).toBe('held');
    driver.ring();
    expect(driver.nowMs).toBe(beganMs + 60_000);
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context).toMatchObject({ heldSinceMs: null, stop: { cause: 'faultCode' } });
  });

  it('lets what goes on when its time is up wait for its end', () => {
    const driver = at('warmUp.watch.between');
    const { timer } = driver.context;
    const endMs = (timer?.startedMs ?? 0) + (timer?.totalMs ?? 0);
    while (driver.nowMs < endMs - 1000)
      driver.send({ type: 'status' }, { afterMs: Math.min(60_000, endMs - 1000 - driver.nowMs) });
    driver.send({ type: 'hold' }, { afterMs: 0 });
    expect(driver.alarmMs).toBe(driver.nowMs + 20_000);
    driver.clock(10_000);
    expect(driver.name).toBe('held');
    expect(driver.alarmMs).toBe(endMs - 1000 + 20_000);
    driver.send({ type: 'continue' }).clock(0);
    expect(driver.context.openItems).toMatchObject([{ step: 'warmUp.watch' }]);
  });

  it('lets settling at idle go on: the engine idles', () => {
    const driver = at('shutdown.settle.counting');
    const endsMs = driver.context.timer ? driver.context.timer.startedMs + driver.context.timer.totalMs : 0;
    driver.send({ type: 'hold' }).clock(50_000).send({ type: 'continue' });
    expect((driver.context.timer?.startedMs ?? 0) + (driver.context.timer?.totalMs ?? 0)).toBe(endsMs);
  });

  it('beside an engine that stands lasts as long as it likes, and time stands still', () => {
    const driver = at('shutdown.secondSoak.counting').send({ type: 'hold' });
    expect(driver.lines).toEqual(['onHold']);
    expect(driver.alarmMs).toBeNull();
    expect(driver.clock(7_200_000).name).toBe('held');
  });

  it('is ended by a stop at once', () => {
    const driver = sessionAt(demoFour, 'checks.leaks.item1').send({ type: 'hold' }).stop();
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context).toMatchObject({ heldSinceMs: null, unanswered: null });
  });
});
