import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerer, forbidden } from '../../src/server/bay/commands/authority.ts';
import { WRONG_IN_AN_HOUR } from '../../src/server/http/pair-route.ts';
import { roles } from '../../src/server/protocol/index.ts';
import { atMostInAnHour, RateByKey, TokenBucket } from '../../src/server/rate-limit.ts';

describe('A rate', () => {
  test('lets no more through than its burst and what the time allows', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(5000), { maxLength: 60 }), pausesMs => {
        let nowMs = 0;
        const bucket = new TokenBucket({ burst: 3, perSecond: 0.5 }, () => nowMs);
        let passed = 0;
        for (const pauseMs of pausesMs) {
          nowMs += pauseMs;
          if (bucket.take()) passed += 1;
        }
        expect(passed).toBeLessThanOrEqual(3 + (nowMs / 1000) * 0.5);
      }),
    );
  });

  test('of wrong codes lets an address be wrong ten times within any hour, whenever it begins, and no more', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1_200_000), { maxLength: 120 }), pausesMs => {
        let nowMs = 0;
        const bucket = new TokenBucket(atMostInAnHour(WRONG_IN_AN_HOUR), () => nowMs);
        const passed: number[] = [];
        for (const pauseMs of pausesMs) {
          nowMs += pauseMs;
          if (bucket.take()) passed.push(nowMs);
        }
        for (const sinceMs of passed)
          expect(passed.filter(at => at >= sinceMs && at < sinceMs + 3_600_000).length).toBeLessThanOrEqual(
            10,
          );
      }),
    );
  });

  test('is kept for each key apart, in bounded memory', () => {
    const rates = new RateByKey({ burst: 1, perSecond: 0 }, () => 0, 2);
    expect(rates.take('a')).toBe(true);
    expect(rates.take('a')).toBe(false);
    expect(rates.take('b')).toBe(true);
    expect(rates.take('b')).toBe(false);
  });
});

describe('Who may do what', () => {
  const askers = roles.flatMap(role => [true, false].map(owner => ({ role, owner })));

  test('everybody may stop', () => {
    for (const asker of askers) expect(forbidden(asker, { do: 'stop' })).toBeNull();
  });

  test('nobody but the second person answers for the second person, once there is a device for it', () => {
    for (const asker of askers)
      for (const secondOnly of [true, false]) {
        const answer = answerer(asker, {
          addressed: 'second',
          ownDeviceOnly: true,
          supervisorsOwn: false,
          secondOnly,
        });
        expect(answer.ok).toBe(asker.role === 'second');
      }
  });

  test('with one microphone for both, an answer is put down to the person who was asked', () => {
    const question = {
      addressed: 'second',
      ownDeviceOnly: false,
      supervisorsOwn: false,
      secondOnly: false,
    } as const;
    expect(answerer({ role: 'technician', owner: true }, question)).toEqual({ ok: true, speaker: undefined });
    expect(answerer({ role: 'technician', owner: false }, question).ok).toBe(false);
  });

  test('misunderstood three times, the second person may answer for the technician, and the supervisor never', () => {
    const question = {
      addressed: 'technician',
      ownDeviceOnly: true,
      supervisorsOwn: false,
      secondOnly: true,
    } as const;
    expect(answerer({ role: 'second', owner: false }, question)).toEqual({ ok: true, speaker: 'second' });
    expect(answerer({ role: 'second', owner: false }, { ...question, secondOnly: false }).ok).toBe(false);
    expect(answerer({ role: 'second', owner: false }, { ...question, addressed: 'supervisor' }).ok).toBe(
      false,
    );
    expect(answerer({ role: 'supervisor', owner: false }, question).ok).toBe(false);
  });

  test('the supervisor answers on their own device what is asked of the supervisor, and nothing else', () => {
    const asked = (addressed: 'technician' | 'second' | 'supervisor') =>
      answerer(
        { role: 'supervisor', owner: false },
        { addressed, ownDeviceOnly: false, supervisorsOwn: false, secondOnly: false },
      );
    expect(asked('supervisor')).toEqual({ ok: true, speaker: 'supervisor' });
    expect([asked('technician').ok, asked('second').ok]).toEqual([false, false]);
  });
});
