import { describe, expect, test } from 'vitest';
import { AWAY_AFTER_MS } from '../../src/server/protocol/index.ts';
import { AwayWatch } from '../../src/tablet/remote/away.ts';

/** A watch whose time is moved by hand. */
function watch() {
  let nowMs = 0;
  let timers: { readonly atMs: number; readonly act: () => void }[] = [];
  let times = 0;
  const away = new AwayWatch(
    (ms, act) => timers.push({ atMs: nowMs + ms, act }),
    () => {
      times += 1;
    },
  );
  return {
    away,
    times: () => times,
    pass(ms: number) {
      nowMs += ms;
      const due = timers.filter(({ atMs }) => atMs <= nowMs);
      timers = timers.filter(({ atMs }) => atMs > nowMs);
      for (const { act } of due) act();
    },
  };
}

describe('A laptop', () => {
  test('is away when its line has been broken for so long, and that is said once', () => {
    const { away, pass, times } = watch();
    away.look(true);
    away.look(false);
    pass(AWAY_AFTER_MS - 1);
    expect(away.isAway).toBe(false);
    // Each try to come back is told too.
    away.look(false);
    pass(1);
    expect([away.isAway, times()]).toEqual([true, 1]);
    away.look(false);
    pass(10 * AWAY_AFTER_MS);
    expect(times()).toBe(1);
  });

  test('is not away when the line was back meanwhile, though it broke again', () => {
    const { away, pass, times } = watch();
    away.look(false);
    pass(AWAY_AFTER_MS - 1);
    away.look(true);
    away.look(false);
    pass(AWAY_AFTER_MS - 1);
    expect([away.isAway, times()]).toEqual([false, 0]);
    pass(1);
    expect([away.isAway, times()]).toEqual([true, 1]);
    away.look(true);
    expect(away.isAway).toBe(false);
  });
});
