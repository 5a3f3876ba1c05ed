import { createDecoder, type DecoderOptions } from '../../src/bus/decoder.ts';
import type { DiagnosticMessage } from '../../src/bus/diagnostics/dm1.ts';
import type { BusReading } from '../../src/bus/ports.ts';
import type { TransportResult } from '../../src/bus/transport/reassembly.ts';

/** A decoder, and all that it has told so far. */
export function listen(options?: DecoderOptions) {
  const readings: BusReading[] = [];
  const diagnostics: DiagnosticMessage[] = [];
  const failures: TransportResult[] = [];
  const decoder = createDecoder(
    {
      onReading: reading => readings.push(reading),
      onDiagnostics: message => diagnostics.push(message),
      onTransportFailure: failure => failures.push(failure),
    },
    options,
  );
  return { decoder, readings, diagnostics, failures };
}
