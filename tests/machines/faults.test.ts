import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';

/** By demo-six: 100/1 blocks, 157/18 is watched for a minute, 97/15 may go on, 5000/7 is not in the profile. */
const BLOCKS = [100, 1] as const;
const WATCHED = [157, 18] as const;
const MAY_GO_ON = [97, 15] as const;
const UNKNOWN = [5000, 7] as const;

const asked = new Driver(demoSix).goodUntil('keyOn.faults.asking');

const read = (driver: Driver, ...codes: (readonly [spn: number, fmi: number])[]): Driver => {
  for (const [spn, fmi] of codes)
    driver.reply('readACode').value('suspectParameter', spn).value('failureMode', fmi).reply('yes');
  return driver.reply('noMoreCodes').reply('yes');
};

describe('fault codes', () => {
  it('none, confirmed, open the gate', () => {
    expect(asked.fork().reply('noCodes').reply('yes').context.step).toBe('keyOn.heaterHold');
    expect(asked.fork().reply('noCodes').reply('no').name).toBe('keyOn.faults.asking');
  });

  it('are read number by number, read back and decoded', () => {
    const driver = asked.fork().reply('readACode').value('suspectParameter', 157).value('failureMode', 18);
    expect(driver.name).toBe('keyOn.faults.codeReadBack');
    expect(driver.fork().reply('no').name).toBe('keyOn.faults.spn');
    expect(driver.fork().reply('no').context.faults).toEqual([]);
    driver.reply('yes');
    expect(driver.context.faults).toEqual([{ spn: 157, fmi: 18, seenMs: driver.nowMs }]);
    expect(driver.last.notes[0]).toMatchObject({
      kind: 'faults',
      data: { faults: [{ spn: 157, fmi: 18, decision: 'watch' }] },
    });
  });

  it('that may go on by the profile let it go on', () => {
    expect(read(asked.fork(), MAY_GO_ON).context.step).toBe('keyOn.heaterHold');
  });

  it('that block by the profile block, and nobody can accept them', () => {
    const blocked = read(asked.fork(), BLOCKS);
    expect(blocked.name).toBe('keyOn.faults.blocked');
    for (const id of ['acceptFault', 'yes', 'noCodes', 'noMoreCodes', 'reasonSupervisor'] as const)
      expect(blocked.reply(id, { by: 'supervisor', via: 'keys' }).name).toBe('keyOn.faults.blocked');
    expect(blocked.send({ type: 'reason', text: 'I say so' }, { by: 'supervisor' }).name).toBe(
      'keyOn.faults.blocked',
    );
  });

  it('that are unknown block until the supervisor accepts them with a reason, read back', () => {
    const blocked = read(asked.fork(), UNKNOWN);
    expect(blocked.name).toBe('keyOn.faults.blocked');
    blocked.reply('acceptFault');
    expect(blocked.name).toBe('keyOn.faults.accepting');
    expect(offerOf(blocked.moment).by).toBe('supervisor');
    expect(blocked.fork().reply('reasonSupervisor').reply('no').name).toBe('keyOn.faults.accepting');
    const accepted = blocked.reply('reasonSupervisor').reply('yes');
    expect(accepted.context.step).toBe('keyOn.heaterHold');
    expect(accepted.context.faults[0]).toMatchObject({ spn: 5000, fmi: 7, accepted: 'reasonSupervisor' });
  });

  it('that are unknown are accepted for a typed reason, but not for an empty one', () => {
    const accepting = read(asked.fork(), UNKNOWN).reply('acceptFault');
    expect(accepting.send({ type: 'reason', text: ' ' }, { via: 'keys' }).name).toBe(
      'keyOn.faults.accepting',
    );
    accepting.send({ type: 'reason', text: 'sensor not fitted to this vehicle' }, { via: 'keys' });
    expect(accepting.context.step).toBe('keyOn.heaterHold');
    expect(accepting.notes.findLast(({ kind }) => kind === 'faults')?.data).toMatchObject({
      faults: [{ accepted: 'sensor not fitted to this vehicle' }],
    });
  });

  it('of which one is unknown and one blocks stay blocked after the one is accepted', () => {
    const driver = read(asked.fork(), UNKNOWN, BLOCKS).reply('acceptFault');
    expect(driver.reply('reasonSupervisor').reply('yes').name).toBe('keyOn.faults.blocked');
    expect(driver.reply('acceptFault').name).toBe('keyOn.faults.blocked');
  });

  it('that no control unit can send block and cannot be accepted', () => {
    const driver = read(asked.fork(), [157.5, 3]);
    expect(driver.name).toBe('keyOn.faults.blocked');
    expect(driver.reply('acceptFault').name).toBe('keyOn.faults.blocked');
  });

  it('that were repaired are read again, and only what is still there counts', () => {
    const driver = read(asked.fork(), BLOCKS).reply('ready');
    expect(driver.name).toBe('keyOn.faults.asking');
    expect(driver.reply('noCodes').reply('yes').context.step).toBe('keyOn.heaterHold');
    expect(driver.context.faults).toEqual([]);
  });

  it('that are read again keep the time when they were first seen', () => {
    const driver = read(asked.fork(), WATCHED, BLOCKS);
    const seenMs = driver.context.faults.find(({ spn }) => spn === 157)?.seenMs;
    read(driver.reply('ready', { afterMs: 20_000 }), WATCHED);
    expect(driver.context.faults).toEqual([{ spn: 157, fmi: 18, seenMs }]);
  });

  it('keep that time though the reading was broken off in between', () => {
    const driver = read(asked.fork(), WATCHED, BLOCKS);
    const seenMs = driver.context.faults.find(({ spn }) => spn === 157)?.seenMs;
    driver.reply('ready').send({ type: 'stop', cause: 'falseAlarm' }).goodUntil('keyOn.faults.asking');
    read(driver, WATCHED);
    expect(driver.context.faults).toEqual([{ spn: 157, fmi: 18, seenMs }]);
  });

  it('begin anew when they had been gone', () => {
    const driver = read(asked.fork(), WATCHED, BLOCKS).reply('ready').reply('noCodes').reply('yes');
    driver.send({ type: 'stop', cause: 'falseAlarm' }).goodUntil('keyOn.faults.asking');
    read(driver, WATCHED);
    expect(driver.context.faults[0]?.seenMs).toBeGreaterThan(driver.nowMs - 10_000);
  });
});

