/** One classic CAN frame as it was on the wire. */
export interface CanFrame {
  /** When it was received, seconds; since 1970 in logs, any fixed origin otherwise. */
  readonly timeS: number;
  /** 29 bits when `extended`, else 11. */
  readonly id: number;
  readonly extended: boolean;
  /** A remote request: it asks for data and carries none. */
  readonly remote: boolean;
  /** 0 to 8 bytes. */
  readonly data: Uint8Array;
}

export const MAX_DATA_BYTES = 8;

/** A data frame with a 29-bit identifier, as every J1939 message is. */
export const j1939Frame = (timeS: number, id: number, data: ArrayLike<number>): CanFrame => ({
  timeS,
  id,
  extended: true,
  remote: false,
  data: Uint8Array.from(data),
});
