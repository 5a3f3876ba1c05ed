import type { BusCondition } from '../bus-condition.ts';
import { type CanFrame, MAX_DATA_BYTES } from '../frame.ts';
import { hexBytes, hexNumber } from './hex.ts';

/**
 * What a serial adapter says, one message at a time: the ASCII protocol of serial CAN adapters that Linux's slcan
 * driver also speaks (commands and replies from memory; not an official standard).
 */
type SlcanMessage =
  | { readonly kind: 'frame'; readonly frame: CanFrame }
  /** A command was done. */
  | { readonly kind: 'done' }
  /** A command was refused. */
  | { readonly kind: 'refused' }
  /** Answer to the status command: each condition that is raised, or none. */
  | { readonly kind: 'status'; readonly conditions: readonly BusCondition[] }
  | { readonly kind: 'version'; readonly text: string }
  | { readonly kind: 'rubbish'; readonly reason: string };

export const SLCAN_BELL = '\x07';

/** Bit rates by the number of the `S` command. J1939 runs at 250 kbit/s (J1939-11) or 500 kbit/s (J1939-14). */
const SLCAN_BIT_RATES = { 250000: 'S5', 500000: 'S6' } as const;
export type SlcanBitRate = keyof typeof SLCAN_BIT_RATES;

/** Commands that close the channel, set the bit rate and open it to listen only: the bus is never disturbed. */
export const slcanListen = (bitRate: SlcanBitRate): readonly string[] => [
  'C\r',
  `${SLCAN_BIT_RATES[bitRate]}\r`,
  'L\r',
];
export const SLCAN_CLOSE = 'C\r';
export const SLCAN_ASK_STATUS = 'F\r';

const STATUS_BITS: readonly (readonly [number, BusCondition])[] = [
  [0x01, 'overrun'],
  [0x04, 'errorWarning'],
  [0x08, 'overrun'],
  [0x20, 'errorPassive'],
  [0x80, 'otherError'],
];
const TIMESTAMP_DIGITS = 4;

const rubbish = (reason: string): SlcanMessage => ({ kind: 'rubbish', reason });

/** Reads one message, without its carriage return; a bell is a message of its own. Never throws. */
export function parseSlcan(message: string, timeS: number): SlcanMessage {
  switch (message.charAt(0)) {
    case '':
    case 'z':
    case 'Z':
      return message.length <= 1
        ? { kind: 'done' }
        : rubbish('there is more than the answer to a sent frame');
    case SLCAN_BELL:
      return { kind: 'refused' };
    case 'T':
      return parseFrame(message, timeS, 8, false);
    case 't':
      return parseFrame(message, timeS, 3, false);
    case 'R':
      return parseFrame(message, timeS, 8, true);
    case 'r':
      return parseFrame(message, timeS, 3, true);
    case 'F':
      return parseStatus(message);
    case 'V':
    case 'N':
      return { kind: 'version', text: message };
    default:
      return rubbish('it begins with no letter that adapters use');
  }
}

function parseFrame(message: string, timeS: number, idDigits: 3 | 8, remote: boolean): SlcanMessage {
  const extended = idDigits === 8;
  const id = hexNumber(message, 1, Math.min(1 + idDigits, message.length));
  if (message.length < 2 + idDigits || id < 0)
    return rubbish(`its identifier is not ${idDigits} hexadecimal digits`);
  if (id > (extended ? 0x1fffffff : 0x7ff)) return rubbish('its identifier is too large');
  const length = message.charCodeAt(1 + idDigits) - 48;
  if (!(length >= 0 && length <= MAX_DATA_BYTES)) return rubbish('its length is not 0 to 8');
  const start = 2 + idDigits;
  const end = start + (remote ? 0 : 2 * length);
  if (message.length !== end && message.length !== end + TIMESTAMP_DIGITS)
    return rubbish(`it does not have the ${length} bytes that it announces`);
  const data = hexBytes(message, start, remote ? 0 : length);
  if (data === undefined || (message.length > end && hexNumber(message, end, message.length) < 0))
    return rubbish('its data is not hexadecimal');
  return { kind: 'frame', frame: { timeS, id, extended, remote, data } };
}

function parseStatus(message: string): SlcanMessage {
  const flags = message.length === 3 ? hexNumber(message, 1, 3) : -1;
  if (flags < 0) return rubbish('its status is not two hexadecimal digits');
  const raised = STATUS_BITS.filter(([bit]) => flags & bit).map(([, condition]) => condition);
  return { kind: 'status', conditions: [...new Set(raised)] };
}
