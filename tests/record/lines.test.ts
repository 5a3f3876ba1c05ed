import { writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAX_LINE_BYTES } from '../../src/record/entry.ts';
import { type RawLine, readLines } from '../../src/record/lines.ts';
import { tempFolder } from './support.ts';

async function linesOf(path: string, content: Buffer): Promise<RawLine[]> {
  writeFileSync(path, content);
  const file = await open(path);
  try {
    const lines: RawLine[] = [];
    for await (const batch of readLines(file, content.length)) lines.push(...batch);
    return lines;
  } finally {
    await file.close();
  }
}

describe('reading lines', () => {
  it('gives the lines between the newlines, wherever the chunks end', async () => {
    const path = join(tempFolder(), 'lines');
    const lineLength = fc.oneof(
      fc.nat({ max: 5 }),
      fc.nat({ max: 200_000 }),
      fc.constantFrom(262_143, 262_144, 524_288),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(lineLength, { maxLength: 8 }), lineLength, async (lengths, tailLength) => {
        const whole = lengths.map((length, i) => String(i).repeat(length));
        const tail = 'x'.repeat(tailLength);
        const lines = await linesOf(path, Buffer.from([...whole, tail].join('\n')));
        const expected = [...whole, ...(tail === '' ? [] : [tail])];
        expect(lines.map(line => line.bytes.toString())).toEqual(expected);
        expect(lines.map(line => line.terminated)).toEqual(expected.map((_, i) => i < whole.length));
        const ends = lines.filter(line => line.terminated).map(line => line.endByte);
        expect(ends).toEqual(
          lengths.map((_, i) => lengths.slice(0, i + 1).reduce((sum, length) => sum + length + 1, 0)),
        );
      }),
      { numRuns: 60 },
    );
  });

  it('leaves out what was appended meanwhile', async () => {
    const path = join(tempFolder(), 'growing');
    writeFileSync(path, Buffer.alloc(700_000, 'x'));
    const file = await open(path);
    const read: number[] = [];
    for await (const batch of readLines(file, 300_000)) read.push(...batch.map(({ bytes }) => bytes.length));
    await file.close();
    expect(read).toEqual([300_000]);
  });

  it('gives up on a line without an end, holding little more than the longest line allowed', async () => {
    const [line, ...others] = await linesOf(
      join(tempFolder(), 'giant'),
      Buffer.alloc(20 * MAX_LINE_BYTES, 'x'),
    );
    expect(others).toEqual([]);
    expect(line?.terminated).toBe(false);
    expect(line?.bytes.length).toBeGreaterThan(MAX_LINE_BYTES);
    expect(line?.bytes.length).toBeLessThan(1.5 * MAX_LINE_BYTES);
  });
});
