import { describe, expect, it } from 'vitest';
import { fitForFirstFire, loadProfile, parseProfile } from '../../src/profile/load.ts';
import {
  acceptables,
  acceptedByName,
  assumedFields,
  neverAssumed,
  type Provenance,
  unfitFor,
} from '../../src/profile/provenance.ts';
import type { Profile } from '../../src/profile/schema.ts';

const six = await loadProfile('demo-six');
const all: Provenance = Object.fromEntries(
  [...neverAssumed, ...acceptables.flatMap(what => acceptedByName[what])].map(path => [
    path,
    { from: 'manual' as const, page: '12' },
  ]),
);
const real = (provenance: Provenance): Profile =>
  parseProfile(JSON.stringify({ ...six, invented: false, provenance }), 'x');
const fits = (provenance: Provenance) => unfitFor(real(provenance)).length === 0;

describe('an engine that is real', () => {
  it('is fit for its first fire when what matters was read or measured', () => {
    expect(fits(all)).toBe(true);
    expect(fitForFirstFire(real(all), 'mine.json')).toEqual(real(all));
  });

  it.each(neverAssumed)(
    'is not, while %s is assumed, computed, accepted, or nobody knows from where',
    path => {
      for (const origin of [
        undefined,
        { from: 'assumed' as const },
        { from: 'assumed' as const, acceptedBy: 'S. Visor' },
        { from: 'computed' as const, rule: 'some rule' },
      ]) {
        const { [path]: _, ...rest } = all;
        expect(fits(origin ? { ...rest, [path]: origin } : rest)).toBe(false);
      }
      for (const from of ['plate', 'manual', 'measured'] as const)
        expect(fits({ ...all, [path]: { from } })).toBe(true);
    },
  );

  it.each(acceptables)(
    'is not, while %s is assumed, until the supervisor accepts each value by name',
    what => {
      for (const path of acceptedByName[what]) {
        expect(fits({ ...all, [path]: { from: 'assumed' } })).toBe(false);
        expect(fits({ ...all, [path]: { from: 'assumed', acceptedBy: 'S. Visor' } })).toBe(true);
        expect(fits({ ...all, [path]: { from: 'computed', rule: 'some rule' } })).toBe(true);
      }
    },
  );

  it('is told so in sentences that name each field', () => {
    const provenance: Provenance = {
      ...all,
      cutOff: { from: 'assumed' },
      'idle.cold': { from: 'assumed' },
    };
    expect(() => fitForFirstFire(real(provenance), 'mine.json')).toThrow(
      /^Profile mine\.json: cutOff: has to be read or measured.*idle\.cold: may stay assumed only where the supervisor/s,
    );
  });

  it('of an older profile, which says nothing, is not', () => {
    expect(fits({})).toBe(false);
  });
});

it('an invented engine may be rehearsed on whatever is assumed', () => {
  expect(unfitFor({ ...six, provenance: {} })).toEqual([]);
});

it('assumed values are listed in the order of the start', () => {
  expect(
    assumedFields({
      provenance: {
        'starter.limitC': { from: 'assumed' },
        turbo: { from: 'plate' },
        'oil.runningC': { from: 'assumed' },
      },
    }),
  ).toEqual(['oil.runningC', 'starter.limitC']);
});

it.each([
  [{ nowhere: { from: 'plate' } }, /provenance.*nowhere/],
  [{ turbo: { from: 'heard' } }, /provenance\.turbo\.from/],
  [{ turbo: { from: 'plate', page: '3' } }, /provenance\.turbo\.page.*only with "manual"/],
  [{ turbo: { from: 'computed' } }, /provenance\.turbo\.rule.*has to be named/],
  [{ turbo: { from: 'manual', acceptedBy: 'X' } }, /provenance\.turbo\.acceptedBy.*only with "assumed"/],
])('a wrong origin %j is refused by its field', (provenance, says) => {
  expect(() => parseProfile(JSON.stringify({ ...six, provenance }), 'x')).toThrow(says);
});
