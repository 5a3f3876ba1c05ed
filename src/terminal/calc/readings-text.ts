import type { Reading } from '../../engineering/readings.ts';
import { parseQuantity, type Quantity, type UnitSystem } from './quantities.ts';
import { UsageError } from './usage-error.ts';

/**
 * Two numbers on each line, parted by a comma: `seconds,value` or whatever the two quantities are. Empty lines
 * and lines that begin with # are passed over, and so is one heading line. An error names the line.
 */
export function parsePairs(
  text: string,
  quantities: readonly [Quantity, Quantity],
  system: UnitSystem,
  source: string,
): (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  for (const [i, raw] of text.split(/\r?\n/).entries()) {
    const line = raw.replace(/^\uFEFF/, '').trim();
    if (line === '' || line.startsWith('#')) continue;
    const where = `${source}, line ${i + 1}`;
    const cells = line.split(/[,;\t]/);
    const [first, second] = cells;
    if (first === undefined || second === undefined || cells.length !== 2) {
      throw new UsageError(`${where} has to be two numbers with a comma between them, not "${line}".`);
    }
    const heading = pairs.length === 0 && !/\d/.test(line);
    if (heading) continue;
    pairs.push([
      parseQuantity(first, quantities[0], system, `${where}, first number,`),
      parseQuantity(second, quantities[1], system, `${where}, second number,`),
    ]);
  }
  if (pairs.length === 0)
    throw new UsageError(`${source} holds no lines of two numbers with a comma between them.`);
  return pairs;
}

export const toReadings = (pairs: readonly (readonly [number, number])[]): Reading[] =>
  pairs.map(([timeS, value]) => ({ timeS, value }));

/** A table on one line: "700:80,1500:180". */
export function parseTable(
  text: string,
  quantities: readonly [Quantity, Quantity],
  system: UnitSystem,
  where: string,
): (readonly [number, number])[] {
  return text.split(',').map(cell => {
    const parts = cell.split(':');
    const [first, second] = parts;
    if (first === undefined || second === undefined || parts.length !== 2) {
      throw new UsageError(`${where} has to be pairs such as 700:80,1500:180, not "${cell}".`);
    }
    return [
      parseQuantity(first, quantities[0], system, where),
      parseQuantity(second, quantities[1], system, where),
    ] as const;
  });
}
