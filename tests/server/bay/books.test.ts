import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/record/index.ts';
import { DoneCommands } from '../../../src/server/bay/commands/done-commands.ts';
import { FRAMES_KEPT, FrameStream } from '../../../src/server/bay/frame-stream.ts';
import { StopBook } from '../../../src/server/bay/stop-book.ts';
import { applyPatch, serverMessageSchema } from '../../../src/server/protocol/index.ts';
import { bareBay } from './bare-bay.ts';

describe('Commands that were done', () => {
  const settled = Promise.resolve();

  test('are known by device and id, until they came to nothing or the device was let go of', () => {
    const done = new DoneCommands();
    expect(done.find('d', '1')).toBeUndefined();
    done.add('d', '1', settled);
    done.add('d', '2', settled);
    done.add('e', '1', settled);
    expect(done.find('d', '1')).toBe(settled);
    expect(done.find('e', '2')).toBeUndefined();
    done.drop('d', '1');
    expect([done.find('d', '1'), done.find('d', '2')]).toEqual([undefined, settled]);
    done.forget('d');
    expect([done.find('d', '2'), done.find('e', '1')]).toEqual([undefined, settled]);
    done.drop('nobody', '1');
  });

  test('are a thousand of each device; the oldest is forgotten first, and of no other device', () => {
    const done = new DoneCommands();
    done.add('other', '0', settled);
    for (let id = 0; id < 1000; id += 1) done.add('d', String(id), settled);
    expect(done.find('d', '0')).toBe(settled);
    done.add('d', '1000', settled);
    expect(done.find('d', '0')).toBeUndefined();
    expect(done.find('d', '1')).toBe(settled);
    expect(done.find('other', '0')).toBe(settled);
  });

  test('are taken from the record when a session is gone on with', () => {
    const entry = (kind: string, data: object): Entry => ({ kind, data }) as unknown as Entry;
    const command = { id: 'i', device: 'd', name: 'n', role: 'second', do: 'say' };
    const done = new DoneCommands();
    done.restore([
      entry('command', command),
      entry('problem', { ...command, id: 'no command' }),
      entry('command', { id: 'not whole', device: 'd' }),
    ]);
    expect(done.find('d', 'i')).toBeInstanceOf(Promise);
    expect(done.find('d', 'no command')).toBeUndefined();
    expect(done.find('d', 'not whole')).toBeUndefined();
  });
});

describe('Stops', () => {
  test('of one device are one stop until the session has gone on; another’s is its own', () => {
    const stops = new StopBook();
    expect([stops.take('a'), stops.take('a'), stops.take('b')]).toEqual([true, false, true]);
    stops.look(true);
    expect(stops.take('a')).toBe(false);
    stops.look(false);
    expect([stops.take('a'), stops.take('b')]).toEqual([true, true]);
  });
});

describe('The frames of a bay', () => {
  const heard = (stream: FrameStream) => {
    const texts: string[] = [];
    return { texts, unlisten: stream.listen(text => texts.push(text)) };
  };

  test('tell each change once, numbered, and lead from the snapshot before to the one after', () => {
    const stream = new FrameStream(bareBay);
    const { texts, unlisten } = heard(stream);
    expect(stream.snapshot()).toEqual({ seq: 0, sessionMs: 0, state: bareBay });
    stream.show({ ...bareBay, turn: 's/1' }, 5);
    stream.show({ ...bareBay, turn: 's/1' }, 9);
    expect(texts).toHaveLength(1);
    const frame = serverMessageSchema.parse(JSON.parse(texts[0] ?? ''));
    if (frame.type !== 'patch') throw new Error(frame.type);
    expect(frame).toMatchObject({ seq: 1, sessionMs: 5 });
    expect(applyPatch(bareBay, frame.patch)).toEqual({ ...bareBay, turn: 's/1' });
    expect(stream.snapshot()).toEqual({ seq: 1, sessionMs: 5, state: { ...bareBay, turn: 's/1' } });
    unlisten();
    stream.show(bareBay, 20);
    expect(texts).toHaveLength(1);
    expect(stream.seq).toBe(2);
  });

  test('are the same to all, and are kept for those who were away', () => {
    const stream = new FrameStream(bareBay);
    const [one, other] = [heard(stream), heard(stream)];
    for (let times = 1; times <= 3; times += 1)
      expect(stream.send({ type: 'hush', sessionMs: times })).toBe(times);
    expect(other.texts).toEqual(one.texts);
    expect(stream.since(0)).toEqual(one.texts);
    expect(stream.since(2)).toEqual(one.texts.slice(2));
    expect(stream.since(3)).toEqual([]);
    expect(stream.since(4)).toBeNull();
  });

  test('are kept up to a number: who was away for longer gets the whole state', () => {
    const stream = new FrameStream(bareBay);
    for (let times = 0; times < FRAMES_KEPT + 2; times += 1) stream.send({ type: 'hush', sessionMs: 0 });
    expect(FRAMES_KEPT).toBe(1000);
    expect(stream.since(1)).toBeNull();
    const kept = stream.since(2);
    expect(kept).toHaveLength(FRAMES_KEPT);
    expect(JSON.parse(kept?.[0] ?? '')).toMatchObject({ seq: 3 });
  });

  test('of one run of the server are not taken for those of another', () => {
    expect(new FrameStream(bareBay).epoch).not.toBe(new FrameStream(bareBay).epoch);
  });
});
