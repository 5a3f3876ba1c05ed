import { expect, it } from 'vitest';
import type { SessionEvent } from '../../machines/events.ts';
import { EventQueue } from '../../src/session/event-queue.ts';

const stamp = (atMs: number) => ({ by: 'technician', via: 'touch', atMs }) as const;
const reply = (atMs: number): SessionEvent => ({ type: 'reply', id: 'yes', ...stamp(atMs) });
const clock = (atMs: number): SessionEvent => ({ type: 'clock', ...stamp(atMs) });
const stop = (atMs: number): SessionEvent => ({ type: 'stop', ...stamp(atMs) });

/**
 * A queue whose events are told by their type and number, when they are taken and when their rest begins; a rest is done
 * when it is let.
 */
function aQueue({ during = (_: SessionEvent): void => {}, isOver = (): boolean => false, broken = 0 } = {}) {
  const told: string[] = [];
  const done = new Map<number, () => void>();
  const queue = new EventQueue({
    isOver,
    failed: error => told.push(`failed: ${error instanceof Error ? error.message : ''}`),
    take(event) {
      told.push(`${event.type} ${event.atMs}`);
      during(event);
      return async () => {
        told.push(`rest of ${event.atMs}`);
        if (event.atMs === broken) throw new Error('a rest');
        return new Promise<void>(resolve => done.set(event.atMs, resolve));
      };
    },
  });
  const turn = () => new Promise<void>(resolve => setImmediate(resolve));
  /** The rest of this event is done; what waited for that has its turn. */
  async function finish(atMs: number): Promise<void> {
    done.get(atMs)?.();
    await turn();
  }
  return { queue, told, finish, turn };
}

it('an event is taken when it comes, and the next one when all that it led to is done', async () => {
  const { queue, told, finish } = aQueue();
  queue.put(reply(1));
  expect(told).toEqual(['reply 1', 'rest of 1']);
  queue.put(reply(2));
  queue.put(reply(3));
  await finish(0);
  expect(told).toHaveLength(2);
  await finish(1);
  expect(told.slice(2)).toEqual(['reply 2', 'rest of 2']);
  await finish(2);
  expect(told.slice(4)).toEqual(['reply 3', 'rest of 3']);
});

it('a stop is taken before `put` returns, whatever has not been done yet', () => {
  const { queue, told } = aQueue();
  queue.put(reply(1));
  queue.put(stop(2));
  queue.put(stop(3));
  expect(told).toEqual(['reply 1', 'rest of 1', 'stop 2', 'rest of 2', 'stop 3', 'rest of 3']);
});

it('what waited when a stop came was said before it, and is never taken; what comes after it is', async () => {
  const { queue, told, finish } = aQueue();
  queue.put(reply(1));
  queue.put(reply(2));
  queue.put(stop(3));
  queue.put(reply(4));
  await finish(1);
  expect(told).toEqual(['reply 1', 'rest of 1', 'stop 3', 'rest of 3']);
  await finish(3);
  expect(told.slice(4)).toEqual(['reply 4', 'rest of 4']);
});

it('time that has run out waits for nothing: what came before it was in time, and is carried out first', async () => {
  const { queue, told, finish } = aQueue();
  queue.put(reply(1));
  queue.put(reply(2));
  queue.put(reply(3), () => false);
  queue.put(reply(5));
  queue.put(clock(4));
  expect(told).toEqual(['reply 1', 'rest of 1', 'reply 2', 'rest of 2', 'clock 4', 'rest of 4']);
  for (const atMs of [1, 2, 4]) await finish(atMs);
  expect(told.slice(6)).toEqual(['reply 5', 'rest of 5']);
});

it('what means something else when its turn comes is left out', async () => {
  const { queue, told, finish } = aQueue();
  queue.put(reply(1));
  queue.put(reply(2), () => false);
  queue.put(reply(3));
  await finish(1);
  expect(told.slice(2)).toEqual(['reply 3', 'rest of 3']);
});

it('a stop that comes within an event, or within a stop, stands right behind it', () => {
  const { queue, told } = aQueue({
    during: ({ atMs }) => {
      if (atMs < 3) queue.put(stop(atMs + 1));
    },
  });
  queue.put(reply(1));
  expect(told).toEqual(['reply 1', 'stop 2', 'rest of 2', 'stop 3', 'rest of 3', 'rest of 1']);
});

it('a stop comes through after an event that could not be carried out', async () => {
  const { queue, told } = aQueue({
    during: ({ atMs }) => {
      if (atMs === 1) throw new Error('cannot be carried out');
    },
  });
  queue.put(reply(1));
  await queue.settled();
  expect(told).toContain('failed: cannot be carried out');
  queue.put(stop(2));
  expect(told).toContain('stop 2');
});

it('nothing is taken once it is over, not even a stop', async () => {
  let over = false;
  const { queue, told, finish } = aQueue({ isOver: () => over });
  queue.put(reply(1));
  queue.put(reply(2));
  over = true;
  queue.put(stop(3));
  await finish(1);
  expect(told).toEqual(['reply 1', 'rest of 1']);
  await queue.settled();
});

it('all is settled when the rest of each event and of each stop is done', async () => {
  const { queue, finish, turn } = aQueue();
  let settled = false;
  queue.put(reply(1));
  queue.put(stop(2));
  queue.put(reply(3));
  queue.put(stop(4));
  void queue.settled().then(() => {
    settled = true;
  });
  await turn();
  for (const atMs of [1, 4, 2]) {
    expect(settled).toBe(false);
    await finish(atMs);
  }
  expect(settled).toBe(true);
});

it('what comes while the last event is just being finished with is taken, at whatever moment', async () => {
  for (let ticks = 0; ticks < 20; ticks += 1) {
    const { queue, told, finish } = aQueue();
    queue.put(reply(1));
    const finished = finish(1);
    for (let tick = 0; tick < ticks; tick += 1) await Promise.resolve();
    queue.put(reply(2));
    await finished;
    expect(told.slice(2), `after ${ticks} ticks`).toEqual(['reply 2', 'rest of 2']);
  }
});

it('what breaks is told, and keeps nothing that comes after it; a stop that breaks is no stop', async () => {
  const broken = (event: SessionEvent) => {
    if (event.atMs === 1 || event.atMs === 4) throw new Error('an event');
  };
  const { queue, told, turn } = aQueue({ during: broken, broken: 2 });
  queue.put(reply(1));
  queue.put(reply(2));
  queue.put(reply(3));
  await turn();
  expect(told).toEqual([
    'reply 1',
    'failed: an event',
    'reply 2',
    'rest of 2',
    'failed: a rest',
    'reply 3',
    'rest of 3',
  ]);
  expect(() => queue.put(stop(4))).toThrow('an event');
  expect(told.slice(7)).toEqual(['stop 4', 'failed: an event']);
});
