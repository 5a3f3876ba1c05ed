import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CanFrame } from '../../src/bus/frame.ts';
import { createReassembly, type TransportResult } from '../../src/bus/transport/reassembly.ts';
import { announce, answer, dataFrame, packetsOf } from './transport-frames.ts';

const DM1 = 65226;
const bytes = (length: number): Uint8Array => Uint8Array.from({ length }, (_, index) => (index * 37) % 251);
const broadcast = { source: 0, destination: 255, pgn: DM1, data: bytes(23) };
const toOne = { source: 0x80, destination: 0, pgn: 0xef00, data: bytes(23) };

/** All results that frames give, in order. */
function results(frames: readonly CanFrame[]): TransportResult[] {
  const { accept } = createReassembly();
  return frames.flatMap(frame => accept(frame) ?? []);
}
const at = (timeS: number, frame: CanFrame): CanFrame => ({ ...frame, timeS });

describe('A long message to all', () => {
  const [one, two, three, four] = packetsOf(broadcast);
  if (!one || !two || !three || !four) throw new Error('23 bytes are four packets');

  it('is whole after its last packet, with its group, sender and time', () => {
    expect(results([announce(broadcast), one, two, three, at(0.2, four)])).toEqual([
      {
        kind: 'message',
        pgn: DM1,
        priority: 7,
        source: 0,
        destination: 255,
        timeS: 0.2,
        data: broadcast.data,
      },
    ]);
  });

  it('may have its packets in any order and repeated', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 9, max: 1785 }).chain(length => {
          const message = { ...broadcast, data: bytes(length) };
          const packets = packetsOf(message);
          const order = fc.shuffledSubarray(packets, { minLength: packets.length });
          return fc.tuple(fc.constant(message), order, fc.subarray(packets, { maxLength: 2 }));
        }),
        ([message, order, repeated]) => {
          const [last, ...rest] = order.toReversed();
          if (!last) throw new Error('no packets');
          const again = repeated.filter(packet => packet !== last);
          const [result, ...others] = results([announce(message), ...rest, ...again, last]);
          expect(others).toEqual([]);
          expect(result).toMatchObject({ kind: 'message', data: message.data });
        },
      ),
    );
  });

  it('is put together beside any other, however their frames are mixed', () => {
    const anyMessage = fc.record({
      destination: fc.constantFrom(255, 1, 2),
      pgn: fc.constantFrom(DM1, 65227, 65251),
      data: fc.uint8Array({ minLength: 9, maxLength: 60 }),
    });
    fc.assert(
      fc.property(
        fc.array(anyMessage, { minLength: 1, maxLength: 8 }),
        fc.infiniteStream(fc.nat()),
        (messages, picks) => {
          const queues = messages.map((message, index) => {
            const sent = { ...message, source: 10 + index };
            return { sent, frames: [announce(sent), ...packetsOf(sent)] };
          });
          const { accept } = createReassembly();
          const whole: TransportResult[] = [];
          let waiting = queues.filter(({ frames }) => frames.length > 0);
          while (waiting.length > 0) {
            const { value } = picks.next();
            const frame = waiting[value % waiting.length]?.frames.shift();
            const result = frame && accept(frame);
            if (result) whole.push(result);
            waiting = queues.filter(({ frames }) => frames.length > 0);
          }
          expect(whole).toHaveLength(queues.length);
          for (const { sent } of queues)
            expect(whole).toContainEqual(expect.objectContaining({ kind: 'message', ...sent }));
        },
      ),
    );
  });

  it('of which a packet is lost fails in time and names the packet', () => {
    const reassembly = createReassembly();
    for (const frame of [announce(broadcast), one, at(0.1, two), at(0.2, four)])
      expect(reassembly.accept(frame)).toBeUndefined();
    expect(reassembly.expire(0.9)).toEqual([]);
    expect(reassembly.expire(2)).toMatchObject([
      { kind: 'failed', reason: 'timeout', pgn: DM1, missing: [3] },
    ]);
    expect(reassembly.expire(3)).toEqual([]);
  });

  it('fails when a packet comes 750 ms after the one before, and does not use it', () => {
    expect(results([announce(broadcast), one, at(0.75, two)])).toEqual([]);
    expect(results([announce(broadcast), one, at(0.76, two)])).toMatchObject([
      { reason: 'timeout', missing: [2, 3, 4] },
    ]);
  });

  it('fails when the same sender begins anew, and the new one counts', () => {
    const outcome = results([announce(broadcast), one, announce(broadcast), one, two, three, four]);
    expect(outcome).toMatchObject([{ kind: 'failed', reason: 'replaced' }, { kind: 'message' }]);
  });

  it('fails when a packet comes twice with different bytes', () => {
    const other = dataFrame(broadcast, 1, Uint8Array.of(9, 9, 9, 9, 9, 9, 9));
    expect(results([announce(broadcast), one, other])).toMatchObject([
      { reason: 'conflict', missing: [2, 3, 4] },
    ]);
  });

  it('fails on a packet number that was not announced, and on a packet cut short', () => {
    for (const packet of [0, 5, 255])
      expect(results([announce(broadcast), dataFrame(broadcast, packet, bytes(7))])).toMatchObject([
        { reason: 'badPacket' },
      ]);
    expect(results([announce(broadcast), dataFrame(broadcast, 1, bytes(3))])).toMatchObject([
      { reason: 'badPacket' },
    ]);
  });

  it('that began before listening did is passed over', () => {
    expect(results([two, three, four])).toEqual([]);
  });

  it.each([
    [[32, 8, 0, 2, 255, 0xca, 0xfe, 0], 'fewer bytes than need it'],
    [[32, 0xfa, 0x06, 255, 255, 0xca, 0xfe, 0], 'more bytes than it can carry'],
    [[32, 23, 0, 3, 255, 0xca, 0xfe, 0], 'packets that do not fit its bytes'],
    [[33, 23, 0, 4, 255, 0xca, 0xfe, 0], 'an unknown control byte'],
    [[16, 23, 0, 4, 255, 0xca, 0xfe, 0], 'a request to send, which needs one receiver'],
    [[32, 23, 0, 4], 'its end missing'],
  ])('announced as %j fails: %s', data => {
    expect(results([dataFrame({ ...broadcast, management: true }, undefined, data)])).toMatchObject([
      { kind: 'failed', reason: 'badAnnouncement', pgn: undefined },
    ]);
  });
});

