import os from 'node:os';
import { afterEach, beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import { recordClock, SystemClock } from '../../src/session/clock.ts';
import { PacedClock } from '../../src/session/paced-clock.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';

const BEGUN = new Date('2026-01-02T03:04:05Z');

beforeEach(() => void vi.useFakeTimers({ now: BEGUN }));
afterEach(() => void vi.useRealTimers());

/** Whether it has settled by now. */
function settled(promise: Promise<void>): () => Promise<boolean> {
  let over = false;
  void promise.then(() => {
    over = true;
  });
  return async () => {
    await vi.advanceTimersByTimeAsync(0);
    return over;
  };
}

describe('the clock of the system', () => {
  it('counts from where a resumed session was', async () => {
    const clock = new SystemClock(5000);
    const fresh = new SystemClock();
    await vi.advanceTimersByTimeAsync(1234);
    expect(clock.nowMs()).toBeCloseTo(6234, 3);
    expect(fresh.nowMs()).toBeCloseTo(1234, 3);
    expect(clock.wall().getTime()).toBe(BEGUN.getTime() + 1234);
    expect(recordClock(clock).wall().getTime()).toBe(clock.wall().getTime());
    expect(recordClock(clock).monoMs()).toBe(clock.nowMs());
  });

  it('rings once, at its time, however far away that is', async () => {
    const clock = new SystemClock(1000);
    const ring = vi.fn();
    clock.setAlarm(1000 + 200_000, ring);
    await vi.advanceTimersByTimeAsync(199_999);
    expect(ring).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(2);
    expect(ring).toHaveBeenCalledTimes(1);
    await vi.advanceTimersByTimeAsync(500_000);
    expect(ring).toHaveBeenCalledTimes(1);
  });

  it('rings at once for a time that has gone by, though not before it has said so', async () => {
    const clock = new SystemClock(1000);
    const ring = vi.fn();
    clock.setAlarm(999, ring);
    expect(ring).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(0);
    expect(ring).toHaveBeenCalledTimes(1);
  });

  it('looks again every second, so that no timer overflows', async () => {
    const wait = vi.spyOn(globalThis, 'setTimeout');
    new SystemClock().setAlarm(1e12, () => {});
    await vi.advanceTimersByTimeAsync(3_000);
    expect(wait.mock.calls.length).toBeGreaterThanOrEqual(3);
    expect(Math.max(...wait.mock.calls.map(([, ms]) => ms ?? 0))).toBe(1_000);
    wait.mockRestore();
  });

  it('counts what the machine slept, and rings within a second of its waking for what was due by then', async () => {
    const up = vi.spyOn(os, 'uptime').mockReturnValue(1000);
    onTestFinished(() => void up.mockRestore());
    const clock = new SystemClock();
    const ring = vi.fn();
    clock.setAlarm(60_000, ring);
    await vi.advanceTimersByTimeAsync(500);
    expect(clock.nowMs()).toBeCloseTo(500, 3);
    up.mockReturnValue(1000 + 600);
    await vi.advanceTimersByTimeAsync(999);
    expect(ring).toHaveBeenCalledTimes(1);
    expect(clock.nowMs()).toBeGreaterThan(599_000);
    expect(clock.nowMs()).toBeLessThan(602_000);
  });

  it('knows of a sleep as soon as it wakes, before a second has gone by', async () => {
    const up = vi.spyOn(os, 'uptime').mockReturnValue(1000);
    onTestFinished(() => void up.mockRestore());
    const clock = new SystemClock();
    await vi.advanceTimersByTimeAsync(100);
    expect(clock.nowMs()).toBeCloseTo(100, 3);
    vi.setSystemTime(BEGUN.getTime() + 600_000);
    up.mockReturnValue(1000 + 600);
    expect(clock.nowMs()).toBeGreaterThan(599_000);
  });

  it('takes a time of day that is set forward for no sleep', async () => {
    const up = vi.spyOn(os, 'uptime').mockReturnValue(1000);
    onTestFinished(() => void up.mockRestore());
    const clock = new SystemClock();
    vi.setSystemTime(BEGUN.getTime() + 3_600_000);
    expect(clock.nowMs()).toBeCloseTo(0, 3);
  });

  it('is put off by no second that one of two clocks has counted and the other has still to', async () => {
    const up = vi.spyOn(os, 'uptime').mockReturnValue(1000);
    onTestFinished(() => void up.mockRestore());
    const clock = new SystemClock();
    for (let s = 1; s <= 20; s += 1) {
      up.mockReturnValue(1000 + s + (s % 2));
      await vi.advanceTimersByTimeAsync(1000);
      expect(clock.nowMs()).toBeCloseTo(1000 * s, 3);
    }
  });

  it('has one alarm: a new one replaces it, none takes it away', async () => {
    const clock = new SystemClock();
    const [first, second] = [vi.fn(), vi.fn()];
    clock.setAlarm(1000, first);
    clock.setAlarm(2000, second);
    await vi.advanceTimersByTimeAsync(2500);
    expect([first.mock.calls.length, second.mock.calls.length]).toEqual([0, 1]);
    clock.setAlarm(5000, first);
    clock.setAlarm(null, first);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(first).not.toHaveBeenCalled();
  });

  it('sleeps until its time, or until it is called off', async () => {
    const clock = new SystemClock();
    const whole = settled(clock.sleep(1000));
    const off = new AbortController();
    const cut = settled(clock.sleep(1000, off.signal));
    await vi.advanceTimersByTimeAsync(500);
    expect([await whole(), await cut()]).toEqual([false, false]);
    off.abort();
    expect([await whole(), await cut()]).toEqual([false, true]);
    expect(await settled(clock.sleep(1000, off.signal))()).toBe(true);
    await vi.advanceTimersByTimeAsync(500);
    expect(await whole()).toBe(true);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('leaves nothing behind on what may call it off', async () => {
    const clock = new SystemClock();
    const { signal } = new AbortController();
    const removed = vi.spyOn(signal, 'removeEventListener');
    void clock.sleep(10, signal);
    await vi.advanceTimersByTimeAsync(10);
    expect(removed).toHaveBeenCalledWith('abort', expect.any(Function));
  });
});

describe('a clock that runs faster', () => {
  it('tells its pace', () => {
    const clock = new PacedClock(BEGUN, 10);
    expect(clock.pace).toBe(10);
    clock.setPace(20);
    expect(clock.pace).toBe(20);
  });

  it('sleeps by its own time, whatever its pace becomes meanwhile, or until it is called off', async () => {
    // What it waits by is the real clock.
    vi.useRealTimers();
    const clock = new PacedClock(BEGUN, 1);
    const off = new AbortController();
    const over: string[] = [];
    void clock.sleep(30_000).then(() => over.push('slept'));
    void clock.sleep(30_000, off.signal).then(() => over.push('called off'));
    await clock.sleep(0);
    expect(over).toEqual([]);
    clock.setPace(60);
    off.abort();
    await new Promise(resolve => setTimeout(resolve, 100));
    expect(over).toEqual(['called off']);
    // Half a minute at sixty times the pace.
    await new Promise(resolve => setTimeout(resolve, 600));
    expect(over).toEqual(['called off', 'slept']);
    expect(clock.nowMs()).toBeGreaterThanOrEqual(30_000);
    const begunMs = clock.nowMs();
    await clock.sleep(60);
    expect(clock.nowMs() - begunMs).toBeGreaterThanOrEqual(60);
  });

  it('counts so many seconds for each', async () => {
    const clock = new PacedClock(BEGUN, 10);
    await vi.advanceTimersByTimeAsync(100);
    expect(clock.nowMs()).toBeCloseTo(1000, 3);
    expect(clock.wall().getTime()).toBeCloseTo(BEGUN.getTime() + 1000, -1);
  });

  it('goes on from where it is when its pace changes', async () => {
    const clock = new PacedClock(BEGUN, 10);
    await vi.advanceTimersByTimeAsync(100);
    clock.setPace(2);
    expect(clock.nowMs()).toBeCloseTo(1000, 3);
    await vi.advanceTimersByTimeAsync(100);
    expect(clock.nowMs()).toBeCloseTo(1200, 3);
    clock.setPace(2);
    expect(clock.nowMs()).toBeCloseTo(1200, 3);
  });

  it('rings by its own time, whatever the pace was when it was set', async () => {
    const clock = new PacedClock(BEGUN, 10);
    const ring = vi.fn();
    clock.setAlarm(2000, ring);
    await vi.advanceTimersByTimeAsync(100);
    clock.setPace(1);
    await vi.advanceTimersByTimeAsync(990);
    expect(ring).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(20);
    expect(ring).toHaveBeenCalledTimes(1);
    clock.setAlarm(3000, ring);
    clock.setAlarm(null, ring);
    await vi.advanceTimersByTimeAsync(5000);
    expect(ring).toHaveBeenCalledTimes(1);
  });

  it('keeps a pace from 1 to 60 and no other', () => {
    expect(() => [new PacedClock(BEGUN, 1), new PacedClock(BEGUN, 60)]).not.toThrow();
    for (const pace of [0.99, 60.01, Number.NaN])
      expect(() => new PacedClock(BEGUN, pace)).toThrow(
        new RangeError(`Pace ${pace} cannot be kept; it has to be from 1 to 60.`),
      );
    expect(() => new PacedClock(BEGUN, 1).setPace(61)).toThrow(/from 1 to 60/);
  });
});

describe('a clock that is moved by hand', () => {
  it('moves forward only, from where it begins', () => {
    const clock = new VirtualClock(BEGUN, 500);
    expect(clock.nowMs()).toBe(500);
    clock.advance(250);
    clock.advance(0);
    expect(clock.nowMs()).toBe(750);
    expect(clock.wall()).toEqual(new Date(BEGUN.getTime() + 750));
    for (const step of [-1, Number.NaN])
      expect(() => clock.advance(step)).toThrow(
        new RangeError(`Time cannot be moved by ${step} ms; only forward.`),
      );
    expect(clock.nowMs()).toBe(750);
  });

  it('tells what comes next: the alarm or whoever wakes first', () => {
    const clock = new VirtualClock(BEGUN);
    expect(clock.nextMs()).toBeNull();
    clock.setAlarm(900, () => {});
    expect(clock.nextMs()).toBe(900);
    void clock.sleep(400);
    void clock.sleep(700);
    expect(clock.nextMs()).toBe(400);
    clock.setAlarm(null, () => {});
    clock.advance(400);
    expect(clock.nextMs()).toBe(700);
  });

  it('rings once, as soon as its time is reached', () => {
    const clock = new VirtualClock(BEGUN);
    const ring = vi.fn();
    clock.setAlarm(100, ring);
    clock.advance(99);
    expect(ring).not.toHaveBeenCalled();
    clock.advance(1);
    clock.advance(100);
    expect(ring).toHaveBeenCalledTimes(1);
  });

  it('wakes sleepers at their time, and those that are called off at once', async () => {
    const clock = new VirtualClock(BEGUN);
    const off = new AbortController();
    const sleeps = [clock.sleep(100), clock.sleep(100, off.signal), clock.sleep(200, off.signal)].map(
      settled,
    );
    const now = () => Promise.all(sleeps.map(each => each()));
    expect(await now()).toEqual([false, false, false]);
    clock.advance(100);
    expect(await now()).toEqual([true, true, false]);
    off.abort();
    expect(await now()).toEqual([true, true, true]);
    expect(clock.nextMs()).toBeNull();
    expect(await settled(clock.sleep(100, off.signal))()).toBe(true);
    expect(await settled(clock.sleep(0))()).toBe(true);
  });

  it('leaves nothing behind on what may call a sleep off', () => {
    const clock = new VirtualClock(BEGUN);
    const { signal } = new AbortController();
    const [added, removed] = [vi.spyOn(signal, 'addEventListener'), vi.spyOn(signal, 'removeEventListener')];
    void clock.sleep(10, signal);
    expect(added).toHaveBeenCalledWith('abort', expect.any(Function), { once: true });
    clock.advance(10);
    expect(removed).toHaveBeenCalledWith('abort', added.mock.calls[0]?.[1]);
  });
});
