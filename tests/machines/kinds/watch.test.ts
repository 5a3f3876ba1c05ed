import { describe, expect, it } from 'vitest';
import { withinRange } from '../../../machines/limits/readings.ts';
import { watch } from '../../../machines/step-makers.ts';
import type { WatchStep } from '../../../machines/steps.ts';
import type { Code } from '../../../src/record/vocabulary/event.ts';
import { type Around, OneStep } from '../helpers/one-step.ts';
import { demoSix } from '../helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;
const BUS = { via: 'bus' } as const;

/** It takes two minutes at least and ten at most; the bus is asked each minute, people every two. */
const timed = {
  ok: 'thermostatOpen',
  everyS: () => 60,
  peopleEveryS: () => 120,
  atLeastS: () => 120,
  timeUp: { seconds: () => 600, open: 'notOpenedInTime' },
} as const;

/** From 82 °C on it has come, from 75 what is said may be so, above 107 it is too hot. */
const gauge = {
  quantity: 'coolantTemperature',
  reached: withinRange('coolantTemperature', { min: 82 }),
  agrees: withinRange('coolantTemperature', { min: 75 }),
  bounds: withinRange('coolantTemperature', { max: 107 }),
  cause: 'overheating',
  farFrom: (_: unknown, si: number) => si < 60,
  outlook: (_: unknown, nowMs: number) =>
    ({ line: 'timeLeft', values: { time: { unit: 's', si: nowMs / 1000 } } }) as const,
} as const;

const watched = (more: Partial<WatchStep> = {}, around: Around = {}) =>
  new OneStep(watch('warmUp.watch', { ...timed, ...more }), around);

const withGauge = (more: Partial<WatchStep> = {}, around: Around = {}) =>
  watched({ reading: gauge, ...more }, around);

const told = (step: OneStep, si: number, how = {}) => step.fork().value('coolantTemperature', si, how);

/** Looked at for so many seconds since it began. */
const lookedAt = (step: OneStep, seconds: number) => step.fork().clock(seconds - step.nowMs / 1000);

