import { describe, expect, it } from 'vitest';
import { silenceEndsMs } from '../../../machines/kinds/unanswered.ts';
import { withinRange } from '../../../machines/limits/readings.ts';
import { confirm, faults, hold, inspect, reading, watch } from '../../../machines/step-makers.ts';
import type { Step } from '../../../machines/steps.ts';
import { OneStep } from '../helpers/one-step.ts';

const running = { engine: 'running' } as const;
const judge = withinRange('chargingVoltage', { min: 13, max: 15 });

const glance = confirm('warmUp.hose', 'thermostatOpen', running);
const hunt = confirm('warmUp.hose', 'thermostatOpen', { ...running, patience: 'hunt' });

/** What each look at the clock, every ten seconds, brings for so long. */
function toldIn(step: OneStep, seconds: number): readonly string[] {
  const told: string[] = [];
  for (let s = 10; s <= seconds && step.name !== 'stopped'; s += 10) {
    step.clock(10);
    for (const { line, priority } of step.said) told.push(`${s} ${line} ${priority}`);
    if (step.name === 'stopped') told.push(`${s} stopped`);
  }
  return told;
}

describe('a question beside a running engine that nobody answers', () => {
  it('at a glance: reminded after 20 s, called out to the other after 40, everything off after 60', () => {
    expect(toldIn(new OneStep(glance), 100)).toEqual([
      '20 stillWaiting notice',
      '40 lookForTechnician hazard',
      '60 stopped',
    ]);
  });

  it('in a hunt: reminded each minute, called out after three, everything off after five', () => {
    expect(toldIn(new OneStep(hunt), 400)).toEqual([
      '60 stillWaiting notice',
      '120 stillWaiting notice',
      '180 lookForTechnician hazard',
      '240 stillWaiting notice',
      '300 stopped',
    ]);
  });

  it.each([
    [glance, [20, 40, 60]],
    [hunt, [60, 120, 180, 240, 300]],
  ] as const)(
    'has the clock looked at for each of its moments, and no moment comes before',
    (step, moments) => {
      const asked = new OneStep(step, { beginsS: 7 });
      for (const moment of moments) {
        expect(asked.alarmS).toBe(7 + moment);
        const early = asked.fork().clock(7 + moment - 0.001 - asked.nowMs / 1000);
        expect(early.said).toEqual([]);
        expect(early.name).toBe('asking');
        asked.clock(7 + moment - asked.nowMs / 1000);
      }
      expect(asked.name).toBe('stopped');
      expect(asked.context.stop).toMatchObject({ cause: null, lateAfterS: moments.at(-1) });
    },
  );

  it('is stopped by a clock that comes late too, whatever was not told meanwhile', () => {
    for (const seconds of [60, 61, 1000]) expect(new OneStep(glance).clock(seconds).name).toBe('stopped');
    const late = new OneStep(glance).clock(45);
    expect(late.name).toBe('asking');
    expect(late.lines).toEqual(['stillWaiting']);
  });

  it('names what is asked, and looks for whoever was asked', () => {
    const step = new OneStep(glance).clock(20);
    expect(step.said).toEqual([
      {
        line: 'stillWaiting',
        step: 'warmUp.hose',
        values: { title: { step: 'warmUp.hose' } },
        priority: 'notice',
      },
    ]);
    const second = new OneStep({ ...glance, by: 'second' }).clock(20).clock(20);
    expect(second.said).toMatchObject([{ line: 'lookForSecond', values: {}, priority: 'hazard' }]);
  });

  it('waits for the engine to stand where that is what is asked', () => {
    expect(new OneStep({ ...glance, standing: true }).clock(20).lines).toEqual(['stillWaitingOff']);
  });

  it.each(['notYet', 'yes'] as const)('is as new after any word, "%s" too, by any hand', id => {
    for (const via of ['voice', 'keys', 'touch'] as const) {
      const step = new OneStep(glance).clock(20).reply('notYet', { via, afterMs: 10_000 });
      expect(step.context.unanswered).toEqual({ sinceMs: 30_000, told: 0, patience: 'glance' });
    }
    const hunting = new OneStep(hunt).clock(60).reply('notYet', { afterMs: 10_000 });
    expect(hunting.context.unanswered).toEqual({ sinceMs: 70_000, told: 0, patience: 'hunt' });
    expect(new OneStep(glance).reply(id, { by: 'second' }).name).toBe('asking');
  });

  it('is no newer by what the bus or the clock says', () => {
    for (const via of ['bus', 'tool'] as const) {
      const step = new OneStep(glance).reply('notYet', { via, afterMs: 10_000 });
      expect(step.context.unanswered).toMatchObject({ sinceMs: 0 });
    }
  });

  it('is not lengthened by what is not understood, nor by a hold', () => {
    expect(new OneStep(glance).unclear(3).context.unanswered).toMatchObject({ sinceMs: 0 });
    const held = new OneStep(glance, { context: { heldSinceMs: 0 } }).reply('notYet');
    expect(held.context.unanswered).toMatchObject({ sinceMs: 0 });
  });

  it('is over with the answer', () => {
    const step = new OneStep(glance).reply('thermostatOpen');
    expect(step.name).toBe('next');
    expect(step.context.unanswered).toBeNull();
  });
});

