import { pgnOf, sourceOf } from './can-id.ts';
import { DM1_PGN, DM2_PGN, parseDiagnostics } from './diagnostics/dm1.ts';
import type { OldConversion } from './diagnostics/trouble-code.ts';
import type { CanFrame } from './frame.ts';
import { kindOf, readRaw } from './parameter-codec.ts';
import { PARAMETERS, type ParameterDefinition } from './parameters.ts';
import type { BusReading, BusSink } from './ports.ts';
import { createReassembly, isTransport, type TransportResult } from './transport/reassembly.ts';

export interface DecoderOptions {
  /** How a sender packs fault numbers when it still sets the old conversion bit; by its address. */
  readonly oldConversion?: (source: number) => OldConversion | undefined;
}

const byPgn = new Map<number, ParameterDefinition[]>();
for (const definition of PARAMETERS) {
  const group = byPgn.get(definition.pgn);
  if (group) group.push(definition);
  else byPgn.set(definition.pgn, [definition]);
}

/**
 * Reads frames into parameters and faults. Frames that are no J1939 data, and groups that are not in the table, are
 * passed over. Never throws, whatever the bytes.
 */
export function createDecoder(sink: BusSink, { oldConversion }: DecoderOptions = {}) {
  const transport = createReassembly();

  function message(pgn: number, source: number, timeS: number, data: Uint8Array): void {
    const group = byPgn.get(pgn);
    if (group) {
      for (const definition of group) sink.onReading(readingOf(definition, source, timeS, data));
    } else if (pgn === DM1_PGN || pgn === DM2_PGN) {
      sink.onDiagnostics(parseDiagnostics(pgn, source, timeS, data, oldConversion?.(source)));
    }
  }

  function transported(result: TransportResult | undefined): void {
    if (result?.kind === 'message') message(result.pgn, result.source, result.timeS, result.data);
    else if (result) sink.onTransportFailure(result);
  }

  return {
    /** Takes the next frame from the bus, in the order of time. */
    push(frame: CanFrame): void {
      if (!frame.extended || frame.remote) return;
      const pgn = pgnOf(frame.id);
      if (isTransport(pgn)) transported(transport.accept(frame));
      else message(pgn, sourceOf(frame.id), frame.timeS, frame.data);
    },
    /** Tells of long messages that have waited too long; to be called now and then, in the frames' time. */
    tick(nowS: number): void {
      for (const failure of transport.expire(nowS)) transported(failure);
    },
  };
}

function readingOf(
  definition: ParameterDefinition,
  source: number,
  timeS: number,
  data: Uint8Array,
): BusReading {
  const { spn, name, scale, offset, unit } = definition;
  const raw = readRaw(definition, data);
  const kind = kindOf(definition, raw);
  return kind === 'value'
    ? { kind, spn, name, source, timeS, value: raw * scale + offset, unit }
    : { kind, spn, name, source, timeS, raw };
}