describe('what is watched for', () => {
  const asked = watched();

  it('is asked for, by whoever watches; nobody is kept from a hold', () => {
    expect(asked.lines).toEqual(['ask']);
    expect(asked.offer).toEqual({ by: 'technician', replies: ['thermostatOpen', 'notYet'] });
    expect(asked.isCritical).toBe(false);
    expect(watched({ by: 'second' }).offer.by).toBe('second');
  });

  it('said to have come, is read back by voice and counts by keys', () => {
    const spoken = lookedAt(asked, 200).reply('thermostatOpen');
    expect(spoken.name).toBe('readingBack');
    expect(spoken.context.pending).toMatchObject({ kind: 'reply', id: 'thermostatOpen' });
    expect(spoken.fork().reply('no').name).toBe('asking');
    expect(spoken.offer.by).toBe('technician');
    expect(spoken.reply('yes').name).toBe('next');
    expect(lookedAt(asked, 200).reply('thermostatOpen', KEYS).name).toBe('next');
  });

  it('does not count before its least time, with what is left of it, and does from then on', () => {
    for (const early of [
      lookedAt(asked, 100).reply('thermostatOpen', KEYS),
      lookedAt(asked, 99).reply('thermostatOpen').reply('yes'),
    ]) {
      expect(early.name).toBe('between');
      expect(early.said).toMatchObject([{ line: 'tooEarly', values: { time: { unit: 's', si: 19 } } }]);
      expect(early.context.done).toEqual([]);
      expect(early.clock(120).context.pending).toBeNull();
    }
    expect(lookedAt(asked, 118.999).reply('thermostatOpen', KEYS).name).toBe('between');
    expect(lookedAt(asked, 119).reply('thermostatOpen', KEYS).name).toBe('next');
  });

  it('is judged by the rule of its step where there is one, and one without an answer never lets it pass', () => {
    const rule = { id: 'long-enough', source: 'common practice, no published source', validity: 'any' };
    const ruled = (met: boolean) => (seconds: number) => {
      seen.push(seconds);
      return { ok: true, value: { met, value: seconds, unit: 's', margin: 1, rule }, rule } as const;
    };
    const seen: number[] = [];
    expect(lookedAt(watched({ enough: ruled(true) }), 5).reply('thermostatOpen', KEYS).name).toBe('next');
    expect(seen).toEqual([6]);
    expect(lookedAt(watched({ enough: ruled(false) }), 500).reply('thermostatOpen', KEYS).name).toBe(
      'between',
    );
    const unknown = () => ({ ok: false, issue: { code: 'tooLittleData', input: 'time' } }) as const;
    expect(lookedAt(watched({ enough: unknown }), 500).reply('thermostatOpen', KEYS).name).toBe('between');
  });

  it('is asked for again after a while, of people and of the bus', () => {
    const said = lookedAt(asked, 9).reply('thermostatOpen', KEYS);
    expect(said.name).toBe('between');
    expect(said.alarmS).toBe(130);
    expect(said.context).toMatchObject({
      misheard: 0,
      lastSaid: { line: 'ask', step: 'warmUp.watch', priority: 'prompt' },
    });
    expect(said.fork().clock(119.999).name).toBe('between');
    const due = said.fork().clock(120);
    expect(due.name).toBe('asking');
    expect(due.lines).toEqual(['ask']);
    expect(due.context.nextLookMs).toBeNull();
    expect(watched({ peopleEveryS: () => 30 }).reply('thermostatOpen', KEYS).alarmS).toBe(31);
    const { peopleEveryS, ...alike } = timed;
    expect(new OneStep(watch('warmUp.watch', alike)).reply('thermostatOpen', KEYS).alarmS).toBe(61);
  });

  it('may be said to have come between two looks as well', () => {
    const between = lookedAt(asked, 9).reply('thermostatOpen', KEYS);
    expect(between.offer).toEqual({
      by: 'technician',
      replies: ['thermostatOpen', 'notYet'],
      awaits: 'time',
    });
    expect(between.clock(110).reply('thermostatOpen', KEYS).name).toBe('next');
  });

  it('is looked at when that was due, whatever hold came between', () => {
    const between = lookedAt(asked, 9).reply('thermostatOpen', KEYS);
    const held = between.fork().send({ type: 'hold' });
    expect(held.context.nextLookMs).toBe(130_000);
    const on = held.fork().clock(20).send({ type: 'continue' });
    expect(on.name).toBe('between');
    expect(on.context.nextLookMs).toBe(130_000);
    expect(between.fork().clock(120).context.nextLookMs).toBeNull();
    expect(between.clock(110).reply('thermostatOpen', KEYS).context.nextLookMs).toBeNull();
  });

  it('still shown by the bus, has not come, whoever says so', () => {
    const codes: readonly Code[] = [{ spn: 157, fmi: 18 }];
    const step = watched({
      atLeastS: () => 0,
      stillShown: (_, shown) => shown.filter(({ spn }) => spn === 157),
    });
    for (const via of ['voice', 'keys'] as const) {
      const said = step.fork().reply('thermostatOpen', { via, bus: { codes } });
      expect(said.name).toBe('asking');
      expect(said.said).toMatchObject([
        { line: 'codeStillShown', values: { codes: { list: [{ code: { spn: 157, fmi: 18 } }] } } },
      ]);
      expect(said.notes).toEqual([
        { kind: 'disagreement', data: { step: 'warmUp.watch', spoken: 'thermostatOpen', bus: codes } },
      ]);
    }
    for (const bus of [{ codes: [] }, { codes: [{ spn: 1, fmi: 1 }] }, {}])
      expect(step.fork().reply('thermostatOpen', { ...KEYS, bus }).name).toBe('next');
    expect(watched({ atLeastS: () => 0 }).reply('thermostatOpen', { ...KEYS, bus: { codes } }).name).toBe(
      'next',
    );
  });

  it('that has come settles what an earlier watch left open', () => {
    const openItems = [
      { step: 'warmUp.watch', by: 'technician' },
      { step: 'checks.charging', by: 'technician' },
    ] as const;
    const passed = (settles: WatchStep['settles']) =>
      watched({ atLeastS: () => 0, ...(settles && { settles }) }, { context: { openItems } }).reply(
        'thermostatOpen',
        KEYS,
      );
    expect(passed('warmUp.watch').context.openItems).toEqual(openItems.slice(1));
    expect(passed('warmUp.watch').notes).toMatchObject([{ kind: 'settled' }, { kind: 'passed' }]);
    expect(passed(undefined).context.openItems).toEqual(openItems);
  });
});

