/** Everything of the bus that runs in a browser: nothing reachable from here imports a Node module. */
export { decodeCanId, encodeCanId } from './can-id.ts';
export { createDecoder } from './decoder.ts';
export { type DiagnosticMessage, DM1_PGN, DM2_PGN, formatDiagnostics } from './diagnostics/dm1.ts';
export type { LampName, LampState, Lamps } from './diagnostics/lamps.ts';
export type { BusFault, FaultSpn } from './diagnostics/trouble-code.ts';
export { formatCandumpLine, parseCandumpLine } from './formats/candump.ts';
export { formatSlcan, parseSlcan } from './formats/slcan.ts';
export { type CanFrame, j1939Frame } from './frame.ts';
export { writeParameter } from './parameter-codec.ts';
export { PARAMETERS, type ParameterDefinition } from './parameters.ts';
export type { BusEnd, BusNotice, BusReading, BusSink, BusSource } from './ports.ts';
export { createReadingBook, type LatestReading } from './reading-book.ts';
export { framesFrom } from './sources/frames.ts';
export { reconnecting } from './sources/reconnecting.ts';
export { type SerialLine, type SlcanOptions, slcanAdapter } from './sources/slcan.ts';
export { openWebSerialLine, type WebSerialPort } from './sources/web-serial.ts';
export { createBusWatch } from './watch.ts';
