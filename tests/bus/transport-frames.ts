import { encodeCanId } from '../../src/bus/can-id.ts';
import { type CanFrame, j1939Frame } from '../../src/bus/frame.ts';

/** A long message as it is sent: to all when the destination is 255, else to one address. */
export interface LongMessage {
  readonly source: number;
  readonly destination: number;
  readonly pgn: number;
  readonly data: Uint8Array;
}

const CONNECTION = 0xec00;
const DATA = 0xeb00;
const frame = (pgn: number, source: number, destination: number, data: readonly number[]): CanFrame =>
  j1939Frame(0, encodeCanId({ priority: 7, pgn, source, destination }), data);
const pgnBytes = (pgn: number): number[] => [pgn & 0xff, (pgn >>> 8) & 0xff, pgn >>> 16];

/** The frame that announces it. */
export function announce({ source, destination, pgn, data }: LongMessage): CanFrame {
  const control = destination === 255 ? 32 : 16;
  const size = [data.length & 0xff, data.length >>> 8, Math.ceil(data.length / 7), 255];
  return frame(CONNECTION, source, destination, [control, ...size, ...pgnBytes(pgn)]);
}

/** Its packets in order, the last one filled with ones. */
export function packetsOf(message: LongMessage): CanFrame[] {
  const frames: CanFrame[] = [];
  for (let start = 0; start < message.data.length; start += 7) {
    const part = [...message.data.subarray(start, start + 7)];
    while (part.length < 7) part.push(255);
    frames.push(dataFrame(message, start / 7 + 1, part));
  }
  return frames;
}

/** A data frame of this sender with a packet number, or a management frame with any bytes. */
export const dataFrame = (
  { source, destination, management }: Omit<LongMessage, 'data' | 'pgn'> & { readonly management?: boolean },
  packet: number | undefined,
  data: ArrayLike<number>,
): CanFrame => {
  const head = packet === undefined ? [] : [packet];
  return frame(management ? CONNECTION : DATA, source, destination, [...head, ...Array.from(data)]);
};

/** What the receiver answers: five bytes and the group. */
export const answer = (
  { source, destination, pgn }: Omit<LongMessage, 'data'>,
  head: readonly number[],
): CanFrame => frame(CONNECTION, destination, source, [...head, ...pgnBytes(pgn)]);