describe('what has not come when its time is up', () => {
  const answers = [
    (step: OneStep) => step.clock(1),
    (step: OneStep) => step.reply('thermostatOpen', KEYS),
    (step: OneStep) => step.reply('notYet'),
  ] as const;

  it('stops with its cause, and no answer counts any more', () => {
    const step = lookedAt(watched({ timeUp: { seconds: () => 600, cause: 'faultCode' } }), 599);
    expect(step.name).toBe('asking');
    for (const late of answers) {
      const stopped = late(step.fork());
      expect(stopped.name).toBe('stopped');
      expect(stopped.context.stop?.cause).toBe('faultCode');
    }
  });

  it('or is left open, and settles what stands for it', () => {
    const openItems = [{ step: 'warmUp.fastIdle', by: 'technician' }] as const;
    for (const [settles, left] of [
      ['warmUp.fastIdle', []],
      [undefined, openItems],
    ] as const)
      for (const late of answers) {
        const open = late(
          lookedAt(watched({ ...(settles && { settles }) }, { context: { openItems } }), 599),
        );
        expect(open.name).toBe('next');
        expect(open.said).toMatchObject([
          { line: 'notOpenedInTime', values: { load: { line: 'firstDrive', values: {} } } },
        ]);
        expect(open.context.openItems).toEqual([...left, { step: 'warmUp.watch', by: 'technician' }]);
        expect(open.notes.map(({ kind }) => kind)).toEqual([
          ...(settles ? ['settled'] : []),
          'leftOpen',
          'passed',
        ]);
      }
  });

  it('in a read-back and between two looks too, and a value is late as well', () => {
    const readingBack = lookedAt(watched(), 590).reply('thermostatOpen');
    expect(readingBack.name).toBe('readingBack');
    expect(readingBack.fork().clock(9).name).toBe('next');
    expect(readingBack.fork().reply('no', { afterMs: 9000 }).context.openItems).toHaveLength(1);
    const between = told(withGauge(), 40, KEYS);
    expect(between.name).toBe('between');
    expect(lookedAt(between, 599).name).toBe('asking');
    expect(lookedAt(between, 600).context.openItems).toHaveLength(1);
    expect(told(lookedAt(between, 599), 90, KEYS).context.openItems).toHaveLength(1);
  });
});

