import { describe, expect, test } from 'vitest';
import { DeafHere } from '../../src/tablet/face/deaf.ts';
import {
  LOOK_EVERY_MS,
  SOUND_WITHIN_MS,
  type Sound,
  SoundWatch,
} from '../../src/tablet/hearing/sound-watch.ts';

/** A watch whose time is moved by hand, looked at as often as it is to be. */
function watched() {
  const clock = { nowMs: 0 };
  const told: Sound[] = [];
  const watch = new SoundWatch(
    () => clock.nowMs,
    sound => told.push(sound),
  );
  return {
    watch,
    told,
    /** Lets time pass; sound comes at each look where it is said to. */
    pass(ms: number, comes: boolean) {
      for (const endMs = clock.nowMs + ms; clock.nowMs < endMs; ) {
        clock.nowMs += LOOK_EVERY_MS;
        if (comes) watch.came();
        watch.look();
      }
    },
    /** The page stands still, and the timer is first when it goes on. */
    freeze(ms: number) {
      clock.nowMs += ms;
      watch.look();
    },
  };
}

describe('A microphone that is open', () => {
  test('is not said to hear before any sound has come', () => {
    const { watch, told, pass } = watched();
    expect(watch.sound).toBe('waits');
    pass(SOUND_WITHIN_MS, false);
    expect(watch.sound).toBe('waits');
    pass(LOOK_EVERY_MS, false);
    expect(told).toEqual(['missing']);
    watch.came();
    expect(told).toEqual(['missing', 'comes']);
  });

  test('is not said to hear any longer once no sound comes from it', () => {
    const { told, pass } = watched();
    pass(10_000, true);
    expect(told).toEqual(['comes']);
    pass(SOUND_WITHIN_MS + LOOK_EVERY_MS, false);
    expect(told).toEqual(['comes', 'missing']);
  });

  test('does not hear while its sound is held back, whatever comes from it', () => {
    const { watch, told, pass } = watched();
    pass(1000, true);
    watch.holds(true);
    pass(10_000, true);
    watch.again();
    expect(told).toEqual(['comes', 'missing']);
    watch.holds(false);
    expect(watch.sound).toBe('waits');
    pass(1000, true);
    expect(told).toEqual(['comes', 'missing', 'waits', 'comes']);
  });

  test('is not taken for silent by a page that stood still itself', () => {
    const { told, pass, freeze } = watched();
    pass(1000, true);
    freeze(60_000);
    pass(1000, true);
    expect(told).toEqual(['comes']);
  });

  test('has time anew when what listens was away', () => {
    const { watch, told, pass } = watched();
    pass(SOUND_WITHIN_MS + LOOK_EVERY_MS, false);
    watch.again();
    pass(SOUND_WITHIN_MS, false);
    expect(told).toEqual(['missing', 'waits']);
  });
});

test('a device that sleeps says what wakes it before it says that its microphone gives nothing', () => {
  const states: string[] = [];
  const deaf: DeafHere = new DeafHere(() => states.push(deaf.state));
  deaf.misses(true);
  deaf.sleeps(true);
  deaf.misses(false);
  deaf.sleeps(false);
  expect(states).toEqual(['noSound', 'asleep', 'asleep', 'no']);
});
