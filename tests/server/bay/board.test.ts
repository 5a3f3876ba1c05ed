import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Bay } from '../../../src/server/bay/bay.ts';
import { Board } from '../../../src/server/bay/board.ts';
import { briefOf } from '../../../src/server/bay/brief.ts';
import { FrameStream } from '../../../src/server/bay/frame-stream.ts';
import { type BayBrief, boardSchema } from '../../../src/server/protocol/index.ts';
import { bareBay } from './bare-bay.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const resting = { title: 'Starter rests', leftMs: 30_000, held: false };

/** A board over bays of which only what it looks at is there, and what one who watches it was told. */
function watched(count = 2) {
  const bays = Array.from({ length: count }, (_, index) => {
    const bay = `bay ${index + 1}`;
    return {
      bay,
      stream: new FrameStream({ ...bareBay, bay }),
      shows: briefOf({ ...bareBay, bay }, null, 0),
    };
  });
  const board = new Board(
    bays.map(each => ({ stream: each.stream, brief: () => each.shows }) as unknown as Bay),
  );
  const told: (readonly BayBrief[])[] = [];
  const unwatch = board.watch(text => told.push(boardSchema.parse(JSON.parse(text)).bays));
  /** What a bay tells its faces; the board looks at how it stands then. */
  const happens = (index: number, changed: Partial<BayBrief> = {}) => {
    const bay = bays[index];
    if (!bay) throw new Error(`There is no bay ${index}.`);
    bay.shows = { ...bay.shows, ...changed };
    bay.stream.send({ type: 'hush', sessionMs: 0 });
  };
  return { board, told, unwatch, happens };
}

describe('The board of all bays', () => {
  test('is told whole, half a second after anything has changed in one of them', () => {
    const { board, told, happens } = watched();
    happens(1, { state: 'working' });
    vi.advanceTimersByTime(499);
    expect(told).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(told.map(bays => bays.map(({ bay, state }) => [bay, state]))).toEqual([
      [
        ['bay 1', 'free'],
        ['bay 2', 'working'],
      ],
    ]);
    expect(board.news()).toMatchObject({ type: 'board', bays: [{ bay: 'bay 1' }, { state: 'working' }] });
  });

  test('is told once for all that changes within that time, as it is at the end of it', () => {
    const { told, happens } = watched();
    happens(0, { state: 'working' });
    vi.advanceTimersByTime(300);
    happens(0, { state: 'stopped' });
    vi.advanceTimersByTime(200);
    expect(told).toHaveLength(1);
    expect(told[0]?.[0]?.state).toBe('stopped');
    vi.advanceTimersByTime(10_000);
    expect(told).toHaveLength(1);
    happens(0, { state: 'held' });
    vi.advanceTimersByTime(500);
    expect(told).toHaveLength(2);
  });

  test('is not told again where time merely goes on and a timer runs down with it', () => {
    const { told, happens } = watched();
    happens(0, { timer: resting, sessionMs: 1000 });
    vi.advanceTimersByTime(500);
    happens(0, { timer: { ...resting, leftMs: 20_000 }, sessionMs: 11_000 });
    vi.advanceTimersByTime(500);
    expect(told).toHaveLength(1);
    // By less than anybody sees, as it is worked out anew each time.
    happens(0, { timer: { ...resting, leftMs: 19_700 }, sessionMs: 11_100 });
    vi.advanceTimersByTime(500);
    expect(told).toHaveLength(1);
    // It was set anew meanwhile.
    happens(0, { timer: { ...resting, leftMs: 20_000 }, sessionMs: 12_000 });
    vi.advanceTimersByTime(500);
    expect(told).toHaveLength(2);
  });

  test('is told where a timer is held, and what is left of it then', () => {
    const { told, happens } = watched();
    happens(0, { timer: resting, sessionMs: 1000 });
    vi.advanceTimersByTime(500);
    happens(0, { timer: { ...resting, held: true }, sessionMs: 1000 });
    vi.advanceTimersByTime(500);
    expect(told).toHaveLength(2);
    happens(0, { timer: { ...resting, held: true, leftMs: 29_000 }, sessionMs: 2000 });
    vi.advanceTimersByTime(500);
    expect(told).toHaveLength(3);
    happens(0, { timer: null });
    vi.advanceTimersByTime(500);
    expect(told.at(-1)?.[0]?.timer).toBeNull();
  });

  test('goes to all who watch, until they no longer do', () => {
    const { board, told, unwatch, happens } = watched();
    const others: string[] = [];
    board.watch(text => others.push(text));
    happens(0, { state: 'working' });
    vi.advanceTimersByTime(500);
    unwatch();
    happens(0, { state: 'held' });
    vi.advanceTimersByTime(500);
    expect([told.length, others.length]).toEqual([1, 2]);
  });

  test('is not put together while nobody watches, and comes to an end with the server', () => {
    const { board, told, unwatch, happens } = watched();
    unwatch();
    happens(0, { state: 'working' });
    expect(vi.getTimerCount()).toBe(0);
    board.watch(text => told.push(JSON.parse(text)));
    happens(0, { state: 'held' });
    expect(vi.getTimerCount()).toBe(1);
    board.close();
    expect(vi.getTimerCount()).toBe(0);
    happens(0, { state: 'over' });
    vi.advanceTimersByTime(1000);
    expect(told).toEqual([]);
  });
});