describe('a watched fault', () => {
  const WATCH_MS = 60_000;

  it('has its time from when the engine fires: however long codes are read with the key on, it does not block', () => {
    const driver = asked.fork().reply('readACode').value('suspectParameter', 157).value('failureMode', 18);
    driver.reply('yes', { afterMs: WATCH_MS }).reply('noMoreCodes', { afterMs: 10 * WATCH_MS });
    expect(driver.reply('yes', { afterMs: WATCH_MS }).context.step).toBe('keyOn.heaterHold');
    expect(driver.goodUntil('firstFire.transient.asking').context.timer?.totalMs).toBe(WATCH_MS);
  });

  it('is no dead end after a stop: read again at the next try, it has its time once more', () => {
    const driver = read(asked.fork(), WATCHED).goodUntil('firstFire.crank.askingClear');
    driver.stop({ by: 'technician', via: 'keys', afterMs: WATCH_MS });
    driver
      .reply('allOff', { via: 'keys' })
      .reply('causeFalseAlarm', { via: 'keys' })
      .reply('ready', { via: 'keys' });
    read(driver.goodUntil('keyOn.faults.asking'), WATCHED);
    expect(driver.context.step).toBe('keyOn.heaterHold');
    // Where it is read beside the running engine once its time since firing is over, it stops that.
    const runs = driver.goodUntil('firstFire.transient.asking').reply('faultCleared').reply('yes');
    expect(read(runs.goodUntil('sweeps.faults.asking'), WATCHED).context.stop).toMatchObject({
      cause: 'faultCode',
      step: 'sweeps.faults',
    });
  });

  const watching = read(asked.fork(), WATCHED).goodUntil('firstFire.transient.asking');

  it('is watched once the engine runs, and named', () => {
    expect(watching.context.lastSaid?.values).toEqual({
      fault: { list: [{ code: expect.objectContaining({ spn: 157, fmi: 18 }) }] },
    });
  });

  it('stops the engine when its time is up', () => {
    const beginMs = watching.context.timer?.startedMs ?? 0;
    const leftMs = WATCH_MS - (watching.nowMs - beginMs);
    expect(watching.fork().clock(leftMs - 1).name).toBe('firstFire.transient.asking');
    expect(watching.fork().clock(leftMs).context.stop).toMatchObject({ cause: 'faultCode' });
    expect(watching.fork().reply('faultCleared', { afterMs: leftMs }).name).toBe('stopped.makingSafe');
  });

  it('that clears, with its lamp dark, lets the run begin', () => {
    expect(watching.fork().reply('faultCleared').reply('yes').reply('dark').reply('yes').context.step).toBe(
      'firstRun.run',
    );
  });

  it('without one there is nothing to watch', () => {
    const driver = asked.fork().goodUntil(at => at.context.step.startsWith('checks.'));
    expect(driver.context.done).not.toContain('firstFire.transient');
  });

  it('that appears only after the sweeps is watched then', () => {
    const swept = asked.fork().goodUntil('sweeps.faults.asking');
    expect(read(swept, WATCHED).name).toBe('firstFire.transient.asking');
    expect(swept.reply('faultCleared').reply('yes').reply('dark').reply('yes').context.step).toBe(
      'shutdown.coolant',
    );
  });

  it('that comes back after it had cleared stops the engine', () => {
    const swept = watching.fork().reply('faultCleared').reply('yes').goodUntil('sweeps.faults.asking');
    expect(read(swept, WATCHED).context.stop).toMatchObject({ cause: 'faultCode', step: 'sweeps.faults' });
  });
});

