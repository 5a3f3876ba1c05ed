import { describe, expect, test } from 'vitest';
import { CodeDesk } from '../../../src/server/pairing/code-desk.ts';

const TEN_MINUTES_MS = 600_000;

describe('A pairing code', () => {
  test('is six digits, another for each bay and role', () => {
    const codes = new CodeDesk(['left', 'right'], () => 0).codes();
    expect(codes.map(({ bay, role }) => `${bay} ${role}`)).toEqual([
      'left technician',
      'left second',
      'left supervisor',
      'right technician',
      'right second',
      'right supervisor',
    ]);
    for (const { code } of codes) expect(code).toMatch(/^\d{6}$/);
    expect(new Set(codes.map(({ code }) => code)).size).toBe(codes.length);
  });

  test('is never one that is open for somebody else, however many there are', () => {
    const bays = Array.from({ length: 600 }, (_, nth) => `bay ${nth}`);
    const codes = new CodeDesk(bays, () => 0).codes();
    expect(new Set(codes.map(({ code }) => code)).size).toBe(1800);
  });

  test('is good for its bay and role, once', () => {
    const desk = new CodeDesk(['left', 'right'], () => 0);
    for (const { bay, role, code } of [...desk.codes()]) {
      expect(desk.redeem(code)).toEqual({ bay, role });
      expect(desk.redeem(code)).toBeNull();
    }
  });

  test('that was used makes room for a new one of the same bay and role, and leaves the others', () => {
    const desk = new CodeDesk(['left', 'right'], () => 0);
    const before = desk.codes();
    const used = before.find(({ bay, role }) => bay === 'right' && role === 'second');
    desk.redeem(used?.code ?? '');
    const after = desk.codes();
    expect(after.map(({ bay, role }) => [bay, role])).toEqual(before.map(({ bay, role }) => [bay, role]));
    for (const [nth, open] of after.entries())
      if (before[nth] === used) expect(open.code).not.toBe(used?.code);
      else expect(open).toBe(before[nth]);
  });

  test('is good for ten minutes', () => {
    let nowMs = 0;
    const desk = new CodeDesk(['bay'], () => nowMs);
    const [early, late] = desk.codes();
    nowMs = TEN_MINUTES_MS - 1;
    expect(desk.redeem(early?.code ?? '')).not.toBeNull();
    nowMs = TEN_MINUTES_MS;
    expect(desk.redeem(late?.code ?? '')).toBeNull();
    expect(desk.codes()[1]?.expiresAtMs).toBe(2 * TEN_MINUTES_MS);
  });

  test('stays what it is however many wrong ones are tried: nobody makes it worthless for the one who reads it', () => {
    const desk = new CodeDesk(['bay'], () => 0);
    const before = desk.codes();
    for (let tries = 0; tries < 1000; tries += 1) expect(desk.redeem('wrong')).toBeNull();
    expect(desk.codes()).toEqual(before);
  });

  test('is told of anew when it was used or has run out, and only then', () => {
    let nowMs = 0;
    let told = 0;
    const desk = new CodeDesk(
      ['bay'],
      () => nowMs,
      () => {
        told += 1;
      },
    );
    desk.codes();
    desk.redeem('wrong');
    expect(told).toBe(0);
    desk.redeem(desk.codes()[0]?.code ?? '');
    expect(told).toBe(1);
    nowMs = TEN_MINUTES_MS;
    desk.codes();
    expect(told).toBe(2);
    desk.codes();
    expect(told).toBe(2);
  });
});
