import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../machines/first-start.ts';
import { Driver } from './helpers/driver.ts';
import { demoBoat, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const stoppedAt = (state: string) =>
  sessionAt(demoSix, state).stop({ by: 'second', via: 'touch', afterMs: 0 });

/** What is called out in so many seconds of silence, and when. */
function calls(driver: Driver, forS: number): [seconds: number, line: string][] {
  const beganMs = driver.nowMs;
  const called: [number, string][] = [];
  while (driver.alarmMs !== null && driver.alarmMs <= beganMs + forS * 1000) {
    driver.ring();
    for (const { line, priority } of driver.last.said)
      if (priority === 'hazard') called.push([(driver.nowMs - beganMs) / 1000, line]);
  }
  return called;
}

describe('a stop beside an engine that may turn, which nobody answers', () => {
  it('is called out again after fifteen seconds, from the second time with what cuts it off, and all off is asked for', () => {
    const stopped = stoppedAt('warmUp.watch.asking');
    expect(calls(stopped, 90)).toEqual([
      [15, 'notOffYet'],
      [30, 'stopHeardCut'],
      [60, 'stopHeardCut'],
      [90, 'stopHeardCut'],
    ]);
    expect(stopped.name).toBe('stopped.makingSafe');
    expect(stopped.lines).toEqual(['stopHeardCut', 'areAllOff']);
  });

  it('comes less often as it lasts, and never ends', () => {
    const seconds = calls(stoppedAt('warmUp.watch.asking'), 3600).map(([at]) => at);
    expect(seconds.slice(0, 5)).toEqual([15, 30, 60, 90, 120]);
    expect(seconds.at(-1)).toBe(3600);
    expect(seconds.slice(-3)).toEqual([3480, 3540, 3600]);
  });

  it('leaves time to be heard in: each call is said once, and the next comes thirty seconds later', () => {
    const stopped = stoppedAt('warmUp.watch.asking');
    for (let call = 0; call < 5; call += 1) {
      const { said } = stopped.ring().last;
      expect(said.filter(({ priority }) => priority === 'hazard')).toEqual([
        expect.objectContaining({ once: true }),
      ]);
    }
  });

  it('goes on while "all off" waits for its read-back, and asks for that again', () => {
    const said = stoppedAt('checks.leaks.item1').reply('allOff', { via: 'voice' });
    expect(said.name).toBe('stopped.makingSafeReadBack');
    expect(calls(said, 40).length).toBeGreaterThan(1);
    expect(said.name).toBe('stopped.makingSafeReadBack');
    expect(said.lines).toEqual(['stopHeardCut', 'readBackReply']);
  });

  it('is over with "all off", and with the end of the session', () => {
    const off = stoppedAt('checks.leaks.item1').reply('allOff', { via: 'keys' });
    expect(off.name).toBe('stopped.askingCause');
    expect(off.alarmMs).toBeNull();
  });

  it('follows the silence that stopped it as well: nobody who says nothing is left alone with a running engine', () => {
    const silent = sessionAt(demoSix, 'checks.leaks.item1');
    while (!silent.name.startsWith('stopped')) silent.ring();
    expect(calls(silent, 30)).toEqual([
      [15, 'notOffYet'],
      [30, 'stopHeardCut'],
    ]);
  });

  it('is called out in no state that stands still for good: wherever it was stopped with fuel or starter, a clock is set', () => {
    for (const profile of [demoSix, demoBoat]) {
      const engineOf = new Map<string, string>(procedureFor(profile).map(step => [step.id, step.engine]));
      const driver = new Driver(profile);
      let turning = 0;
      while (!driver.over) {
        const engine = engineOf.get(driver.context.step);
        const stopped = driver.fork([]).stop({ by: 'technician', via: 'keys' });
        if (!driver.name.startsWith('stopped') && stopped.name === 'stopped.makingSafe') {
          if (engine !== 'off') turning += 1;
          expect(stopped.alarmMs === null, driver.name).toBe(engine === 'off');
        }
        driver.good();
      }
      expect(turning).toBeGreaterThan(20);
    }
  });
});

describe('a stop after another', () => {
  const named = (state: string) =>
    sessionAt(demoSix, state)
      .stop({ by: 'technician', via: 'keys' })
      .reply('allOff', { via: 'keys' })
      .reply('causeFalseAlarm', { via: 'keys' });

  it('that was a false alarm is called out as what it is, and its own cause is asked for', () => {
    const again = named('warmUp.watch.asking');
    expect(again.name).toBe('stopped.reopened');
    again.stop({ by: 'technician', via: 'keys' });
    expect(again.last.said.filter(({ values }) => 'cause' in values)).toEqual([]);
    expect(again.context.stop?.cause).toBeNull();
    expect(again.reply('allOff', { via: 'keys' }).name).toBe('stopped.askingCause');
  });

  it('with a cause of its own has that cause', () => {
    const again = named('checks.leaks.item1').send(
      { type: 'stop', cause: 'someoneHurt' },
      { by: 'second', via: 'touch' },
    );
    expect(again.context.stop).toMatchObject({ cause: 'someoneHurt', also: [] });
  });

  it('tells only once what was answered too late', () => {
    const late = sessionAt(demoSix, 'firstFire.oilPressure.asking').clock(8000);
    expect(late.lines).toContain('answerLate');
    expect(late.stop({ by: 'second', via: 'touch' }).lines).not.toContain('answerLate');
  });
});
