import { describe, expect, it } from 'vitest';
import {
  assuranceOf,
  isByHand,
  isNear,
  isNearItsLimit,
  replyNeedsReadBack,
  valueNeedsReadBack,
  type Weight,
  weightOf,
} from '../../machines/assurance.ts';
import type { Context } from '../../machines/context.ts';
import type { SessionEvent } from '../../machines/events.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { isFromBus, refuseTurning, valueMeets } from '../../machines/kinds/bus.ts';
import { questionHeard, refuseHeardTurning } from '../../machines/kinds/ear.ts';
import { inOtherVoice } from '../../machines/kinds/voice.ts';
import { within } from '../../machines/limits/readings.ts';
import { deadlinePassed, believed as isBelieved } from '../../machines/progress.ts';
import type { Judge } from '../../machines/steps.ts';
import type { Look } from '../../machines/toolkit.ts';
import type { Via } from '../../machines/vocabulary.ts';
import { ok, type Rule, type Verdict } from '../../src/engineering/result.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import { demoFour, demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';

type How = Partial<Pick<SessionEvent, 'by' | 'via'>> & { readonly atMs?: number };

const look = (body: EventBody, how: How = {}, known: Partial<Context> = {}, profile = demoSix): Look => ({
  context: knowing(profile, {}, known),
  event: { by: 'technician', via: 'voice', atMs: 0, ...body, ...how } as SessionEvent,
});
const guard = (move: { readonly guard?: (look: Look) => boolean }, at: Look) => move.guard?.(at);

const RULE: Rule = { id: 'by-hand', source: 'this test', validity: 'here' };
const between = (min: number, max: number): Judge => within('oilPressure', () => ok({ min, max }, RULE));
const unknown: Judge = () => ({ ok: false, issue: { code: 'missing', input: 'coldestNight' } });