describe('lamps', () => {
  it('that are not as expected with the key on keep the gate shut until they are', () => {
    const driver = new Driver(demoSix).goodUntil('keyOn.lamps.item1');
    expect(driver.reply('dark').name).toBe('keyOn.lamps.item1');
    expect(driver.lines).toEqual(['lampWrong']);
    expect(driver.reply('lit').name).toBe('keyOn.lamps.item2');
  });

  it('are each asked for against the profile, and confirmed together', () => {
    const driver = new Driver(demoSix).goodUntil('keyOn.lamps.item1');
    for (const lamp of demoSix.lamps) driver.reply(lamp.keyOn === 'on' ? 'lit' : 'dark');
    expect(driver.name).toBe('keyOn.lamps.readingBack');
    expect(driver.fork().reply('no').name).toBe('keyOn.lamps.item1');
    expect(driver.fork().reply('no').context.oneByOne).toBe('keyOn.lamps');
    expect(driver.reply('yes').context.done).toContain('keyOn.lamps');
  });

  it('lit while the engine runs stop it', () => {
    const driver = new Driver(demoSix).goodUntil('firstFire.lamps.item1').reply('lit');
    expect(driver.context.stop?.cause).toBe('faultCode');
  });
});

describe('the leak hunt', () => {
  it.each([
    ['fuelLeak', 1],
    ['coolantLeak', 2],
    ['oilLeak', 3],
    ['looseOrNoise', 4],
    ['looseOrNoise', 5],
    ['smokeOrFire', 6],
  ] as const)('stops for %s at one word at point %i', (cause, point) => {
    const driver = new Driver(demoSix).goodUntil(`checks.leaks.item${point}`).reply('leak', { by: 'second' });
    expect(driver.context.stop?.cause).toBe(cause);
  });
});