describe('A long message to one address', () => {
  const packets = packetsOf(toOne);
  const [one, two, three, four] = packets;
  if (!one || !two || !three || !four) throw new Error('23 bytes are four packets');
  const clear = (count: number, first: number) => answer(toOne, [17, count, first, 255, 255]);
  const end = answer(toOne, [19, 23, 0, 4, 255]);
  const abort = [255, 3, 255, 255, 255];

  it('is whole after its last packet, cleared in runs, the end confirmed or not', () => {
    const run = [announce(toOne), clear(2, 1), one, two, clear(2, 3), three, four];
    expect(results([...run, end])).toMatchObject([
      { kind: 'message', pgn: 0xef00, source: 0x80, data: toOne.data },
    ]);
    expect(results(run)).toHaveLength(1);
  });

  it('is whole when packets are asked for again', () => {
    const frames = [announce(toOne), clear(4, 1), one, two, four, clear(2, 2), two, three];
    expect(results(frames)).toMatchObject([{ kind: 'message', data: toOne.data }]);
  });

  it('may be held, each hold at most 1050 ms', () => {
    const held = [announce(toOne), clear(0, 1), at(1, clear(0, 1)), at(2, clear(4, 1))];
    const rest = packets.map(packet => at(2.1, packet));
    expect(results([...held, ...rest])).toMatchObject([{ kind: 'message' }]);
    expect(results([announce(toOne), clear(0, 1), at(1.06, clear(4, 1))])).toMatchObject([
      { reason: 'timeout' },
    ]);
  });

  it('waits 1250 ms for each answer and for the first packet after it, and 750 ms for the next', () => {
    expect(results([announce(toOne), at(1.25, clear(4, 1)), at(2.5, one), at(3.25, two)])).toEqual([]);
    expect(results([announce(toOne), at(1.26, clear(4, 1))])).toMatchObject([{ reason: 'timeout' }]);
    expect(results([announce(toOne), clear(4, 1), at(1.26, one)])).toMatchObject([{ reason: 'timeout' }]);
    expect(results([announce(toOne), clear(4, 1), one, at(0.76, two)])).toMatchObject([
      { reason: 'timeout' },
    ]);
    expect(results([announce(toOne), clear(1, 1), one, at(1.25, clear(3, 2))])).toEqual([]);
  });

  it('fails when either side aborts it', () => {
    const byReceiver = answer(toOne, abort);
    const bySender = answer({ ...toOne, source: toOne.destination, destination: toOne.source }, abort);
    for (const frame of [byReceiver, bySender])
      expect(results([announce(toOne), clear(4, 1), one, frame, two])).toMatchObject([
        { kind: 'failed', reason: 'aborted', missing: [2, 3, 4] },
      ]);
  });

  it('fails when the receiver confirms the end but packets were not seen here', () => {
    expect(results([announce(toOne), clear(4, 1), one, two, four, end])).toMatchObject([
      { kind: 'failed', reason: 'packetsLost', missing: [3] },
    ]);
  });

  it('is not touched by answers to another message', () => {
    const other = answer({ ...toOne, pgn: 0xda00 }, abort);
    expect(results([announce(toOne), clear(4, 1), other, ...packets])).toMatchObject([{ kind: 'message' }]);
    expect(results([end, other])).toEqual([]);
  });
});

describe('Announcements without end', () => {
  it('do not fill the memory: the oldest gives way', () => {
    const { accept, expire } = createReassembly();
    let replaced = 0;
    for (let source = 0; source < 254; source += 1)
      for (let destination = 0; destination < 3; destination += 1)
        if (accept(announce({ ...toOne, source, destination }))) replaced += 1;
    expect(replaced).toBe(254 * 3 - 512);
    expect(expire(10)).toHaveLength(512);
  });
});