describe('a gauge that is read while something is watched for', () => {
  const asked = withGauge();

  it('is asked for first as its step says, and then how it is now', () => {
    expect(asked.lines).toEqual(['ask']);
    expect(asked.offer).toEqual({
      by: 'technician',
      replies: ['thermostatOpen', 'notYet'],
      quantity: 'coolantTemperature',
      measures: 'now',
    });
    const due = told(asked, 40, KEYS).clock(120);
    expect(due.name).toBe('asking');
    expect(due.said).toMatchObject([
      { line: 'coolantNow', values: { unit: { unitOf: 'coolantTemperature' } } },
    ]);
  });

  it('is asked for as its step says where it was read before the watch began, or in another step', () => {
    const earlier = { quantity: 'coolantTemperature', si: 40, atMs: 6999, step: 'warmUp.watch' } as const;
    const first = (...readings: readonly (typeof earlier | { atMs: number })[]) =>
      withGauge({}, { beginsS: 7, context: { readings: readings.map(each => ({ ...earlier, ...each })) } })
        .lines;
    expect(first(earlier)).toEqual(['ask']);
    expect(first({ atMs: 7000 })).toEqual(['coolantNow']);
    const other = [{ ...earlier, atMs: 7000, step: 'checks.coolant' as const }];
    expect(withGauge({}, { beginsS: 7, context: { readings: other } }).lines).toEqual(['ask']);
    expect(watched({}, { beginsS: 7, context: { readings: [{ ...earlier, atMs: 7000 }] } }).lines).toEqual([
      'ask',
    ]);
  });

  it('said, is read back: above its end it ends the watch, below it goes on with an outlook', () => {
    const late = lookedAt(asked, 200);
    const reached = told(late, 82);
    expect(reached.name).toBe('readingBackValue');
    expect(reached.offer).toMatchObject({ by: 'technician', corrects: 'coolantTemperature' });
    expect(reached.isCritical).toBe(true);
    expect(reached.fork().reply('no').name).toBe('asking');
    reached.reply('yes');
    expect(reached.name).toBe('next');
    expect(reached.lines).toEqual(['justInside']);
    expect(reached.notes).toMatchObject([{ kind: 'verdict', data: { met: true } }, { kind: 'passed' }]);
    const below = told(late, 81.9).reply('yes');
    expect(below.name).toBe('between');
    expect(below.said).toMatchObject([{ line: 'timeLeft', values: { time: { unit: 's', si: 202 } } }]);
    expect(below.context.readings).toMatchObject([{ si: 81.9, step: 'warmUp.watch' }]);
    const early = told(asked, 90).reply('yes');
    expect(early.name).toBe('between');
    expect(early.lines).toEqual(['timeLeft']);
  });

  it('typed counts at once where it is far from too hot, and goes on or ends the watch', () => {
    const late = lookedAt(asked, 200);
    const ends = told(late, 90, KEYS);
    expect(ends.name).toBe('next');
    expect(ends.lines).toEqual(['echoShown']);
    expect(ends.notes).toMatchObject([{ kind: 'verdict', data: { met: true, min: 82 } }, { kind: 'passed' }]);
    expect(ends.context.readings).toMatchObject([{ si: 90 }]);
    const goesOn = told(late, 81.9, KEYS);
    expect(goesOn.name).toBe('between');
    expect(goesOn.lines).toEqual(['echoShown', 'timeLeft']);
    expect(goesOn.said[1]?.values).toEqual({ time: { unit: 's', si: 201 } });
    expect(goesOn.notes).toMatchObject([{ kind: 'verdict', data: { met: true, max: 107 } }]);
    expect(goesOn.context.readings).toMatchObject([{ si: 81.9 }]);
    expect(goesOn.context.echoed).toHaveLength(1);
    expect(told(asked, 90, KEYS).name).toBe('readingBackValue');
    for (const near of [98, 107]) expect(told(late, near, KEYS).name).toBe('readingBackValue');
  });

  it('typed against the bus is questioned, and said again read back with both', () => {
    const late = lookedAt(asked, 200);
    for (const si of [40, 90]) {
      const differs = told(late, si, { ...KEYS, bus: { si: 65 } });
      expect(differs.name).toBe('asking');
      expect(differs.lines).toEqual(['busDiffers']);
      expect(told(differs, si, { ...KEYS, bus: { si: 65 } }).lines).toEqual(['readBackDiffers']);
    }
  });

  it('shown by the bus counts at once, and is looked at again by the pace of the bus', () => {
    const late = lookedAt(asked, 200);
    const ends = told(late, 82, BUS);
    expect(ends.name).toBe('next');
    expect(ends.said).toMatchObject([{ line: 'justInside', prefix: 'fromBus' }]);
    const goesOn = told(late, 81.9, BUS);
    expect(goesOn.name).toBe('between');
    expect(goesOn.said).toMatchObject([
      {
        line: 'busValue',
        values: {
          name: { quantityName: 'coolantTemperature' },
          spoken: { quantity: 'coolantTemperature', si: 81.9 },
        },
      },
      { line: 'timeLeft', values: { time: { si: 201 } } },
    ]);
    expect(goesOn.notes).toMatchObject([{ kind: 'verdict', data: { met: true, max: 107, via: 'bus' } }]);
    expect(goesOn.context.readings).toMatchObject([{ si: 81.9, byBus: true }]);
    expect(goesOn.alarmS).toBe(261);
    expect(told(asked, 90, BUS).name).toBe('between');
    expect(told(late.fork().unclear(), 90, BUS).name).toBe('asking');
  });

  it('between two looks may be told as well, and is one more of a watch for the bus', () => {
    const between = told(asked, 40, KEYS);
    expect(between.offer).toMatchObject({
      awaits: 'time',
      measures: 'later',
      quantity: 'coolantTemperature',
    });
    const shown = told(between, 50, BUS);
    expect(shown.name).toBe('between');
    expect(shown.alarmS).toBe(62);
    expect(told(lookedAt(between, 100), 90).name).toBe('readingBackValue');
  });

  it('too hot stops: shown by the bus at once, said unless it is denied in eight seconds', () => {
    const between = told(asked, 40, KEYS);
    for (const step of [asked, between, lookedAt(asked, 200)]) {
      const shown = told(step, 107.1, BUS);
      expect(shown.context.stop?.cause).toBe('overheating');
      expect(shown.notes).toMatchObject([{ kind: 'verdict', data: { met: false, max: 107 } }]);
      const said = told(step, 107.1, KEYS);
      expect(said.name).toBe('readingBackValue');
      expect(said.isCritical).toBe(true);
      expect(said.context.deadline).toMatchObject({ cause: 'overheating', atMs: said.nowMs + 8000 });
      expect(said.fork().clock(7.999).name).toBe('readingBackValue');
      expect(said.fork().clock(8).context.stop?.cause).toBe('overheating');
      const denied = said.fork().reply('no');
      expect(denied.name).toBe('asking');
      expect(denied.context.deadline).toBeNull();
      const confirmed = said.fork().reply('yes');
      expect(confirmed.context.stop?.cause).toBe('overheating');
      expect(confirmed.lines).toEqual(['outside']);
      expect(confirmed.notes).toMatchObject([{ kind: 'verdict', data: { met: false } }]);
      expect(confirmed.context.readings.at(-1)).toMatchObject({ si: 107.1 });
    }
    expect(told(lookedAt(asked, 200), 107, BUS).name).toBe('next');
    expect(told(asked, 151).name).toBe('asking');
    expect(asked.fork().value('oilPressure', 120).name).toBe('asking');
    expect(told(asked.fork().unclear(3), 108, BUS).name).toBe('stopped');
  });

  it('of a bus that this engine does not have it on stops nothing and is not read back', () => {
    const { bus } = demoSix;
    const profile = { ...demoSix, ...(bus && { bus: { ...bus, readings: [] } }) };
    const step = told(withGauge({}, { profile }), 108, BUS);
    expect(step.name).toBe('asking');
    expect(step.said).toEqual([]);
  });

  it('too hot is not got round by the end of its time: it stops, and other values are left open', () => {
    const late = lookedAt(asked, 597);
    const hot = told(late, 108);
    expect(hot.context.timer).not.toBeNull();
    expect(hot.fork().clock(2).context.stop?.cause).toBe('overheating');
    expect(hot.fork().reply('no', { afterMs: 2000 }).context.stop?.cause).toBe('overheating');
    const warm = told(late, 90);
    expect(warm.fork().clock(2).name).toBe('next');
    expect(warm.fork().clock(2).context.openItems).toHaveLength(1);
    expect(told(lookedAt(asked, 599), 108).context.pending).toMatchObject({ stops: 'overheating' });
    expect(told(lookedAt(asked, 599), 108, BUS).context.stop?.cause).toBe('overheating');
  });

  it('that can hardly be true goes to the second person, for no longer than the time lasts', () => {
    const readings = [
      { quantity: 'ambientTemperature', si: 5, atMs: 0, step: 'job.ambient' },
      { quantity: 'coldestNight', si: -5, atMs: 0, step: 'job.coldestNight' },
    ] as const;
    const bursts = [{ step: 'firstFire.crank', startMs: 0, endMs: 0 }] as const;
    const warming = withGauge({ engine: 'running' }, { context: { readings, bursts } });
    const doubted = told(told(warming, 95), 95);
    expect(doubted.name).toBe('vouching');
    expect(told(doubted, 95).name).toBe('readingBackValue');
    expect(told(doubted, 40).name).toBe('asking');
    expect(lookedAt(doubted, 600).name).toBe('next');
    expect(told(doubted, 108, BUS).context.stop?.cause).toBe('overheating');
    expect(told(doubted, 108, { by: 'technician' }).name).toBe('readingBackValue');
  });
});

