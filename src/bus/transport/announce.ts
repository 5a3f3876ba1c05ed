import { encodeCanId, GLOBAL_ADDRESS } from '../can-id.ts';
import { type CanFrame, j1939Frame } from '../frame.ts';
import { BYTES_PER_PACKET, CONNECTION_PGN, DATA_TRANSFER_PGN, LEAST_BYTES, MOST_BYTES } from './limits.ts';

const BROADCAST_ANNOUNCE = 32;
const PRIORITY = 7;
const RESERVED = 0xff;

/**
 * A long message to all, as its frames in their order: the announcement, then packets of seven bytes, the last
 * one filled with ones. The sender has to leave 50 to 200 ms before each packet. Source: SAE J1939-21 sections
 * 5.10.3.1 and 5.10.5 (from memory).
 * @throws RangeError for what fits one frame or is more than the protocol carries
 */
export function announceToAll(timeS: number, source: number, pgn: number, data: Uint8Array): CanFrame[] {
  if (data.length < LEAST_BYTES || data.length > MOST_BYTES)
    throw new RangeError(`A long message has ${LEAST_BYTES} to ${MOST_BYTES} bytes, not ${data.length}.`);
  const frame = (group: number, bytes: readonly number[]) =>
    j1939Frame(
      timeS,
      encodeCanId({ priority: PRIORITY, pgn: group, source, destination: GLOBAL_ADDRESS }),
      bytes,
    );
  const packets = Math.ceil(data.length / BYTES_PER_PACKET);
  const size = [data.length & 0xff, data.length >>> 8, packets, RESERVED];
  const group = [pgn & 0xff, (pgn >>> 8) & 0xff, pgn >>> 16];
  const announcement = frame(CONNECTION_PGN, [BROADCAST_ANNOUNCE, ...size, ...group]);
  return [
    announcement,
    ...Array.from({ length: packets }, (_, index) => {
      const start = index * BYTES_PER_PACKET;
      const part = Array.from({ length: BYTES_PER_PACKET }, (_, at) => data[start + at] ?? RESERVED);
      return frame(DATA_TRANSFER_PGN, [index + 1, ...part]);
    }),
  ];
}
