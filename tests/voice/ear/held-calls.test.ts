import { describe, expect, it } from 'vitest';
import { type Call, HeldCalls, isCall, sameCallMs } from '../../../src/voice/ear/held-calls.ts';

const fire: Call = { kind: 'stop', text: 'fire', calls: 'smokeOrFire' };
const smoke: Call = { ...fire, text: 'smoke' };
const hurt: Call = { kind: 'stop', text: 'someone is hurt', calls: 'someoneHurt' };

describe('calls that are held', () => {
  it('are given out once, those that were spotted up to a moment', () => {
    const held = new HeldCalls();
    held.hold(fire, 100);
    held.hold(hurt, 200);
    expect(held.release(99)).toEqual([]);
    expect(held.release(100)).toEqual([fire]);
    expect(held.release()).toEqual([hurt]);
    expect(held.release()).toEqual([]);
  });

  it('are one of each cause, as it was said last', () => {
    const held = new HeldCalls();
    held.hold(fire, 100);
    held.hold(hurt, 300);
    held.hold(smoke, 100 + sameCallMs);
    expect(held.release()).toEqual([smoke, hurt]);
    held.hold(fire, 100 + 2 * sameCallMs - 1);
    held.hold(hurt, 300 + sameCallMs);
    expect(held.release()).toEqual([hurt]);
  });

  it('are none where they stand in an answer, and wait on where they were spotted before or after it', () => {
    const held = new HeldCalls();
    for (const [call, atMs] of [
      [smoke, 99],
      [fire, 100],
      [fire, 200],
      [hurt, 201],
    ] as const)
      held.hold(call, atMs);
    held.answered(100, 200);
    expect(held.release()).toEqual([smoke, hurt]);
  });

  it('that were dropped or still wait have not been given out', () => {
    const held = new HeldCalls();
    held.hold(fire, 100);
    held.answered(0, 100);
    held.hold(hurt, 200);
    expect(held.calledSince(0)).toBe(false);
    held.release();
    expect(held.calledSince(200)).toBe(true);
    expect(held.calledSince(201)).toBe(false);
    held.hold(fire, 300);
    expect(held.release()).toEqual([fire]);
  });
});

describe('a stop', () => {
  it('is a call where it tells what is the matter', () => {
    expect(isCall({ kind: 'stop', calls: 'smokeOrFire' })).toBe(true);
    expect(isCall({ kind: 'stop' })).toBe(false);
    expect(isCall({ kind: 'reply', id: 'yes' })).toBe(false);
    expect(isCall(undefined)).toBe(false);
  });
});
