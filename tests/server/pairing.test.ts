import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerer, forbidden } from '../../src/server/bay/authority.ts';
import { CODE_VALID_MS, CodeDesk } from '../../src/server/pairing/code-desk.ts';
import { MOST_DEVICES_IN_A_BAY, PAIRED_FOR_MS, Pairings } from '../../src/server/pairing/pairings.ts';
import { roles } from '../../src/server/protocol/index.ts';
import { RateByKey, TokenBucket } from '../../src/server/rate-limit.ts';

describe('A pairing code', () => {
  test('is good for its bay and role, once, and until just before its time is up', () => {
    let nowMs = 0;
    const desk = new CodeDesk(['left', 'right'], () => nowMs);
    for (const { bay, role, code } of [...desk.codes()]) {
      expect(code).toMatch(/^\d{6}$/);
      expect(desk.redeem(code)).toEqual({ bay, role });
      expect(desk.redeem(code)).toBeNull();
    }
    const [early, late] = desk.codes();
    nowMs = CODE_VALID_MS - 1;
    expect(desk.redeem(early?.code ?? '')).not.toBeNull();
    nowMs = CODE_VALID_MS;
    expect(desk.redeem(late?.code ?? '')).toBeNull();
  });

  test('stays what it is however many wrong ones are tried: nobody makes it worthless for the one who reads it', () => {
    const desk = new CodeDesk(['bay'], () => 0);
    const before = desk.codes();
    for (let tries = 0; tries < 1000; tries += 1) expect(desk.redeem('wrong')).toBeNull();
    expect(desk.codes()).toEqual(before);
  });
});

describe('A pairing', () => {
  test('outlives the server, and ends by itself or when it is let go of', async () => {
    const file = join(await mkdtemp(join(tmpdir(), 'pairings-')), 'pairings.json');
    let nowMs = 0;
    const first = await Pairings.open(file, () => nowMs);
    const kept = await first.add('bay', 'second', 'phone');
    const dropped = await first.add('bay', 'technician', 'tablet');
    await first.forget(dropped?.pairing.device ?? '');
    const next = await Pairings.open(file, () => nowMs);
    expect(next.find(kept?.token ?? '')).toEqual(kept?.pairing);
    expect(next.find(dropped?.token ?? '')).toBeNull();
    nowMs = PAIRED_FOR_MS - 1;
    expect(next.find(kept?.token ?? '')).not.toBeNull();
    nowMs = PAIRED_FOR_MS;
    expect(next.find(kept?.token ?? '')).toBeNull();
  });

  test('is not given to more devices than a bay can have', async () => {
    const file = join(await mkdtemp(join(tmpdir(), 'pairings-')), 'pairings.json');
    const pairings = await Pairings.open(file, () => 0);
    for (let count = 0; count < MOST_DEVICES_IN_A_BAY; count += 1)
      expect(await pairings.add('bay', 'second', 'phone')).not.toBeNull();
    expect(await pairings.add('bay', 'second', 'phone')).toBeNull();
  });
});

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
        const answer = answerer(asker, { addressed: 'second', ownDeviceOnly: true, secondOnly });
        expect(answer.ok).toBe(asker.role === 'second');
      }
  });

  test('with one microphone for both, an answer is put down to the person who was asked', () => {
    const question = { addressed: 'second', ownDeviceOnly: false, secondOnly: false } as const;
    expect(answerer({ role: 'technician', owner: true }, question)).toEqual({ ok: true, speaker: undefined });
    expect(answerer({ role: 'technician', owner: false }, question).ok).toBe(false);
  });

  test('misunderstood three times, the second person may answer for the technician, and the supervisor never', () => {
    const question = { addressed: 'technician', ownDeviceOnly: true, secondOnly: true } as const;
    expect(answerer({ role: 'second', owner: false }, question)).toEqual({ ok: true, speaker: 'second' });
    expect(answerer({ role: 'second', owner: false }, { ...question, secondOnly: false }).ok).toBe(false);
    expect(answerer({ role: 'supervisor', owner: false }, question).ok).toBe(false);
  });
});
