import { type BusCondition, conditionOf } from '../bus-condition.ts';
import { type CanFrame, MAX_DATA_BYTES } from '../frame.ts';
import { bytesToHex, hexBytes, hexNumber, toHex } from './hex.ts';

/** One line of a log as `candump -L` writes it: `(1700000000.000000) can0 0CF00400#FFFFFF6813FFFFFF`. */
type CandumpLine =
  | { readonly kind: 'frame'; readonly frame: CanFrame; readonly interfaceName: string }
  | { readonly kind: 'condition'; readonly condition: BusCondition; readonly timeS: number }
  | { readonly kind: 'rubbish'; readonly reason: string };

const STANDARD_DIGITS = 3;
const EXTENDED_DIGITS = 8;
const ERROR_FLAG = 0x20000000;
const LAST_EXTENDED_ID = 0x1fffffff;
const LAST_STANDARD_ID = 0x7ff;
const TIME = /^\d{1,12}\.\d{1,12}$/;

const rubbish = (reason: string): CandumpLine => ({ kind: 'rubbish', reason });

/** Reads one line, without its line break. Never throws: what is no frame comes back as rubbish with the reason. */
export function parseCandumpLine(line: string): CandumpLine {
  const close = line.indexOf(') ');
  if (line.charCodeAt(0) !== 40 || close < 0) return rubbish('it does not begin with a time in brackets');
  const timeS = timeOf(line, close);
  if (Number.isNaN(timeS)) return rubbish('its time is not seconds with a decimal point');
  const nameEnd = line.indexOf(' ', close + 2);
  const hash = line.indexOf('#', nameEnd);
  if (nameEnd < 0 || hash < 0) return rubbish('it has no identifier and # after the interface');
  const id = hexNumber(line, nameEnd + 1, hash);
  const digits = hash - nameEnd - 1;
  if (id < 0 || (digits !== STANDARD_DIGITS && digits !== EXTENDED_DIGITS))
    return rubbish('its identifier is not 3 or 8 hexadecimal digits');
  if (line.charCodeAt(hash + 1) === 35) return rubbish('it is a CAN FD frame, which this bus does not carry');

  const space = line.indexOf(' ', hash);
  const end = space < 0 ? line.length : space;
  const remote = line.charCodeAt(hash + 1) === 82;
  const length = remote ? 0 : (end - hash - 1) / 2;
  if (!Number.isInteger(length) || length > MAX_DATA_BYTES)
    return rubbish('its data is not 0 to 8 whole bytes');
  const data = hexBytes(line, hash + 1, length);
  if (data === undefined) return rubbish('its data is not hexadecimal');

  const extended = digits === EXTENDED_DIGITS;
  if (extended && id >= ERROR_FLAG && id < 2 * ERROR_FLAG)
    return { kind: 'condition', condition: conditionOf(id - ERROR_FLAG, data), timeS };
  if (id > (extended ? LAST_EXTENDED_ID : LAST_STANDARD_ID)) return rubbish('its identifier is too large');
  const interfaceName = line.slice(close + 2, nameEnd);
  return { kind: 'frame', frame: { timeS, id, extended, remote, data }, interfaceName };
}

/** Seconds from the usual ten and six digits without making strings, else by the number parser; NaN if neither. */
function timeOf(line: string, close: number): number {
  if (close !== 18 || line.charCodeAt(11) !== 46) {
    const text = line.slice(1, close);
    return TIME.test(text) ? Number(text) : Number.NaN;
  }
  let microseconds = 0;
  for (let at = 1; at < close; at += 1) {
    if (at === 11) continue;
    const digit = line.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9) return Number.NaN;
    microseconds = microseconds * 10 + digit;
  }
  return microseconds / 1e6;
}

/** The line, without line break, that `candump -L` writes for this frame. */
export function formatCandumpLine(frame: CanFrame, interfaceName: string): string {
  const [seconds = '0', fraction = '000000'] = frame.timeS.toFixed(6).split('.');
  const id = toHex(frame.id, frame.extended ? EXTENDED_DIGITS : STANDARD_DIGITS);
  const data = frame.remote ? 'R' : bytesToHex(frame.data);
  return `(${seconds.padStart(10, '0')}.${fraction}) ${interfaceName} ${id}#${data}`;
}
