import { destinationOf, GLOBAL_ADDRESS, pgnOf, priorityOf, sourceOf } from '../can-id.ts';
import type { CanFrame } from '../frame.ts';
import { type ConnectionMessage, parseConnection } from './connection.ts';
import {
  BYTES_PER_PACKET,
  CONNECTION_PGN,
  DATA_TRANSFER_PGN,
  MOST_CONNECTIONS,
  T1_NEXT_PACKET_S,
  T2_AFTER_CLEAR_S,
  T3_FOR_ANSWER_S,
  T4_HOLD_S,
} from './limits.ts';

type TransportFailureReason =
  /** A packet, or the answer that was due, did not come in time. */
  | 'timeout'
  | 'aborted'
  /** The same sender began anew before the end. */
  | 'replaced'
  /** The receiver said the end although packets were not seen here. */
  | 'packetsLost'
  /** A packet came twice with different bytes, so two messages may be mixed. */
  | 'conflict'
  /** A packet number that was not announced. */
  | 'badPacket'
  | 'badAnnouncement';

export type TransportResult =
  | {
      readonly kind: 'message';
      readonly pgn: number;
      readonly priority: number;
      readonly source: number;
      readonly destination: number;
      readonly timeS: number;
      readonly data: Uint8Array;
    }
  | {
      readonly kind: 'failed';
      readonly reason: TransportFailureReason;
      /** Undefined when the announcement itself could not be read. */
      readonly pgn: number | undefined;
      readonly source: number;
      readonly destination: number;
      readonly timeS: number;
      /** Numbers of the packets that did not come, from 1. */
      readonly missing: readonly number[];
    };

interface Connection {
  readonly pgn: number;
  readonly priority: number;
  readonly source: number;
  readonly destination: number;
  readonly data: Uint8Array;
  readonly seen: Uint8Array;
  packetsLeft: number;
  /** Last packet of the run that the receiver cleared. */
  runEnd: number;
  deadlineS: number;
}

export const isTransport = (pgn: number): boolean => pgn === CONNECTION_PGN || pgn === DATA_TRANSFER_PGN;

/**
 * Puts long messages together from what is heard on the bus, as a listener who takes part in nothing: broadcasts
 * and messages to one address, many at a time, packets in any order and repeated. Time comes with the frames;
 * nothing here waits, and nothing throws.
 */
export function createReassembly() {
  const open = new Map<number, Connection>();
  const keyOf = (source: number, destination: number): number => source * 256 + destination;

  const close = (it: Connection): void => {
    open.delete(keyOf(it.source, it.destination));
  };
  const fail = (it: Connection, reason: TransportFailureReason, timeS: number): TransportResult => {
    close(it);
    const { pgn, source, destination } = it;
    return { kind: 'failed', reason, pgn, source, destination, timeS, missing: missingOf(it) };
  };

  /** Every connection whose time is up, to be asked for when the bus is silent. */
  function expire(nowS: number): TransportResult[] {
    return [...open.values()].filter(it => nowS > it.deadlineS).map(it => fail(it, 'timeout', nowS));
  }

  function begin(frame: CanFrame, message: ConnectionMessage & { kind: 'broadcast' | 'request' }) {
    const source = sourceOf(frame.id);
    const destination = destinationOf(frame.id);
    const before = open.get(keyOf(source, destination)) ?? oldestIfFull();
    const failure =
      before && fail(before, frame.timeS > before.deadlineS ? 'timeout' : 'replaced', frame.timeS);
    const broadcast = message.kind === 'broadcast';
    open.set(keyOf(source, destination), {
      pgn: message.pgn,
      priority: priorityOf(frame.id),
      source,
      destination,
      data: new Uint8Array(message.bytes),
      seen: new Uint8Array(message.packets + 1),
      packetsLeft: message.packets,
      runEnd: broadcast ? message.packets : 0,
      deadlineS: frame.timeS + (broadcast ? T1_NEXT_PACKET_S : T3_FOR_ANSWER_S),
    });
    return failure;
  }

  function oldestIfFull(): Connection | undefined {
    return open.size < MOST_CONNECTIONS ? undefined : open.values().next().value;
  }

  function manage(frame: CanFrame): TransportResult | undefined {
    const source = sourceOf(frame.id);
    const destination = destinationOf(frame.id);
    const message = parseConnection(frame.data);
    if (message.kind === 'malformed' || (message.kind === 'broadcast') !== (destination === GLOBAL_ADDRESS))
      return {
        kind: 'failed',
        reason: 'badAnnouncement',
        pgn: undefined,
        source,
        destination,
        timeS: frame.timeS,
        missing: [],
      };
    if (message.kind === 'broadcast' || message.kind === 'request') return begin(frame, message);

    // The receiver answers, so its destination is the sender; an abort may come from either side.
    const answered = open.get(keyOf(destination, source));
    const own = message.kind === 'abort' ? open.get(keyOf(source, destination)) : undefined;
    const it = [answered, own].find(one => one?.pgn === message.pgn);
    if (it === undefined) return undefined;
    if (frame.timeS > it.deadlineS) return fail(it, 'timeout', frame.timeS);
    switch (message.kind) {
      case 'abort':
        return fail(it, 'aborted', frame.timeS);
      case 'end':
        return fail(it, 'packetsLost', frame.timeS);
      case 'clear':
        if (message.packets > 0) it.runEnd = message.firstPacket + message.packets - 1;
        it.deadlineS = frame.timeS + (message.packets > 0 ? T2_AFTER_CLEAR_S : T4_HOLD_S);
        return undefined;
    }
  }

  function take(frame: CanFrame): TransportResult | undefined {
    const it = open.get(keyOf(sourceOf(frame.id), destinationOf(frame.id)));
    // A packet without an announcement: listening began in the middle of a message.
    if (it === undefined) return undefined;
    if (frame.timeS > it.deadlineS) return fail(it, 'timeout', frame.timeS);
    const packet = frame.data[0] ?? 0;
    const start = (packet - 1) * BYTES_PER_PACKET;
    const length = Math.min(BYTES_PER_PACKET, it.data.length - start);
    if (packet === 0 || length <= 0 || frame.data.length < 1 + length)
      return fail(it, 'badPacket', frame.timeS);
    const again = it.seen[packet] === 1;
    for (let index = 0; index < length; index += 1) {
      const byte = frame.data[1 + index] ?? 0;
      if (again && it.data[start + index] !== byte) return fail(it, 'conflict', frame.timeS);
      it.data[start + index] = byte;
    }
    if (!again) it.packetsLeft -= 1;
    it.seen[packet] = 1;
    it.deadlineS = frame.timeS + (packet >= it.runEnd && it.runEnd > 0 ? T3_FOR_ANSWER_S : T1_NEXT_PACKET_S);
    if (it.packetsLeft > 0) return undefined;
    close(it);
    const { pgn, priority, source, destination, data } = it;
    return { kind: 'message', pgn, priority, source, destination, timeS: frame.timeS, data };
  }

  return {
    /** Takes a frame of one of the two transport groups; gives what it completes or ends. */
    accept: (frame: CanFrame): TransportResult | undefined =>
      pgnOf(frame.id) === CONNECTION_PGN ? manage(frame) : take(frame),
    expire,
  };
}

function missingOf({ seen }: Connection): number[] {
  const missing: number[] = [];
  for (let packet = 1; packet < seen.length; packet += 1) if (seen[packet] === 0) missing.push(packet);
  return missing;
}
