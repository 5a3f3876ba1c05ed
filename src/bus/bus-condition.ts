/** What the controller reports about the bus itself. */
export type BusCondition =
  /** Too many errors: the controller has taken itself off the bus and hears nothing. */
  | 'busOff'
  | 'restarted'
  | 'errorPassive'
  | 'errorWarning'
  /** Error counters are low again. */
  | 'errorActive'
  /** Nobody acknowledges: the tool is alone, or the bit rate is wrong. */
  | 'noAcknowledge'
  /** Frames came faster than they were taken. */
  | 'overrun'
  | 'otherError';

/** Bits of an error frame's identifier and of its second data byte, from Linux's can/error.h (from memory). */
const CLASS_CONTROLLER = 0x004;
const CLASS_NO_ACK = 0x020;
const CLASS_BUS_OFF = 0x040;
const CLASS_RESTARTED = 0x100;
const CONTROLLER_OVERFLOW = 0x01 | 0x02;
const CONTROLLER_WARNING = 0x04 | 0x08;
const CONTROLLER_PASSIVE = 0x10 | 0x20;
const CONTROLLER_ACTIVE = 0x40;

/** The worst that a SocketCAN error frame tells; `errorClass` is its identifier without the flag bits. */
export function conditionOf(errorClass: number, data: Uint8Array): BusCondition {
  if (errorClass & CLASS_BUS_OFF) return 'busOff';
  if (errorClass & CLASS_RESTARTED) return 'restarted';
  if (errorClass & CLASS_NO_ACK) return 'noAcknowledge';
  if (errorClass & CLASS_CONTROLLER) return controllerCondition(data[1] ?? 0);
  return 'otherError';
}

function controllerCondition(status: number): BusCondition {
  if (status & CONTROLLER_PASSIVE) return 'errorPassive';
  if (status & CONTROLLER_WARNING) return 'errorWarning';
  if (status & CONTROLLER_OVERFLOW) return 'overrun';
  if (status & CONTROLLER_ACTIVE) return 'errorActive';
  return 'otherError';
}
