import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CanFrame, j1939Frame } from '../../../src/bus/frame.ts';
import { createReassembly } from '../../../src/bus/transport/reassembly.ts';
import { anyCanId } from '../arbitraries.ts';
import { fieldsOf } from '../can-id-fields.ts';
import { announce, answer, type LongMessage, packetsOf } from '../transport-frames.ts';
import { readByTshark } from './tshark.ts';

const atStep = (frame: CanFrame, index: number): CanFrame => ({
  ...frame,
  timeS: 1_700_000_000 + index / 100,
});

/** Debian package tshark, J1939 dissector. */
describe('tshark reads in the same frames', () => {
  it('the same priority, group, sender, receiver and data', () => {
    const ids = [
      ...fc.sample(anyCanId, { numRuns: 400, seed: 11 }),
      0x0cf00400,
      0x18ea21f9,
      0x1af00400,
      0x1fffffff,
    ];
    const frames = ids.map((id, index) => atStep(j1939Frame(0, id, [index & 0xff, 2, 3]), index));
    const fields = ['j1939.priority', 'j1939.pgn', 'j1939.src_addr', 'j1939.dst_addr', 'j1939.data'];
    const rows = readByTshark(frames, 'j1939', fields);
    expect(rows).toHaveLength(frames.length);
    rows.forEach(([priority, pgn, source, destination, data], index) => {
      const { id, data: sent } = frames[index] ?? expect.fail('a row too many');
      const own = fieldsOf(id);
      // tshark gives no receiver for a group that is for all.
      const receiver = destination === '' ? 255 : Number(destination);
      expect({
        priority: Number(priority),
        pgn: Number(pgn),
        source: Number(source),
        destination: receiver,
      }).toEqual(own);
      expect(data).toBe(Buffer.from(sent).toString('hex'));
    });
  });

  it('the same long messages to one address, one after another (of mixed ones this tshark miscounts the bytes)', () => {
    const lengths = [9, 13, 14, 15, 23, 100, 1785];
    const messages: LongMessage[] = lengths.map((length, index) => ({
      source: 0x80 + index,
      destination: index,
      pgn: 0xef00,
      data: Uint8Array.from({ length }, (_, at) => (at * 31 + index) & 0xff),
    }));
    const frames = messages
      .flatMap(message => {
        const clear = answer(message, [17, Math.ceil(message.data.length / 7), 1, 255, 255]);
        return [announce(message), clear, ...packetsOf(message)];
      })
      .map(atStep);
    const { accept } = createReassembly();
    const own = frames.map(frame => {
      const result = accept(frame);
      if (result === undefined) return '';
      return result.kind === 'message' ? Buffer.from(result.data).toString('hex') : result.reason;
    });
    // tshark puts the three bytes of the group before the message.
    const theirs = readByTshark(frames, 'isobus', ['isobus.reassembled.data']).map(([data = '']) =>
      data.slice(6),
    );
    expect(own).toEqual(theirs);
    expect(own.filter(data => data !== '')).toHaveLength(messages.length);
  });

  it('the same announcements to all (this tshark does not put those messages together)', () => {
    const sent = { source: 3, destination: 255, pgn: 65226, data: new Uint8Array(23) };
    const fields = ['total_message_size', 'total_number_of_packets', 'pgn'].map(
      field => `isobus.transport_protocol.broadcast_announce_message.${field}`,
    );
    const [row = []] = readByTshark([atStep(announce(sent), 0)], 'isobus', fields);
    expect(row.map(Number)).toEqual([23, 4, 65226]);
  });
});
