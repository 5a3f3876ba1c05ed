import { describe, expect, it } from 'vitest';
import { emergencyWords } from '../../machines/help.ts';
import { ofKind } from '../../src/record/vocabulary/index.ts';
import { atStep, standingIn } from './helpers/forged.ts';
import { demoSix } from './helpers/profiles.ts';
import { stoppedAt } from './helpers/stopped-at.ts';

const keys = { via: 'keys' } as const;
const asking = (known = {}) => atStep(demoSix, 'fill.oilQuantity', 'asking', known);
const timer = { startedMs: 0, totalMs: 600_000, announced: 0 };

describe('in every state', () => {
  it('"status" tells the phase, the step and the gates that are open still', () => {
    const { said } = atStep(demoSix, 'signOff.sign', 'asking').send({ type: 'status' }, keys).last;
    expect(said).toMatchObject([
      {
        line: 'status',
        priority: 'notice',
        values: {
          phase: { phase: 'signOff' },
          title: { step: 'signOff.sign' },
          open: { line: 'statusOpen', values: { gates: { list: [{ gate: 'signature' }] } } },
        },
      },
    ]);
  });

  it('"how long" tells what is left, or that nothing is timed', () => {
    const told = (known: object) =>
      asking(known).send({ type: 'timeLeft' }, { ...keys, afterMs: 60_000 }).last.said;
    expect(told({ timer })).toMatchObject([{ line: 'timeLeft', values: { time: { unit: 's', si: 540 } } }]);
    expect(told({})).toMatchObject([{ line: 'noTimer' }]);
  });

  it('"say again" says what was said last, or what is always understood', () => {
    const lastSaid = { line: 'levelRisen', step: 'fill.oilLevel', values: {}, priority: 'hazard' } as const;
    expect(asking({ lastSaid }).send({ type: 'sayAgain' }, keys).last.said).toEqual([lastSaid]);
    expect(asking().send({ type: 'sayAgain' }, keys).last.said).toEqual([
      { line: 'helpAlways', step: 'fill.oilQuantity', values: emergencyWords, priority: 'prompt' },
    ]);
  });

  it('"help" names what may be said, and the words that stop', () => {
    const { said } = standingIn(demoSix, 'held').send({ type: 'help' }, keys).last;
    expect(said).toMatchObject([{ line: 'helpAlways', values: emergencyWords }]);
  });
});

describe('on hold', () => {
  it('work stands still, and goes on where it was, however deep', () => {
    const driver = asking().value('oilQuantity', demoSix.oil.capacityL);
    const { name } = driver;
    expect(name).toBe('fill.oilQuantity.readingBack');
    driver.send({ type: 'hold' }, keys);
    expect(driver.name).toBe('held');
    expect(driver.last.said).toMatchObject([{ line: 'onHold', priority: 'notice' }]);
    expect(driver.context).toMatchObject({ heldSinceMs: driver.nowMs, unanswered: null });
    driver.send({ type: 'continue' }, keys);
    expect(driver.name).toBe(name);
    expect(driver.lines).toContain('goesOn');
    expect(driver.context.heldSinceMs).toBeNull();
  });

  it('what is timed is moved by as long as it lasted', () => {
    const driver = asking({ timer }).send({ type: 'hold' }, keys);
    driver.send({ type: 'continue' }, { ...keys, afterMs: 90_000 });
    expect(driver.context.timer).toEqual({ ...timer, startedMs: 90_000 });
  });

  it('beside a running engine it is told how long that may last, told once more, and then everything is off', () => {
    const driver = atStep(demoSix, 'warmUp.hose', 'asking').send({ type: 'hold' }, keys);
    const [onHold] = driver.last.said;
    expect(onHold).toMatchObject({ line: 'onHoldRunning', priority: 'hazard' });
    const { time } = (onHold?.values ?? {}) as { time?: { si: number } };
    const endsMs = driver.nowMs + 1000 * (time?.si ?? 0);
    const told: string[] = [];
    while (driver.name === 'held') {
      driver.ring();
      for (const { line, priority, values } of driver.last.said)
        if (line === 'holdRunsOut') {
          told.push(priority);
          expect(values).toEqual({ time: { unit: 's', si: (endsMs - driver.nowMs) / 1000 } });
        }
    }
    expect(told.length).toBeGreaterThan(0);
    expect(new Set(told)).toEqual(new Set(['hazard']));
    expect(driver.nowMs).toBe(endsMs);
    expect(driver.name).toBe('stopped.makingSafe');
  });
});

describe('the end', () => {
  it('of a start that went well is said, and nothing is awaited any more', () => {
    const driver = atStep(demoSix, 'signOff.sign', 'asking', { nextLookMs: 5000, misheard: 1 });
    driver.reply('iSign', { ...keys, by: 'supervisor' });
    if (driver.name !== 'signedOff') driver.reply('yes', { ...keys, by: 'supervisor' });
    expect(driver.name).toBe('signedOff');
    expect(driver.over).toBe(true);
    expect(driver.lines).toContain('signedOff');
    expect(driver.context).toMatchObject({ nextLookMs: null, misheard: 0, pending: null, timer: null });
    expect(driver.context.lastSaid).toMatchObject({ line: 'signedOff', values: {} });
    expect(driver.last.notes.filter(ofKind('passed'))).toHaveLength(1);
  });

  it('of a session that is ended in a stop is said', () => {
    const stop = stoppedAt('warmUp.watch', null);
    const driver = standingIn(demoSix, { stopped: 'askingCause' }, { step: 'warmUp.watch', stop });
    driver.reply('endSession', keys).reply('yes', keys);
    expect(driver.name).toBe('ended');
    expect(driver.lines).toContain('ended');
    expect(driver.lines).not.toContain('endedBarred');
  });
});

describe('a stop that nobody calls', () => {
  it('comes at the moment at which an answer is too late, with its cause, and everything is off', () => {
    const deadline = { sinceMs: 0, atMs: 8000, cause: 'noOilPressure', extended: false } as const;
    const at = (ms: number) =>
      atStep(demoSix, 'firstFire.oilPressure', 'asking', { deadline, runsSinceMs: 0 }).clock(ms);
    expect(at(7999).name).toBe('firstFire.oilPressure.asking');
    const late = at(8000);
    expect(late.name).toBe('stopped.makingSafe');
    expect(late.context.stop).toMatchObject({ cause: 'noOilPressure', lateAfterS: 8, by: 'technician' });
    expect(late.lines).toContain('answerLate');
  });

  it('within a stop begins it anew: everything off is asked for once more', () => {
    const stop = stoppedAt('warmUp.watch', null);
    const driver = standingIn(demoSix, { stopped: 'askingCause' }, { step: 'warmUp.watch', stop }).stop();
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stops).toBe(1);
    expect(driver.last.notes).toContainEqual({
      kind: 'stopped',
      data: { step: 'warmUp.watch', cause: null, by: 'technician' },
    });
  });
});
