import { BYTES_PER_PACKET, LEAST_BYTES, MOST_BYTES } from './limits.ts';

/** A connection management message, SAE J1939-21 section 5.10.3 (from memory). */
export type ConnectionMessage =
  /** Broadcast announce, or request to send: so many bytes in so many packets follow. */
  | {
      readonly kind: 'broadcast' | 'request';
      readonly pgn: number;
      readonly bytes: number;
      readonly packets: number;
    }
  | {
      readonly kind: 'clear';
      readonly pgn: number;
      /** How many packets may come now; 0 holds the connection. */
      readonly packets: number;
      readonly firstPacket: number;
    }
  | { readonly kind: 'end'; readonly pgn: number }
  | { readonly kind: 'abort'; readonly pgn: number; readonly reasonCode: number }
  | { readonly kind: 'malformed' };

const REQUEST_TO_SEND = 16;
const CLEAR_TO_SEND = 17;
const END_OF_MESSAGE = 19;
const BROADCAST_ANNOUNCE = 32;
const ABORT = 255;

/** Reads the 8 bytes of a connection management frame; anything the protocol does not know is malformed. */
export function parseConnection(data: Uint8Array): ConnectionMessage {
  const [control = 0, second = 0, third = 0, fourth = 0, , low = 0, middle = 0, high = 0] = data;
  if (data.length !== 8) return { kind: 'malformed' };
  const pgn = low | (middle << 8) | (high << 16);
  switch (control) {
    case BROADCAST_ANNOUNCE:
    case REQUEST_TO_SEND: {
      const bytes = second | (third << 8);
      const sound =
        bytes >= LEAST_BYTES && bytes <= MOST_BYTES && fourth === Math.ceil(bytes / BYTES_PER_PACKET);
      if (!sound) return { kind: 'malformed' };
      return { kind: control === REQUEST_TO_SEND ? 'request' : 'broadcast', pgn, bytes, packets: fourth };
    }
    case CLEAR_TO_SEND:
      return { kind: 'clear', pgn, packets: second, firstPacket: third };
    case END_OF_MESSAGE:
      return { kind: 'end', pgn };
    case ABORT:
      return { kind: 'abort', pgn, reasonCode: second };
    default:
      return { kind: 'malformed' };
  }
}