describe('what is said to have come beside a gauge', () => {
  it('is not believed before the gauge was read, nor where it shows otherwise', () => {
    const late = lookedAt(withGauge(), 200);
    for (const step of [late, told(late, 74.9, KEYS)])
      for (const via of ['voice', 'keys'] as const) {
        const said = step.fork().reply('thermostatOpen', { via });
        expect(said.name).toBe(step.name);
        expect(said.said).toMatchObject([
          {
            line: 'readFirst',
            values: {
              reply: { reply: 'thermostatOpen' },
              name: { quantityName: 'coolantTemperature' },
              limits: { limits: { unit: 'degC', min: 75 } },
            },
          },
        ]);
        expect(said.notes).toMatchObject([
          {
            kind: 'doubted',
            data: {
              step: 'warmUp.watch',
              quantity: 'coolantTemperature',
              reply: 'thermostatOpen',
              met: false,
            },
          },
        ]);
      }
  });

  it('counts where the last value read in this watch agrees', () => {
    const late = lookedAt(withGauge(), 200);
    expect(told(late, 75, KEYS).reply('thermostatOpen', KEYS).name).toBe('next');
    expect(told(told(late, 75, KEYS), 60, KEYS).reply('thermostatOpen', KEYS).name).toBe('between');
    const elsewhere = { quantity: 'coolantTemperature', si: 80, atMs: 0, step: 'checks.coolant' } as const;
    const step = lookedAt(withGauge({}, { context: { readings: [elsewhere] } }), 200);
    expect(step.reply('thermostatOpen', KEYS).lines).toEqual(['readFirst']);
  });
});

