import { formatLamps, type Lamps, parseLamps } from './lamps.ts';
import { type BusFault, formatTroubleCode, type OldConversion, parseTroubleCode } from './trouble-code.ts';

/** Active faults. */
export const DM1_PGN = 65226;
/** Faults that were active before; sent on request. */
export const DM2_PGN = 65227;

export interface DiagnosticMessage {
  /** DM1 or DM2. */
  readonly active: boolean;
  readonly source: number;
  readonly timeS: number;
  readonly lamps: Lamps;
  readonly faults: readonly BusFault[];
  /** False when the message breaks off: there may be more faults than these, so none is never "no faults". */
  readonly complete: boolean;
}

const LAMP_BYTES = 2;
const CODE_BYTES = 4;
/** One code and two bytes to fill the frame. */
const SINGLE_FRAME_BYTES = 8;

/**
 * Reads DM1 or DM2, whole: from one frame, or put together by the transport protocol. Any bytes give an answer.
 * Source: SAE J1939-73 sections 5.7.1 and 5.7.2 (from memory).
 */
export function parseDiagnostics(
  pgn: typeof DM1_PGN | typeof DM2_PGN,
  source: number,
  timeS: number,
  data: Uint8Array,
  oldConversion?: OldConversion,
): DiagnosticMessage {
  const end = data.length === SINGLE_FRAME_BYTES ? LAMP_BYTES + CODE_BYTES : data.length;
  const faults: BusFault[] = [];
  for (let at = LAMP_BYTES; at + CODE_BYTES <= end; at += CODE_BYTES) {
    const fault = parseTroubleCode(data, at, oldConversion);
    if (fault) faults.push(fault);
  }
  const complete = end >= LAMP_BYTES + CODE_BYTES && (end - LAMP_BYTES) % CODE_BYTES === 0;
  return { active: pgn === DM1_PGN, source, timeS, lamps: parseLamps(data[0], data[1]), faults, complete };
}

/** The bytes of a diagnostic message: 8 for up to one fault, longer ones go by the transport protocol. */
export function formatDiagnostics(
  lamps: Lamps,
  faults: readonly { readonly spn: number; readonly fmi: number; readonly occurrences: number | undefined }[],
): Uint8Array {
  const codes = faults.flatMap(fault => formatTroubleCode(fault.spn, fault.fmi, fault.occurrences));
  const filled = faults.length === 0 ? [0, 0, 0, 0] : codes;
  const filler = faults.length <= 1 ? [0xff, 0xff] : [];
  return Uint8Array.from([...formatLamps(lamps), ...filled, ...filler]);
}
