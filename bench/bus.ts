import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encodeCanId } from '../src/bus/can-id.ts';
import { createDecoder } from '../src/bus/decoder.ts';
import { formatDiagnostics } from '../src/bus/diagnostics/dm1.ts';
import { parseLamps } from '../src/bus/diagnostics/lamps.ts';
import { formatCandumpLine, parseCandumpLine } from '../src/bus/formats/candump.ts';
import { type CanFrame, j1939Frame } from '../src/bus/frame.ts';
import { writeParameter } from '../src/bus/parameter-codec.ts';
import { PARAMETERS } from '../src/bus/parameters.ts';
import { readCandumpText } from '../src/bus/sources/candump-text.ts';
import { announce, packetsOf } from '../tests/bus/transport-frames.ts';

const DECODE_TARGET_PER_S = 500_000;
const RATIO_TARGET = 5;
const LOAD_TARGET_PERCENT = 5;
const BUS_BITS_PER_S = 250_000;
/** A 29-bit frame with 8 bytes and the gap behind it, without stuff bits: the most frames that fit. */
const BITS_PER_FRAME = 131;
const FRAMES_PER_S = Math.floor(BUS_BITS_PER_S / BITS_PER_FRAME);
const TSHARK_FIELDS = ['frame.time_epoch', 'j1939.pgn', 'j1939.priority', 'j1939.src_addr', 'j1939.data'];
/** The best of so many counts, ours and tshark's alike. */
const ROUNDS = 3;

/**
 * Measures how fast the bus is read, against Debian's tshark on the same log, and what a full bus costs. Prints one
 * line for each figure.
 * @param seconds how much of a full 250 kbit/s bus the log holds
 */
export async function benchBus(seconds = 60): Promise<void> {
  const frames = fullBus(seconds);
  const lines = frames.map(frame => formatCandumpLine(frame, 'can0'));
  console.log(`bus: log of ${frames.length} frames, ${seconds} s of a full bus at ${FRAMES_PER_S} frames/s`);

  const decode = perSecond(frames.length, () => {
    const { decoder } = counting();
    for (const frame of frames) decoder.push(frame);
  });
  const text = perSecond(frames.length, () => {
    const { decoder } = counting();
    for (const line of lines) {
      const parsed = parseCandumpLine(line);
      if (parsed.kind === 'frame') decoder.push(parsed.frame);
    }
  });
  const tshark = tsharkPerSecond(lines);
  const { decoder, count } = counting();
  for (const frame of frames) decoder.push(frame);
  const met = (yes: boolean): string => (yes ? 'met' : 'NOT met');
  console.log(
    `bus: frames to readings       ${round(decode)} frames/s, ${(count() / frames.length).toFixed(1)} readings a frame; target ${DECODE_TARGET_PER_S}: ${met(decode >= DECODE_TARGET_PER_S)}`,
  );
  console.log(
    `bus: log lines to readings    ${round(text)} frames/s; target ${DECODE_TARGET_PER_S}: ${met(text >= DECODE_TARGET_PER_S)}`,
  );
  console.log(
    `bus: log through tshark       ${round(tshark)} frames/s (no scaling); ours is ${(text / tshark).toFixed(1)} times that, target ${RATIO_TARGET}: ${met(text / tshark >= RATIO_TARGET)}`,
  );
  const load = await loadPercent(lines, seconds);
  console.log(
    `bus: full bus, line by line   ${load.toFixed(2)} % of a core, target ${LOAD_TARGET_PERCENT}: ${met(load < LOAD_TARGET_PERCENT)}`,
  );
}

/** Every message of the table in turn, each tenth place with a group that is not in it, and a DM1 of 20 faults each second. */
function fullBus(seconds: number): CanFrame[] {
  const pgns = [...new Set(PARAMETERS.map(({ pgn }) => pgn))];
  const known = pgns.map(pgn => {
    const data = new Uint8Array(8).fill(255);
    for (const definition of PARAMETERS)
      if (definition.pgn === pgn) writeParameter(definition, definition.unit === 'state' ? 1 : 50, data);
    return { id: encodeCanId({ priority: 6, pgn, source: 0, destination: 255 }), data };
  });
  const other = { id: 0x18f00900, data: new Uint8Array(8) };
  const faults = Array.from({ length: 20 }, (_, index) => ({ spn: 100 + index, fmi: 3, occurrences: 1 }));
  const sent = {
    source: 0,
    destination: 255,
    pgn: 65226,
    data: formatDiagnostics(parseLamps(4, 255), faults),
  };
  const dm1 = [announce(sent), ...packetsOf(sent)];
  return Array.from({ length: seconds * FRAMES_PER_S }, (_, index) => {
    const timeS = 1_700_000_000 + index / FRAMES_PER_S;
    const place = index % FRAMES_PER_S;
    const transported = place % 20 === 0 ? dm1[place / 20] : undefined;
    const { id, data } = transported ?? (index % 10 === 0 ? other : (known[index % known.length] ?? other));
    return j1939Frame(timeS, id, data);
  });
}

function counting() {
  let readings = 0;
  const count = (): void => {
    readings += 1;
  };
  const decoder = createDecoder({ onReading: count, onDiagnostics: count, onTransportFailure: count });
  return { decoder, count: () => readings };
}

function perSecond(frames: number, work: () => void): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return frames / (Math.min(...times) / 1000);
}

/**
 * candump's log of the same frames, read by tshark, which gives group, priority, sender and data. From a file: this
 * tshark cannot read a long log from a pipe, and a pipe would only slow it.
 */
function tsharkPerSecond(lines: readonly string[]): number {
  const folder = mkdtempSync(join(tmpdir(), 'bench-bus-'));
  try {
    const log = join(folder, 'bus.log');
    writeFileSync(log, lines.map(line => `${line}\n`).join(''));
    const options = ['-n', '-r', log, '-d', 'can.subdissector,j1939', '-T', 'fields'];
    const wanted = TSHARK_FIELDS.flatMap(field => ['-e', field]);
    return perSecond(lines.length, () => {
      execFileSync('tshark', [...options, ...wanted], { stdio: ['ignore', 'ignore', 'ignore'] });
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Processor time for the log, each line a chunk of its own as a live pipe gives it, as a share of the bus's time. */
async function loadPercent(lines: readonly string[], seconds: number): Promise<number> {
  const { decoder } = counting();
  async function* chunks(): AsyncGenerator<string> {
    for (const line of lines) yield `${line}\n`;
  }
  const before = process.cpuUsage();
  await readCandumpText(
    chunks(),
    frame => decoder.push(frame),
    () => {},
    () => false,
  );
  const { user, system } = process.cpuUsage(before);
  return ((user + system) / 1e6 / seconds) * 100;
}

const round = (value: number): number => Math.round(value);