describe('what is made sure of, and how', () => {
  const ways: readonly Via[] = ['voice', 'keys', 'touch', 'bus'];
  const of = (answer: 'reply' | 'number', weight: Weight) =>
    ways.map(via => assuranceOf(answer, { weight, via }));
  const [r, e, n] = ['readBack', 'echo', 'none'];

  it.each([
    ['reply', 'engine', [r, r, r, r]],
    ['reply', 'gate', [r, n, n, r]],
    ['reply', 'limit', [r, n, n, r]],
    ['reply', 'later', [n, n, n, n]],
    ['reply', 'nothing', [n, n, n, n]],
    ['number', 'engine', [r, r, r, r]],
    ['number', 'gate', [r, r, r, r]],
    ['number', 'limit', [r, e, e, r]],
    ['number', 'later', [e, e, e, e]],
    ['number', 'nothing', [e, e, e, e]],
  ] as const)('of a %s on which hangs %s, by voice, keys, touch and bus: %j', (answer, weight, expected) => {
    expect(of(answer, weight)).toEqual(expected);
  });

  it('by keys and by touch nothing is misheard', () => {
    expect((['keys', 'touch', 'voice', 'bus', 'tool'] as const).map(isByHand)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });

  it('hangs on the step: fuelling frees the engine, a gate is a gate, a reading has a limit of its own or a later one', () => {
    const weight = (id: string) => {
      const step = procedureFor(demoSix).find(each => each.id === id);
      return step && weightOf(step);
    };
    expect(weight('noFuelCrank.disabled')).toBe('engine');
    expect(weight('noFuelCrank.restored')).toBe('engine');
    expect(weight('fill.coolantFilled')).toBe('gate');
    expect(weight('job.makerFirst')).toBe('nothing');
    expect(weight('checks.coolant')).toBe('limit');
    expect(weight('job.ambient')).toBe('later');
  });

  it('of an event is by the way that it came', () => {
    const yes = { type: 'reply', id: 'yes' } as const;
    expect(replyNeedsReadBack('gate')(look(yes))).toBe(true);
    expect(replyNeedsReadBack('gate')(look(yes, { via: 'keys' }))).toBe(false);
    const value = { type: 'value', quantity: 'oilPressure', si: 300 } as const;
    expect(valueNeedsReadBack('limit', between(100, 500))(look(value))).toBe(true);
    expect(valueNeedsReadBack('limit', between(100, 500))(look(value, { via: 'keys' }))).toBe(false);
    expect(valueNeedsReadBack('limit', between(290, 500))(look(value, { via: 'keys' }))).toBe(true);
  });
});

describe('near a limit', () => {
  const verdict = (value: number, limits: { readonly min?: number; readonly max?: number }): Verdict => {
    const judged = within('oilPressure', () => ok(limits, RULE))(knowing(demoSix, {}), value);
    if (!judged.ok) throw new Error('It can be judged.');
    return judged.value;
  };
  const near = (value: number, limits: { readonly min?: number; readonly max?: number }) =>
    isNearItsLimit(verdict(value, limits));

  it('is a tenth of the way between two of them, from either', () => {
    const limits = { min: 100, max: 300 };
    expect([119.9, 120, 280, 280.1].map(value => near(value, limits))).toEqual([true, false, false, true]);
  });

  it('is a tenth of the one that there is, also of one below zero', () => {
    expect([110, 109.9].map(value => near(value, { min: 100 }))).toEqual([false, true]);
    expect([90, 90.1].map(value => near(value, { max: 100 }))).toEqual([false, true]);
    expect([-22, -21.9].map(value => near(value, { max: -20 }))).toEqual([false, true]);
  });

  it('is whatever is outside', () => {
    expect([99, 301].map(value => near(value, { min: 100, max: 300 }))).toEqual([true, true]);
  });

  it('is what cannot be judged, and what is no number', () => {
    const value = { type: 'value', quantity: 'oilPressure', si: 200 } as const;
    expect(isNear(between(100, 300), look(value))).toBe(false);
    expect(isNear(unknown, look(value))).toBe(true);
    expect(isNear(between(100, 300), look({ type: 'reply', id: 'yes' }))).toBe(true);
  });
});

describe('a value of the bus may stand unspoken', () => {
  const shown = (si: number, known: Partial<Context> = {}, how: How = {}, profile = demoSix) =>
    isFromBus('oilPressure')(
      look({ type: 'value', quantity: 'oilPressure', si }, { via: 'bus', ...how }, known, profile),
    );

  it('where it comes from there, is what is asked, and can be', () => {
    expect(shown(300)).toBe(true);
    expect(shown(300, {}, { via: 'voice' })).toBe(false);
    expect(
      isFromBus('engineSpeed')(look({ type: 'value', quantity: 'oilPressure', si: 300 }, { via: 'bus' })),
    ).toBe(false);
    expect(shown(2000.1)).toBe(false);
    expect(isFromBus('oilPressure')(look({ type: 'reply', id: 'yes' }, { via: 'bus' }))).toBe(false);
  });

  it('and nothing was misunderstood before, for there people are heard', () => {
    expect(shown(300, { misheard: 1 })).toBe(false);
  });

  it('and the profile has it from the bus and does not want it spoken', () => {
    expect(shown(300, {}, {}, demoFour)).toBe(false);
    const { bus } = demoSix;
    if (!bus) throw new Error('demo-six has a bus.');
    const without = {
      ...demoSix,
      bus: { ...bus, readings: bus.readings.filter(each => each !== 'oilPressure') },
    };
    expect(shown(300, {}, {}, without)).toBe(false);
    expect(shown(300, {}, {}, { ...demoSix, bus: { ...bus, spoken: ['oilPressure'] } })).toBe(false);
    const biodiesel = { type: 'value', quantity: 'biodieselShare', si: 5 } as const;
    expect(isFromBus('biodieselShare')(look(biodiesel, { via: 'bus' }))).toBe(false);
  });

  it('and it is good only where it can be judged and is inside its limits', () => {
    const value = (si: number) => look({ type: 'value', quantity: 'oilPressure', si });
    const meets = valueMeets(between(100, 300));
    expect([99.9, 100, 300, 300.1].map(si => meets(value(si)))).toEqual([false, true, true, false]);
    expect(valueMeets(unknown)(value(200))).toBe(false);
    expect(meets(look({ type: 'reply', id: 'yes' }))).toBe(false);
  });
});

describe('an engine said to stand', () => {
  const allOff = (more: object) => look({ type: 'reply', id: 'allOff', ...more });

  it('is not believed to from 50 rpm on the bus on', () => {
    const refused = (speedRpm?: number) =>
      guard(refuseTurning, allOff(speedRpm === undefined ? {} : { bus: { speedRpm } }));
    expect([undefined, 0, 49.9, 50, 700].map(refused)).toEqual([false, false, false, true, true]);
    expect(guard(refuseTurning, look({ type: 'stop' }))).toBe(false);
  });

  it('is not believed to from 50 rpm by ear on, unless a bus shows it standing', () => {
    const refused = (ear: number | undefined, bus?: number) =>
      guard(
        refuseHeardTurning,
        allOff({
          ...(ear === undefined ? {} : { ear: { speedRpm: ear } }),
          ...(bus === undefined ? {} : { bus: { speedRpm: bus } }),
        }),
      );
    expect([undefined, 49.9, 50].map(rpm => refused(rpm))).toEqual([false, false, true]);
    expect([0, 49.9, 50].map(bus => refused(700, bus))).toEqual([false, false, true]);
  });
});

describe('a spoken speed beside what is heard', () => {
  const said = (si: number, how: How = {}, questioned: string | null = null) =>
    guard(
      questionHeard,
      look({ type: 'value', quantity: 'engineSpeed', si, ear: { speedRpm: 700 } }, how, { questioned }),
    );

  it('is questioned where they differ, unless it was questioned just so, or nobody said it', () => {
    expect([765, 765.1, 900].map(si => said(si))).toEqual([false, true, true]);
    expect(said(900, {}, 'engineSpeed 900')).toBe(false);
    expect(said(900, {}, 'engineSpeed 901')).toBe(true);
    expect(said(900, { via: 'bus' })).toBe(false);
    expect(guard(questionHeard, look({ type: 'reply', id: 'yes', ear: { speedRpm: 700 } }))).toBe(false);
  });
});

describe("in the second person's name", () => {
  const said = (of: 'technician' | 'second' | 'neither' | null, how: How = { by: 'second' }) =>
    [
      { type: 'reply', id: 'clearToCrank' } as const,
      { type: 'value', quantity: 'oilPressure', si: 300 } as const,
    ].map(body => inOtherVoice(look({ ...body, ...(of ? { voice: { of, certainty: 0.9 } } : {}) }, how)));

  it("the technician's voice is another's, and no other voice is", () => {
    expect(said('technician')).toEqual([true, true]);
    for (const of of ['second', 'neither', null] as const) expect(said(of)).toEqual([false, false]);
    expect(said('technician', { by: 'technician' })).toEqual([false, false]);
    expect(inOtherVoice(look({ type: 'stop' }, { by: 'second' }))).toBe(false);
  });
});

describe('after three misunderstandings', () => {
  it('a voice is believed only when the second person speaks; keys and touch always are', () => {
    const yes = { type: 'reply', id: 'yes' } as const;
    const at = (misheard: number, how: How = {}) => isBelieved(look(yes, how, { misheard }));
    expect([2, 3].map(times => at(times))).toEqual([true, false]);
    expect(at(3, { by: 'second' })).toBe(true);
    expect(at(9, { via: 'keys' })).toBe(true);
    expect(at(9, { via: 'touch' })).toBe(true);
  });
});

describe('a deadline', () => {
  it('is passed at its moment, and not before; where there is none, never', () => {
    const deadline = { sinceMs: 0, atMs: 8000, cause: 'noOilPressure', extended: false } as const;
    const passed = (atMs: number, known: Partial<Context> = { deadline }) =>
      deadlinePassed(look({ type: 'clock' }, { atMs }, known));
    expect([7999, 8000].map(atMs => passed(atMs))).toEqual([false, true]);
    expect(passed(1e9, { deadline: null })).toBe(false);
  });
});
