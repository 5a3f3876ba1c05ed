import canonicalize from 'canonicalize';
import { NO_PREVIOUS } from '../../../src/record/entry.ts';
import type { Entry } from '../../../src/record/index.ts';
import { sha256Hex } from '../../../src/record/seal.ts';

/** A way to alter a record once. */
export const alterations = [
  'byteChanged',
  'byteDropped',
  'bytePutIn',
  'memberChanged',
  'memberChangedAndHashed',
  'lineDropped',
  'lineDoubled',
  'linesSwapped',
  'linePutIn',
  'endCutOff',
  'memberChangedChainedAnew',
  'lineDroppedChainedAnew',
  'lineDoubledChainedAnew',
  'linesSwappedChainedAnew',
  'linePutInChainedAnew',
  'endCutOffChainedAnew',
] as const;
export type Alteration = (typeof alterations)[number];

const textOf = (lines: readonly string[]): string => lines.map(line => `${line}\n`).join('');

/**
 * The bytes of a record with one thing altered; never those it had.
 * @param lines of the record
 * @param foreign lines of another record, for what is put in
 */
export function altered(
  alteration: Alteration,
  lines: readonly string[],
  foreign: readonly string[],
  random: () => number,
): Buffer {
  const genuine = Buffer.from(textOf(lines));
  for (;;) {
    const other = alterOnce(alteration, lines, genuine, foreign, random);
    if (!other.equals(genuine)) return other;
  }
}

function alterOnce(
  alteration: Alteration,
  lines: readonly string[],
  genuine: Buffer,
  foreign: readonly string[],
  random: () => number,
): Buffer {
  const below = (count: number) => Math.floor(random() * count);
  const place = below(genuine.length);
  switch (alteration) {
    case 'byteChanged': {
      const bytes = Buffer.from(genuine);
      bytes[place] = (bytes[place] ?? 0) ^ (1 + below(255));
      return bytes;
    }
    case 'byteDropped':
      return Buffer.concat([genuine.subarray(0, place), genuine.subarray(place + 1)]);
    case 'bytePutIn':
      return Buffer.concat([genuine.subarray(0, place), Buffer.of(below(256)), genuine.subarray(place)]);
    case 'memberChanged':
      return Buffer.from(textOf(withMember(lines, random)));
    case 'memberChangedAndHashed': {
      const at = below(lines.length);
      const [line = ''] = withMember(lines.slice(at, at + 1), random);
      return Buffer.from(textOf(lines.with(at, sealed(JSON.parse(line)))));
    }
    case 'memberChangedChainedAnew':
      return Buffer.from(textOf(chainedAnew(withMember(lines, random), lines)));
    default: {
      const moved = withLines(alteration, lines, foreign, below);
      return Buffer.from(textOf(alteration.endsWith('ChainedAnew') ? chainedAnew(moved, lines) : moved));
    }
  }
}

function withLines(
  alteration: Alteration,
  lines: readonly string[],
  foreign: readonly string[],
  below: (count: number) => number,
): readonly string[] {
  const [one, two] = [below(lines.length), below(lines.length)];
  switch (alteration.replace('ChainedAnew', '')) {
    case 'lineDropped':
      // The last one is another matter: an end that is cut off.
      return lines.toSpliced(below(lines.length - 1), 1);
    case 'lineDoubled':
      return lines.toSpliced(one, 0, lines[one] ?? '');
    case 'linesSwapped':
      return lines.with(one, lines[two] ?? '').with(two, lines[one] ?? '');
    case 'linePutIn':
      return lines.toSpliced(1 + below(lines.length), 0, foreign[below(foreign.length)] ?? '');
    case 'endCutOff':
      return lines.slice(0, 1 + below(lines.length - 1));
    default:
      throw new Error(`no way to ${alteration}`);
  }
}

interface Leaf {
  readonly holder: Record<string, unknown> | unknown[];
  readonly key: string;
  readonly value: unknown;
}

const isHolder = (value: unknown): value is Record<string, unknown> | unknown[] =>
  typeof value === 'object' && value !== null;

const leavesIn = (holder: Record<string, unknown> | unknown[]): Leaf[] =>
  Object.entries(holder).flatMap(([key, value]) =>
    isHolder(value) && Object.keys(value).length > 0 ? leavesIn(value) : [{ holder, key, value }],
  );

/** One member of one line is another; nothing else is. */
function withMember(lines: readonly string[], random: () => number): readonly string[] {
  const at = Math.floor(random() * lines.length);
  const entry: Record<string, unknown> = JSON.parse(lines[at] ?? '');
  const leaves = leavesIn(entry);
  const leaf = leaves[Math.floor(random() * leaves.length)];
  if (!leaf) return lines;
  Reflect.set(leaf.holder, leaf.key, another(leaf.value, random));
  return lines.with(at, canonicalize(entry) ?? '');
}

function another(value: unknown, random: () => number): unknown {
  if (typeof value === 'boolean') return !value;
  if (typeof value === 'number') return random() < 0.5 ? value + 1 : Math.round(value * 0.9 * 1000) / 1000;
  if (typeof value === 'string')
    return random() < 0.3 ? '' : value.replace(/.$/u, last => (last === '0' ? '1' : '0'));
  return 0;
}

type Unsealed = Omit<Entry, 'hash'> & { readonly hash?: string };

/** The line of an entry with the hash that belongs to it, whatever it says. */
function sealed({ hash: _, ...body }: Unsealed): string {
  return canonicalize({ ...body, hash: sha256Hex(canonicalize(body) ?? '') }) ?? '';
}

/** As one who knows the format would do it: numbered anew, no clock running back, each with the hash of the one before. */
function chainedAnew(lines: readonly string[], genuine: readonly string[]): readonly string[] {
  // What stands before the first change is chained as it was.
  const firstOther = lines.findIndex((line, index) => line !== genuine[index]);
  const before = firstOther < 0 ? lines : lines.slice(0, firstOther);
  let last: Pick<Entry, 'at' | 'monoMs' | 'hash'> =
    before.length === 0 ? { at: '', monoMs: 0, hash: NO_PREVIOUS } : JSON.parse(before.at(-1) ?? '');
  const behind = lines.slice(before.length).map((line, index) => {
    const entry: Entry = JSON.parse(line);
    const monoMs = Math.max(entry.monoMs, last.monoMs);
    const [, at = entry.at] = [entry.at, last.at].toSorted();
    const own = sealed({ ...entry, at, monoMs, seq: before.length + index, prev: last.hash });
    last = JSON.parse(own);
    return own;
  });
  return [...before, ...behind];
}
