import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../../machines/first-start.ts';
import type { StepId } from '../../../prompts/types.ts';
import { ofKind } from '../../../src/record/vocabulary/index.ts';
import { demoFour, demoSix } from '../helpers/profiles.ts';
import { isDone, type Shown, sessionAt } from './sessions.ts';

/** Seconds that have to pass; those of the heater by its table, 25 s at -10 degC and 10 at 5. */
const holds: readonly (readonly [step: StepId, seconds: number, shown: Shown])[] = [
  ['fill.coolantBleed', 120, {}],
  ['keyOn.heaterHold', 10, { ambientTemperature: 5 }],
  ['keyOn.heaterHold', 25, { ambientTemperature: -10 }],
  ['firstRun.run', 120, {}],
  ['firstRun.drain', 180, {}],
  ['shutdown.settle', 180, {}],
  // Looks after 120, 420 and 900 s.
  ['shutdown.firstSoak', 120, {}],
  ['shutdown.secondSoak', 300, {}],
  ['shutdown.thirdSoak', 480, {}],
];

describe('a hold is over when its time has come, and not a millisecond before', () => {
  it.each(holds)('%s: %d s', (step, seconds, shown) => {
    const at = sessionAt(demoSix, `${step}.counting`, shown);
    const startedMs = at.context.timer?.startedMs ?? Number.NaN;
    const waited = (ms: number) => at.fork([]).clock(startedMs + ms - at.nowMs);
    expect(isDone(waited(seconds * 1000 - 1), step)).toBe(false);
    expect(isDone(waited(seconds * 1000), step)).toBe(true);
  });

  it('every hold of the procedure is in this table', () => {
    const all = [demoSix, demoFour]
      .flatMap(procedureFor)
      .flatMap(step => (step.kind === 'hold' ? [step.id] : []));
    expect(new Set(holds.map(([step]) => step))).toEqual(new Set(all));
  });
});

describe('a pause of the work', () => {
  const pause = (step: StepId) => {
    const at = sessionAt(demoSix, `${step}.counting`, { ambientTemperature: 5 });
    const goneMs = 4000;
    return at
      .send({ type: 'hold' }, { afterMs: goneMs - (at.nowMs - (at.context.timer?.startedMs ?? Number.NaN)) })
      .send({ type: 'continue' }, { afterMs: 3_600_000 });
  };

  it('lets the intake cool: its heater works for its whole time again, and is told so', () => {
    const driver = pause('keyOn.heaterHold');
    expect(driver.name).toBe('keyOn.heaterHold.counting');
    expect(driver.lines).toEqual(['goesOn', 'ask', 'holdStarts']);
    expect(isDone(driver.fork([]).clock(9999), 'keyOn.heaterHold')).toBe(false);
    expect(isDone(driver.clock(10_000), 'keyOn.heaterHold')).toBe(true);
  });

  it('takes nothing from other times, which go on where they were', () => {
    const driver = pause('fill.coolantBleed');
    expect(driver.lines).toEqual(['goesOn']);
    expect(isDone(driver.fork([]).clock(115_999), 'fill.coolantBleed')).toBe(false);
    expect(isDone(driver.clock(116_000), 'fill.coolantBleed')).toBe(true);
  });

  it('before the starter is used says that what the heater gave is gone', () => {
    const driver = sessionAt(demoSix, 'firstFire.crank.askingClear', { ambientTemperature: 5 });
    driver.send({ type: 'hold' }).send({ type: 'continue' }, { afterMs: 3_600_000 });
    expect(driver.last.said.at(-1)).toMatchObject({ line: 'askClear', prefix: 'heatAgain' });
  });
});

describe('the wait lamp', () => {
  const asked = sessionAt(demoSix, 'keyOn.heaterDone.asking');
  const sinceMs = asked.context.deadline?.sinceMs ?? Number.NaN;
  // 15 s that it may outlast its wait, and 10 to ask and to answer.
  const out = (ms: number) => asked.fork([]).reply('lampOut', { afterMs: sinceMs + ms - asked.nowMs });

  it('that goes out in time is confirmed, and the time is on the record', () => {
    const driver = out(24_999).reply('yes');
    expect(isDone(driver, 'keyOn.heaterDone')).toBe(true);
    const data = driver.notes.find(ofKind('inTime'))?.data;
    expect(data).toMatchObject({ seconds: 24.999, met: true });
    expect(data?.margin).toBeCloseTo(0.001, 9);
  });

  it('that stays on longer is a fault', () => {
    expect(out(25_000).context.stop?.cause).toBe('faultCode');
  });
});
