import { cleanup } from 'ink-testing-library';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { AppProps } from '../../../src/terminal/face/app.tsx';
import { widthOf } from '../../../src/terminal/face/text.ts';
import { faceWords } from '../../../src/terminal/face/words/index.ts';
import { faceOn } from '../../helpers/screen-ink.tsx';
import { ShownViews } from './shown.ts';
import { everyView, filling, overlong, reading, resting, stopped } from './views.ts';

const actions = () => ({ onType: vi.fn(), onStop: vi.fn(), onLeave: vi.fn() });

function show(view = filling, columns = 80, rows = 24, props: Partial<AppProps> = {}) {
  const viewer = new ShownViews(view);
  const called = actions();
  const face = faceOn(columns, rows, { viewer, words: faceWords.en, ...called, ...props });
  return { ...face, ...called, viewer };
}

// Only what the face waits with: React's own scheduling stays real.
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
});

afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

/** Lets React carry out what it has scheduled. */
async function settle(): Promise<void> {
  for (let turn = 0; turn < 6; turn += 1) await new Promise(resolve => setImmediate(resolve));
}

describe('the face in ink', () => {
  it.each(Object.entries(everyView))(
    'shows the view "%s" with no line wider than the terminal',
    async (_name, view) => {
      for (const [columns, rows] of [
        [80, 24],
        [120, 40],
        [60, 20],
      ] as const) {
        const { lines } = show(view, columns, rows);
        await settle();
        expect(lines().length).toBe(rows);
        for (const line of lines()) expect(widthOf(line), line).toBeLessThanOrEqual(columns);
      }
    },
  );

  it('follows the size of the terminal', async () => {
    const { lines, resize } = show(overlong, 120, 40);
    await settle();
    resize(60, 20);
    await settle();
    expect(lines().length).toBe(20);
    for (const line of lines()) expect(widthOf(line), line).toBeLessThanOrEqual(60);
  });

  it('shows a change at once after a quiet time, and a hail of changes not more often than can be read', async () => {
    const { viewer, text, frames } = show();
    await settle();
    vi.advanceTimersByTime(1000);
    viewer.show(stopped);
    await settle();
    expect(text()).toContain('STOPPED - KEY OFF');
    const before = frames.length;
    for (let level = -60; level < 0; level += 0.1)
      viewer.show({ ...reading, hearing: { ...reading.hearing, levelDbfs: level } });
    vi.advanceTimersByTime(1000);
    await settle();
    expect(frames.length - before).toBeLessThanOrEqual(2);
    expect(text()).toContain(' 0 dBFS');
  });

  it('looks at the clock only while a timer runs', async () => {
    const { viewer } = show(filling);
    const looked = vi.spyOn(viewer, 'view');
    await settle();
    const looksIn = (ms: number) => {
      looked.mockClear();
      vi.advanceTimersByTime(ms);
      return looked.mock.calls.length;
    };
    expect(looksIn(10_000)).toBeLessThanOrEqual(1);
    viewer.show(resting);
    await settle();
    expect(looksIn(10_000)).toBe(40);
    viewer.show(everyView.held);
    await settle();
    looksIn(1000);
    await settle();
    expect(looksIn(10_000)).toBe(0);
  });

  it('stops watching and ticking when it is taken away', async () => {
    const { viewer, unmount } = show(resting);
    await settle();
    expect(viewer.watched).toBe(true);
    unmount();
    expect(viewer.watched).toBe(false);
    expect(vi.getTimerCount()).toBe(0);
  });
});

describe('the keys of the face', () => {
  it.each(Object.entries(everyView))('stop with Escape in the view "%s"', async (_name, view) => {
    const { stdin, onStop, onType } = show(view);
    await settle();
    stdin.write('some words');
    stdin.write('\x1b');
    expect(onStop).toHaveBeenCalledTimes(1);
    expect(onType).not.toHaveBeenCalled();
  });

  it('stop also when Escape comes together with other keys', async () => {
    const { stdin, onStop } = show();
    await settle();
    stdin.write('a\x1bb');
    expect(onStop).toHaveBeenCalledTimes(1);
  });

  it('type into the line, and send it with Enter', async () => {
    const { stdin, text, onType } = show();
    await settle();
    stdin.write('coolant fulll\x7f');
    await settle();
    expect(text()).toContain('> coolant full█');
    stdin.write('\r');
    await settle();
    expect(onType.mock.calls).toEqual([['coolant full']]);
    expect(text()).toContain('> █');
    stdin.write('\x1b[A');
    await settle();
    expect(text()).toContain('> coolant full█');
  });

  it('send a line that arrives in one piece', async () => {
    const { stdin, onType } = show();
    await settle();
    stdin.write('ready\rfired\r');
    expect(onType.mock.calls).toEqual([['ready'], ['fired']]);
  });

  it('tell after one Ctrl-C how to leave, and leave after two', async () => {
    const { stdin, text, onLeave, onStop } = show(reading);
    await settle();
    stdin.write('\x03');
    await settle();
    expect(text()).toContain('Ctrl-C again leaves');
    expect(onLeave).not.toHaveBeenCalled();
    stdin.write('\x03');
    expect(onLeave).toHaveBeenCalledTimes(1);
    expect(onStop).not.toHaveBeenCalled();
  });
});
