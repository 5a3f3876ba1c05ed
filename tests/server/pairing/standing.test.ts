import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Attendance,
  RENEWED_FOR_MS,
  standingOf,
  standingSentence,
  WARN_MS,
} from '../../../src/server/pairing/standing.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

const inSession: Attendance = {
  role: 'technician',
  letGo: false,
  leftMs: 5 * HOUR_MS,
  sessionOpen: true,
  live: true,
};
const of = (more: Partial<Attendance>) => standingOf({ ...inSession, ...more });

const anybody: fc.Arbitrary<Attendance> = fc.record({
  role: fc.constantFrom('technician', 'second', 'supervisor'),
  letGo: fc.boolean(),
  leftMs: fc.nat(3 * HOUR_MS),
  sessionOpen: fc.boolean(),
  live: fc.boolean(),
});

describe('How it stands with a device', () => {
  test('it is warned from the last hour on', () => {
    for (const sessionOpen of [true, false]) {
      expect(of({ leftMs: HOUR_MS + 1, sessionOpen })).toBe('good');
      expect(of({ leftMs: HOUR_MS, sessionOpen })).toBe('endsSoon');
    }
    expect(WARN_MS).toBe(HOUR_MS);
  });

  test('with ten minutes left it is renewed while it is connected and a session goes on, for half an hour', () => {
    for (const role of ['technician', 'second'] as const) {
      expect(of({ role, leftMs: 10 * MINUTE_MS + 1 })).toBe('endsSoon');
      expect(of({ role, leftMs: 10 * MINUTE_MS })).toBe('renew');
      expect(of({ role, leftMs: 0 })).toBe('renew');
    }
    expect(of({ leftMs: MINUTE_MS, sessionOpen: false })).toBe('endsSoon');
    expect(of({ leftMs: MINUTE_MS, live: false })).toBe('endsSoon');
    expect(RENEWED_FOR_MS).toBe(30 * MINUTE_MS);
  });

  test("the supervisor's is never renewed", () => {
    expect(of({ role: 'supervisor', leftMs: 1 })).toBe('endsSoon');
    expect(of({ role: 'supervisor', leftMs: 0 })).toBe('stopOnly');
  });

  test('when it has run out it may stop the session that goes on, and is nobody without one', () => {
    expect(of({ leftMs: 0, live: false })).toBe('stopOnly');
    expect(of({ leftMs: 0, live: false, sessionOpen: false })).toBe('gone');
    expect(of({ leftMs: 0, sessionOpen: false })).toBe('gone');
  });

  test('one that was let go of is gone, whatever else is so; no other can be while a session goes on', () => {
    fc.assert(
      fc.property(anybody, attendance => {
        const standing = standingOf(attendance);
        if (attendance.letGo) expect(standing).toBe('gone');
        else if (attendance.sessionOpen) expect(standing).not.toBe('gone');
      }),
    );
  });
});

describe('What a device is told of its pairing', () => {
  test('nothing while it is good', () => {
    expect(standingSentence('good', 'technician')).toBe('');
  });

  test('within the last hour: when it ends, and what to do', () => {
    expect(standingSentence('endsSoon', 'technician')).toMatch(
      /^The pairing of this device ends within the hour, or with the session .* pair it again then\.$/,
    );
    expect(standingSentence('endsSoon', 'second')).toBe(standingSentence('endsSoon', 'technician'));
    expect(standingSentence('endsSoon', 'supervisor')).toMatch(
      /^The pairing of this device ends within the hour; then it can only stop\. Pair it again before\.$/,
    );
  });

  test('when it has ended: that it can stop, and nothing else', () => {
    expect(standingSentence('stopOnly', 'second')).toMatch(
      /has ended: it can stop the session and nothing else\. Pair it again\.$/,
    );
  });
});
