import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { formatCandumpLine } from '../../../src/bus/formats/candump.ts';
import type { CanFrame } from '../../../src/bus/frame.ts';

/**
 * What Debian's tshark reads in a candump log of these frames: one row a frame, one text a field, empty if absent.
 * @param reader `j1939` for identifiers; `isobus`, which shares the transport protocol, for long messages
 */
export function readByTshark(
  frames: readonly CanFrame[],
  reader: 'j1939' | 'isobus',
  fields: readonly string[],
): string[][] {
  const folder = mkdtempSync(join(tmpdir(), 'bus-log-'));
  try {
    const log = join(folder, 'bus.log');
    writeFileSync(log, frames.map(frame => `${formatCandumpLine(frame, 'can0')}\n`).join(''));
    const wanted = fields.flatMap(field => ['-e', field]);
    const output = execFileSync(
      'tshark',
      ['-n', '-r', log, '-d', `can.subdissector,${reader}`, '-T', 'fields', '-E', 'separator=/t', ...wanted],
      { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] },
    );
    return output
      .split('\n')
      .slice(0, -1)
      .map(line => line.split('\t'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
