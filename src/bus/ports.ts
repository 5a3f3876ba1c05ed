import type { BusCondition } from './bus-condition.ts';
import type { DiagnosticMessage } from './diagnostics/dm1.ts';
import type { CanFrame } from './frame.ts';
import type { RawKind } from './parameter-codec.ts';
import type { BusUnit } from './parameters.ts';
import type { TransportResult } from './transport/reassembly.ts';

interface ReadingOrigin {
  /** Suspect parameter number. */
  readonly spn: number;
  readonly name: string;
  /** Address of the sender. */
  readonly source: number;
  readonly timeS: number;
}

/** One parameter of one message. Only a `value` has a number that may be acted on. */
export type BusReading =
  | (ReadingOrigin & { readonly kind: 'value'; readonly value: number; readonly unit: BusUnit })
  | (ReadingOrigin & {
      readonly kind: Exclude<RawKind, 'value'>;
      /** The bits as sent, for the record; -1 when the message was too short to hold them. */
      readonly raw: number;
    });

/** Takes what the decoder reads. */
export interface BusSink {
  onReading(reading: BusReading): void;
  /** A whole DM1 or DM2: what it does not name is not active any more at this sender. */
  onDiagnostics(message: DiagnosticMessage): void;
  /** A long message broke off; what it would have said is unknown. */
  onTransportFailure(failure: TransportResult & { readonly kind: 'failed' }): void;
}

/** Something about the bus or the way to it, with one sentence for the face and the record. */
export type BusNotice = { readonly sentence: string } & (
  | { readonly kind: 'condition'; readonly condition: BusCondition }
  /** So much could not be read so far. */
  | { readonly kind: 'rubbish'; readonly count: number }
  | { readonly kind: 'silent' | 'heardAgain' }
  /** The source was lost and will be tried again. */
  | { readonly kind: 'lost' }
);

export type BusEnd =
  | { readonly kind: 'finished' }
  /** Unplugged, refused, broken off: one sentence, what and what to do. */
  | { readonly kind: 'lost'; readonly reason: string };

export type OnFrame = (frame: CanFrame) => void | Promise<void>;
export type OnNotice = (notice: BusNotice) => void;

/** A bus, an adapter, a log, a rehearsal. */
export interface BusSource {
  /** One line for the record and the face: "candump on can0". */
  readonly description: string;
  /**
   * Delivers frames until the source ends or `close` is called; never rejects for anything the source does.
   * Where `onFrame` gives a promise it is awaited, so that a log never runs ahead of its reader.
   */
  run(onFrame: OnFrame, onNotice: OnNotice): Promise<BusEnd>;
  close(): void;
}