describe('a watch that follows on a reading', () => {
  const before = { quantity: 'coolantTemperature', si: 59, atMs: 0, step: 'checks.coolant' } as const;
  const follows = { step: 'checks.coolant', line: 'warmUpBegins' } as const;
  const begun = (reading: object, more: Partial<WatchStep> = {}, beginsS = 10) =>
    withGauge({ follows, ...more }, { beginsS, context: { readings: [{ ...before, ...reading }] } });

  it('needs no first look where that was just before and far from its end', () => {
    const step = begun({});
    expect(step.name).toBe('between');
    expect(step.lines).toEqual(['warmUpBegins']);
    expect(step.context.timer).toEqual({ startedMs: 10_000, totalMs: 600_000, announced: null });
    expect(step.alarmS).toBe(130);
    expect(begun({}, {}, 299.999).name).toBe('between');
    expect(begun({ atMs: 200_000 }, {}, 499.999).name).toBe('between');
    expect(begun({ atMs: 200_000 }, {}, 500).name).toBe('asking');
  });

  it('asks where it was near its end, long ago, in another step, or of something else', () => {
    expect(begun({ si: 60 }).name).toBe('asking');
    expect(begun({}, {}, 300).name).toBe('asking');
    expect(begun({ step: 'warmUp.watch' }).name).toBe('asking');
    expect(begun({ quantity: 'oilPressure' }).name).toBe('asking');
    expect(withGauge({ follows }).name).toBe('asking');
    const last = { ...before, si: 80, atMs: 5000 };
    expect(withGauge({ follows }, { context: { readings: [before, last] } }).name).toBe('asking');
    expect(watched({ follows }, { context: { readings: [before] } }).name).toBe('asking');
    expect(begun({}).context.timer).not.toBeNull();
  });

  it('asks where it follows on nothing', () => {
    expect(withGauge({}, { context: { readings: [before] } }).name).toBe('asking');
  });
});

describe('a watch that opens a gate', () => {
  const gated = lookedAt(withGauge({ gate: 'engineFired' }), 200);

  it('is passed by no number that nobody has confirmed, typed or of the bus', () => {
    for (const how of [KEYS, BUS, {}])
      for (const si of [40, 90]) {
        const step = told(gated, si, how);
        expect(step.name).toBe('readingBackValue');
        expect(step.context.done).toEqual([]);
      }
    expect(told(gated, 108, BUS).context.stop?.cause).toBe('overheating');
  });
});
