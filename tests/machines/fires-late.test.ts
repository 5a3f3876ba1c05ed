import { describe, expect, it } from 'vitest';
import { runsFromRpm } from '../../machines/limits/running.ts';
import { offerOf } from '../../machines/moment.ts';
import type { ReplyId } from '../../prompts/types.ts';
import type { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const KEYS = { via: 'keys' } as const;
const WITHIN_S = demoSix.oilPressure.firstFireWithinS;
const burstEndMs = ({ context }: Driver) => context.bursts.at(-1)?.endMs ?? Number.NaN;

/** A burst of which "nothing yet" was said, and then to one of the states in which it is believed to stand. */
function afterNothingYet(step: string, state: string): Driver {
  const driver = sessionAt(demoSix, `${step}.cranking`);
  driver.reply('nothingYet', { ...KEYS, afterMs: 200 }).reply('nothingYet', { ...KEYS, afterMs: 200 });
  expect(driver.name).toBe(`${step}.resting`);
  while (state !== 'resting' && driver.name !== `${step}.askingClear`) driver.ring();
  if (state === 'clearReadBack' || state === 'ready') driver.reply('clearToCrank', { by: 'second' });
  if (state === 'ready') driver.reply('yes', { by: 'second' });
  expect(driver.name).toBe(`${step}.${state}`);
  return driver;
}

const states = ['resting', 'askingClear', 'clearReadBack', 'ready'] as const;
const steps = ['firstFire.crank', 'firstRun.restart'] as const;
const places = steps.flatMap(step => states.map(state => [step, state] as const));

describe('an engine that fires after "nothing yet"', () => {
  it.each(places)(
    'in %s.%s is never left without seconds for its oil pressure, whoever says it',
    (step, state) => {
      for (const by of ['technician', 'second'] as const) {
        const driver = afterNothingYet(step, state);
        expect(offerOf(driver.moment).replies).toContain('fired');
        driver.reply('fired', { by });
        const { deadline } = driver.context;
        const endsMs = burstEndMs(driver) + WITHIN_S * 1000;
        if (driver.nowMs >= endsMs) expect(driver.name).toBe('stopped.makingSafe');
        else expect(deadline).toMatchObject({ atMs: endsMs, cause: 'noOilPressure' });
      }
    },
  );

  it('has what is left of its seconds since the burst, and stops when they are over', () => {
    const driver = afterNothingYet('firstFire.crank', 'resting').reply('fired');
    expect(driver.context.step).toBe('firstFire.oilPressure');
    expect(driver.alarmMs).toBe(burstEndMs(driver) + WITHIN_S * 1000);
    expect(driver.ring().context.stop).toMatchObject({ found: 'noOilPressure' });
  });

  it('and was not watched for longer than that is off at once, with nothing found and its cause asked', () => {
    const driver = afterNothingYet('firstFire.crank', 'askingClear').reply('fired');
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop).toMatchObject({ cause: null, found: null, lateAfterS: WITHIN_S });
  });

  it('without fuel is off with its own cause, in every one of these states', () => {
    for (const state of states) {
      const driver = afterNothingYet('noFuelCrank.untilPressure', state).reply('fired', { by: 'second' });
      expect(driver.context.stop).toMatchObject({ cause: 'firedUnfuelled' });
    }
  });
});

describe('an engine of which nobody said in the burst that it fired', () => {
  const over = (step: string) => {
    const driver = sessionAt(demoSix, `${step}.cranking`);
    while (driver.name !== `${step}.outcome`) driver.ring();
    return driver;
  };

  it.each(steps)('in %s has the seconds for its oil pressure from the end of the burst', step => {
    const driver = over(step).reply('fired', { ...KEYS, afterMs: 3000 });
    const endsMs = burstEndMs(driver) + WITHIN_S * 1000;
    expect(driver.nowMs).toBeLessThan(endsMs);
    expect(driver.context.runsSinceMs).toBe(burstEndMs(driver));
    expect(driver.context.deadline).toMatchObject({ atMs: endsMs, cause: 'noOilPressure' });
    expect(driver.ring().context.stop).toMatchObject({ cause: 'noOilPressure' });
  });

  it.each(steps)('in %s and that nobody watched for longer than that is off at once', step => {
    const late = (afterMs: number) => over(step).reply('fired', { ...KEYS, afterMs });
    const since = (driver: Driver) => driver.nowMs - burstEndMs(driver);
    const last = late(WITHIN_S * 1000 - 1);
    expect(since(last)).toBe(WITHIN_S * 1000 - 1);
    expect(last.name).not.toContain('stopped');
    const driver = late(WITHIN_S * 1000);
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop).toMatchObject({ cause: null, found: null, lateAfterS: WITHIN_S });
  });
});