describe('how long a question may go unanswered', () => {
  const timeUp = { seconds: () => 600, open: 'notOpenedInTime' } as const;
  const endsS = (step: Step) =>
    toldIn(new OneStep(step), 400).at(-1) === '60 stopped' ? 'a minute' : 'five minutes';

  it('is a glance where something is looked at or read, and a hunt where it is gone for or watched', () => {
    const series = {
      count: 2,
      judge: () => ({ ok: false, issue: { code: 'tooLittleData', input: 'x' } }) as const,
    };
    expect(endsS(glance)).toBe('a minute');
    expect(endsS(reading('checks.charging', 'chargingVoltage', judge, running))).toBe('a minute');
    expect(endsS(inspect('checks.leaks', { ...running, points: [{ id: 'boots', cause: null }] }))).toBe(
      'a minute',
    );
    expect(endsS(reading('checks.idle', 'engineSpeed', judge, { ...running, series }))).toBe('five minutes');
    expect(endsS(faults('sweeps.faults', running))).toBe('five minutes');
    expect(
      endsS(
        watch('warmUp.watch', {
          ...running,
          ok: 'thermostatOpen',
          everyS: () => 60,
          atLeastS: () => 0,
          timeUp,
        }),
      ),
    ).toBe('five minutes');
  });

  it('is what its step says, before all that', () => {
    expect(endsS(hunt)).toBe('five minutes');
    expect(endsS({ ...faults('sweeps.faults', running), patience: 'glance' })).toBe('a minute');
  });

  it('is a hunt where the second person is fetched for another gauge', () => {
    const step = new OneStep(reading('checks.oilPressure', 'oilPressure', judge, running), {
      context: { doubted: { quantity: 'oilPressure', si: 700 } },
    });
    step.value('oilPressure', 700);
    expect(step.name).toBe('vouching');
    expect(step.context.unanswered).toMatchObject({ patience: 'hunt', told: 0 });
  });
});

it('a silence ends when everything is off, and where nobody is asked there is none', () => {
  expect(silenceEndsMs({ unanswered: null })).toBeNull();
  expect(silenceEndsMs({ unanswered: { sinceMs: 7000, told: 2, patience: 'glance' } })).toBe(67_000);
  expect(silenceEndsMs({ unanswered: { sinceMs: 7000, told: 0, patience: 'hunt' } })).toBe(307_000);
});

describe('nobody is asked', () => {
  it('beside an engine that stands, or by its starter', () => {
    for (const engine of ['off', 'cranking'] as const) {
      const step = new OneStep({ ...glance, engine });
      expect(step.context.unanswered).toBeNull();
      expect(step.clock(1000).name).toBe('asking');
    }
  });

  it('once there is only time to wait for, until the next look', () => {
    const timeUp = { seconds: () => 600, open: 'notOpenedInTime' } as const;
    const more = { ok: 'thermostatOpen', everyS: () => 60, atLeastS: () => 300, timeUp } as const;
    const step = new OneStep(watch('warmUp.watch', { ...running, ...more }));
    expect(step.context.unanswered).toMatchObject({ patience: 'hunt' });
    step.reply('thermostatOpen', { via: 'keys' });
    expect(step.name).toBe('between');
    expect(step.context.unanswered).toBeNull();
  });

  it('while time alone goes by', () => {
    const step = new OneStep(
      hold('firstRun.run', () => 120, running),
      { context: { unanswered: null } },
    );
    expect(step.context.unanswered).toBeNull();
    step.clock(119);
    expect(step.name).toBe('counting');
    expect(step.offer).toEqual({ by: 'technician', replies: [], awaits: 'time' });
  });

  it('twice: seconds of its own run already', () => {
    const within = {
      seconds: () => 200,
      cause: 'noOilPressure',
      judge,
    } as const;
    const step = new OneStep({ ...glance, within });
    expect(step.context.unanswered).toBeNull();
    expect(step.clock(199).name).toBe('asking');
    expect(step.clock(1).context.stop?.cause).toBe('noOilPressure');
  });
});
