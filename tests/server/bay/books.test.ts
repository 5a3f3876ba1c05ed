import { describe, expect, test } from 'vitest';
import { FRAMES_KEPT, FrameStream } from '../../../src/server/bay/frame-stream.ts';
import { StopBook } from '../../../src/server/bay/stop-book.ts';
import { applyPatch, serverMessageSchema } from '../../../src/server/protocol/index.ts';
import { bareBay } from './bare-bay.ts';

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
    // Neither is one that never was.
    for (const seq of [4, -1]) expect(stream.since(seq)).toBeNull();
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