describe('an engine that is said to stand and is shown to run', () => {
  const shown = runsFromRpm(demoSix);
  const said: readonly (readonly [state: string, id: ReplyId])[] = [
    ['resting', 'nothingYet'],
    ['askingClear', 'clearToCrank'],
    ['ready', 'ready'],
  ];
  const sights = [{ bus: { speedRpm: shown } }, { ear: { speedRpm: shown } }];

  it.each(said)('in %s by "%s" is not cranked, but asked for, and off after ten seconds', (state, id) => {
    for (const sight of sights) {
      const driver = afterNothingYet('firstFire.crank', state);
      const by = offerOf(driver.moment).by;
      driver.send({ type: 'reply', id, ...sight }, { by });
      expect(driver.name).toBe('firstFire.crank.runs');
      expect(driver.last.said).toMatchObject([{ line: 'itRuns', priority: 'hazard' }, { line: 'didItFire' }]);
      expect(driver.clock(9999).name).toBe('firstFire.crank.runs');
      expect(driver.clock(1).name).toBe('stopped.makingSafe');
    }
  });

  it.each(said)('without fuel, in %s by "%s", is off at once', (state, id) => {
    const driver = afterNothingYet('noFuelCrank.untilPressure', state);
    driver.send({ type: 'reply', id, ...sights[0] }, { by: offerOf(driver.moment).by });
    expect(driver.context.stop).toMatchObject({ cause: 'firedUnfuelled' });
  });

  it('is asked again what came of a burst, within its own seconds', () => {
    const driver = sessionAt(demoSix, 'firstFire.crank.cranking').reply('nothingYet');
    const { deadline } = driver.context;
    driver.send({ type: 'reply', id: 'nothingYet', bus: { speedRpm: shown } }, KEYS);
    expect(driver.name).toBe('firstFire.crank.outcome');
    expect(driver.lines).toEqual(['itRuns']);
    expect(driver.context.deadline).toEqual(deadline);
  });

  it('stands by the bus below the speed at which it runs by itself, whatever is heard beside it', () => {
    const driver = afterNothingYet('firstFire.crank', 'ready');
    driver.send({ type: 'reply', id: 'ready', bus: { speedRpm: 0 }, ear: { speedRpm: shown } }, KEYS);
    expect(driver.name).toBe('firstFire.crank.cranking');
  });
});

describe('pressure that has to hold', () => {
  const HOLD_S = demoSix.priming.holdS;
  const cranking = () => sessionAt(demoSix, 'noFuelCrank.holds.cranking');

  it.each(['voice', 'keys'] as const)(
    'said at once by %s, has the starter turn on for its whole time, then is read back',
    via => {
      const driver = cranking().reply('oilPressureShows', { via, afterMs: 300 });
      expect(driver.name).toBe('noFuelCrank.holds.holding');
      expect(driver.moment.hasTag('cranking')).toBe(true);
      expect(driver.fork().clock(HOLD_S * 1000 - 1).name).toBe('noFuelCrank.holds.holding');
      driver.clock(HOLD_S * 1000);
      expect(driver.name).toBe('noFuelCrank.holds.released');
      expect(driver.lines).toContain('release');
      const { startMs, endMs } = driver.context.bursts.at(-1) ?? { startMs: 0, endMs: 0 };
      expect(endMs - startMs).toBe(300 + HOLD_S * 1000);
      expect(driver.reply('yes', { via }).context.done).toContain('noFuelCrank.holds');
    },
  );

  it('and falls meanwhile has not held', () => {
    const driver = cranking().reply('oilPressureShows', { afterMs: 300 }).reply('nothingYet');
    expect(driver.name).toBe('noFuelCrank.holds.outcome');
    driver.reply('oilPressureShows', KEYS);
    expect(driver.lines).toContain('notHeld');
    expect(driver.name).toBe('noFuelCrank.holds.resting');
    expect(driver.context.done).not.toContain('noFuelCrank.holds');
  });

  it.each([1, 9000])('and is said only %d ms after a whole burst, is cranked for once more', afterMs => {
    const driver = cranking()
      .clock(HOLD_S * 1000)
      .reply('oilPressureShows', { ...KEYS, afterMs });
    expect(driver.lines).toContain('notHeld');
    expect(driver.name).toBe('noFuelCrank.holds.resting');
    expect(driver.context.done).not.toContain('noFuelCrank.holds');
    expect(driver.goodUntil('noFuelCrank.holds.holding').context.stop).toBeNull();
  });

  it('has its burst ended by a stop like any other', () => {
    const driver = cranking().reply('oilPressureShows', { afterMs: 300 }).stop({ afterMs: 1000 });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.bursts.at(-1)?.endMs).toBe(driver.nowMs);
  });
});

describe('a starter after days of rest', () => {
  it('is as cold as the air, and turns the engine for as long as ever', () => {
    const driver = sessionAt(demoSix, 'keyOn.lamps.group1').send({ type: 'hold' });
    driver.send({ type: 'continue' }, { afterMs: 60 * 3_600_000 }).goodUntil('firstFire.crank.cranking');
    expect(driver.context.timer?.totalMs).toBe(demoSix.starter.longestBurstS * 1000);
  });

  it('of which nothing can be worked out is told as that, and not as a clear that was too old', () => {
    const driver = sessionAt(demoSix, 'firstFire.crank.ready');
    const { context } = driver;
    const readings = context.readings.filter(({ quantity }) => quantity !== 'ambientTemperature');
    driver.moment = driver.machine.resolveState({
      value: driver.moment.value,
      context: { ...context, readings },
    });
    driver.reply('ready', KEYS);
    expect(driver.lines).toEqual(['burstUnknown', 'askClear']);
    expect(driver.name).toBe('firstFire.crank.askingClear');
  });
});
