import { describe, expect, it } from 'vitest';
import type { Context, Pending } from '../../machines/context.ts';
import {
  judgementData,
  judgementLine,
  keepReading,
  limitsOf,
  meets,
  noteVerdict,
  sayVerdict,
} from '../../machines/judging.ts';
import type { Judge, Judgement } from '../../machines/steps.ts';
import type { Look } from '../../machines/toolkit.ts';
import type { Verdict } from '../../src/engineering/result.ts';
import { carriedOut } from './helpers/carried-out.ts';
import { demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';

const rule = { id: 'a-rule', source: 'a table', validity: 'here' };
const verdict = (more: Partial<Verdict> = {}): Verdict => ({
  met: true,
  value: 300,
  unit: 'kPa',
  margin: 200,
  rule,
  ...more,
});
const stands = (more: Partial<Verdict> = {}): Judgement => ({ ok: true, value: verdict(more) });
const breaks = (more: Partial<Verdict> = {}): Judgement => ({
  ok: false,
  line: 'pressureDoesNotFollow',
  verdict: verdict({ met: false, ...more }),
  values: { extra: 1 },
});
const unjudged: Judgement = { ok: false, issue: { code: 'missing', input: 'oilC' } };
const told = { rule: 'a-rule', source: 'a table' };

const value = { kind: 'value', quantity: 'oilPressure', si: 300 } as const;
const at = (pending: Pending | null, known: Partial<Context> = {}): Look => ({
  context: knowing(demoSix, {}, { step: 'checks.oilPressure', pending, ...known }),
  event: { type: 'reply', id: 'yes', by: 'technician', via: 'voice', atMs: 4000 },
});
const by =
  (judgement: Judgement): Judge =>
  () =>
    judgement;

describe('a judgement on the record', () => {
  it('has the limits that there are, and no others', () => {
    expect(judgementData(stands({ min: 100 }))).toStrictEqual({ met: true, min: 100, margin: 200, ...told });
    expect(judgementData(stands({ max: 500 }))).toStrictEqual({ met: true, max: 500, margin: 200, ...told });
  });

  it('names what was held against them only where that is not what was read', () => {
    const read = { si: 300, unit: 'kPa' };
    expect(judgementData(stands(), read)).toStrictEqual({ met: true, margin: 200, ...told });
    expect(judgementData(stands(), { ...read, si: 280 })).toMatchObject({ of: 300, ofUnit: 'kPa' });
    expect(judgementData(stands(), { ...read, unit: 'rpm' })).toMatchObject({ of: 300, ofUnit: 'kPa' });
  });

  it('has why it is not met, or cannot be judged', () => {
    expect(judgementData(breaks(), { si: 1, unit: 'kPa' })).toStrictEqual({
      met: false,
      margin: 200,
      ...told,
      of: 300,
      ofUnit: 'kPa',
      why: 'pressureDoesNotFollow',
    });
    // Judged as not met, whatever its own verdict says.
    expect(judgementData(breaks({ met: true })).met).toBe(false);
    expect(judgementData(unjudged)).toStrictEqual({ met: false, why: 'oilC is missing.' });
    expect(judgementData(null)).toStrictEqual({ met: false });
  });
});

describe('the verdict on a value', () => {
  const noted = (pending: Pending | null, judgement: Judgement = stands({ min: 100 })) =>
    carriedOut([noteVerdict(by(judgement))], at(pending)).notes;

  it('stands on the record with the value, its unit, its limits and its rule', () => {
    expect(noted(value)).toStrictEqual([
      {
        kind: 'verdict',
        data: {
          step: 'checks.oilPressure',
          quantity: 'oilPressure',
          value: 300,
          unit: 'kPa',
          met: true,
          min: 100,
          margin: 200,
          ...told,
        },
      },
    ]);
  });

  it('says that it came by the bus, or what the bus showed instead', () => {
    expect(noted({ ...value, byBus: true })[0]?.data).toMatchObject({ via: 'bus' });
    expect(noted({ ...value, busSi: 280 })[0]?.data).toMatchObject({ bus: 280 });
  });

  it('is that nothing is met where there is no value', () => {
    const nothing = { step: 'checks.oilPressure', quantity: null, value: null, unit: null, met: false };
    expect(noted(null)).toStrictEqual([{ kind: 'verdict', data: nothing }]);
    expect(noted({ kind: 'reply', id: 'yes', atMs: 0 })).toStrictEqual([{ kind: 'verdict', data: nothing }]);
  });

  it('counts as met only where there is a value, the rule can judge it, and it is inside', () => {
    const isMet = (judgement: Judgement, pending: Pending | null = value) =>
      meets(by(judgement))(at(pending));
    expect(isMet(stands())).toBe(true);
    expect(isMet(stands({ met: false }))).toBe(false);
    expect(isMet(breaks({ met: true }))).toBe(false);
    expect(isMet(unjudged)).toBe(false);
    expect(isMet(stands(), null)).toBe(false);
  });

  it('is said in one sentence, and as unclear where there is no value', () => {
    const said = (pending: Pending | null) => sayVerdict(by(stands()))(at(pending));
    expect(said(value)).toMatchObject({
      line: 'inside',
      values: { spoken: { brief: 'oilPressure', si: 300 } },
    });
    expect(said(null)).toEqual({ line: 'unclear', values: {} });
  });
});

describe('a judgement in one sentence', () => {
  const line = (judgement: Judgement) => judgementLine(judgement, 'oilPressure', 300);
  const named = { name: { quantityName: 'oilPressure' }, spoken: { brief: 'oilPressure', si: 300 } };

  it('is inside, just inside or outside its limits, which it names', () => {
    const limits = { limits: { unit: 'kPa', of: 'oilPressure', min: 100 } };
    expect(line(stands({ min: 100 }))).toEqual({ line: 'inside', values: { ...named, limits } });
    expect(line(stands({ min: 100, margin: 5 })).line).toBe('justInside');
    expect(line(stands({ min: 100, met: false, margin: -5 })).line).toBe('outside');
  });

  it('is a sentence of its own where the rule has one, with what that names', () => {
    expect(line(breaks())).toEqual({ line: 'pressureDoesNotFollow', values: { ...named, extra: 1 } });
  });

  it('says why it cannot be judged', () => {
    expect(line(unjudged)).toEqual({
      line: 'outsideUnjudged',
      values: { ...named, why: { issue: { code: 'missing', input: 'oilC' } } },
    });
  });
});

describe('limits that are named', () => {
  it('are those that there are, of the quantity where they are in its unit', () => {
    expect(limitsOf(stands({ min: 1 }), 'oilPressure')).toStrictEqual({
      limits: { unit: 'kPa', of: 'oilPressure', min: 1 },
    });
    expect(limitsOf(breaks({ max: 2 }), 'engineSpeed')).toStrictEqual({ limits: { unit: 'kPa', max: 2 } });
    expect(limitsOf(stands({ min: 1, max: 2 }))).toStrictEqual({ limits: { unit: 'kPa', min: 1, max: 2 } });
  });

  it('are none where the rule has no answer', () => {
    expect(limitsOf(unjudged)).toBe('');
    expect(limitsOf(null)).toBe('');
  });
});

describe('a value that counts', () => {
  const kept = (pending: Pending | null) => carriedOut([keepReading], at(pending)).context.readings;

  it('is kept with its step and its moment, and that the bus told it where it did', () => {
    const reading = { quantity: 'oilPressure', si: 300, atMs: 4000, step: 'checks.oilPressure' };
    expect(kept(value)).toStrictEqual([reading]);
    expect(kept({ ...value, byBus: true })).toStrictEqual([{ ...reading, byBus: true }]);
  });

  it('is none where a reply waits, or nothing', () => {
    expect(kept({ kind: 'reply', id: 'yes', atMs: 0 })).toEqual([]);
    expect(kept(null)).toEqual([]);
  });
});
