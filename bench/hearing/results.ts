import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Level } from './accuracy.ts';
import type { CallResult } from './calls.ts';
import type { Taken } from './count.ts';
import type { Latency, Spent } from './latency.ts';
import type { Peers } from './peers/measure.ts';
import type { PeopleReplies } from './people/replies.ts';
import type { PeopleStops } from './people/stops.ts';
import type { PeopleTalk } from './people/talk.ts';
import type { ReadBackResult } from './read-back.ts';
import type { StopResult } from './stops.ts';
import type { FalseAccepts } from './talk-hours.ts';

export interface AccuracyRow {
  readonly level: Level;
  readonly taken: Taken;
  /** The same by kind of noise. */
  readonly byNoise: Readonly<Record<string, Taken>>;
}

/** One part of the measurement with the size at which it was run; parts can be run one by one. */
export interface Results {
  readonly accuracy?: {
    readonly size: string;
    readonly voices: readonly string[];
    readonly repliesPerVoice: number;
    readonly rows: readonly AccuracyRow[];
    readonly replyLatency: Latency;
    readonly spent: Spent;
    readonly wrong: readonly string[];
  };
  readonly readBack?: {
    readonly rows: readonly (ReadBackResult & { readonly level: Level })[];
  };
  readonly microphones?: {
    readonly size: string;
    readonly rows: readonly { readonly microphone: string; readonly level: Level; readonly taken: Taken }[];
  };
  readonly stops?: {
    readonly size: string;
    readonly rows: readonly (Omit<StopResult, 'latenciesMs'> & {
      readonly level: Level;
      readonly latency: Latency;
    })[];
  };
  readonly calls?: {
    readonly size: string;
    readonly rows: readonly (Omit<CallResult, 'latenciesMs'> & {
      readonly of: string;
      readonly level: Level;
      readonly latency: Latency;
    })[];
  };
  readonly talk?: {
    readonly size: string;
    readonly rows: readonly (FalseAccepts & { readonly of: string })[];
  };
  readonly humans?: {
    readonly size: string;
    readonly rows: readonly { readonly of: string; readonly taken: Taken }[];
  };
  readonly peopleDigits?: PeopleReplies & { readonly size: string };
  readonly peopleNumbers?: PeopleReplies & { readonly size: string };
  readonly peopleWords?: PeopleReplies & { readonly size: string };
  readonly peopleOtherWords?: PeopleReplies & { readonly size: string };
  readonly peopleStops?: { readonly size: string; readonly rows: readonly PeopleStops[] };
  readonly peopleTalk?: { readonly size: string; readonly rows: readonly PeopleTalk[] };
  readonly peers?: Peers & { readonly size: string };
}

/** Stored parts, and what each was measured with: parts are measured anew one by one, and the ear changes. */
export interface StoredResults extends Results {
  /** By part, the ear that listened (see `earNow`); a part that is not here was heard by an ear before. */
  readonly ears?: Readonly<Partial<Record<keyof Results, string>>>;
}

/** The weights, and where the bounds stand. */
const earFiles = [
  'phone-network/model/english.bin',
  'decoders/network/bounds.ts',
  'decoders/network/decoder.ts',
  'decoders/network/features.ts',
  'ear/call-spotter.ts',
  'ear/near-speech.ts',
  'ear/patience.ts',
  'ear/stop-spotter.ts',
];

/** Tells one ear from another: the beginning of the SHA-256 of its weights and of the files with its bounds. */
export function earNow(): string {
  const hash = createHash('sha256');
  for (const file of earFiles) hash.update(readFileSync(new URL(`../../src/voice/${file}`, import.meta.url)));
  return hash.digest('hex').slice(0, 16);
}

const jsonPath = fileURLToPath(new URL('../../docs/hearing.json', import.meta.url));

export const storedResults = (): StoredResults =>
  existsSync(jsonPath) ? (JSON.parse(readFileSync(jsonPath, 'utf8')) as StoredResults) : {};

interface Row {
  readonly of?: string;
  readonly level?: Level;
  readonly system?: string;
}

const rowsOf = (part: unknown): readonly Row[] =>
  (part as { readonly rows?: readonly Row[] } | undefined)?.rows ?? [];
const nameOf = ({ of, level, system }: Row) => `${of} ${level} ${system}`;

/** The rows of a part, and those of before that it has no other for. */
function withRowsOf<Part>(earlier: unknown, part: Part): Part {
  const fresh = rowsOf(part);
  const names = new Set(fresh.map(nameOf));
  const kept = rowsOf(earlier).filter(row => !names.has(nameOf(row)));
  return kept.length === 0 ? part : { ...part, rows: [...kept, ...fresh] };
}

/**
 * Puts one part in the place of its earlier figures, and leaves the others. Rows that it has no other for stay too, if it
 * was the same ear that was measured.
 */
export function storePart(results: Results): StoredResults {
  const earlier = storedResults();
  const ear = earNow();
  const fresh = Object.entries(results).map(([name, part]) => {
    const key = name as keyof Results;
    return [key, earlier.ears?.[key] === ear ? withRowsOf(earlier[key], part) : part] as const;
  });
  const ears = Object.fromEntries(fresh.map(([name]) => [name, ear]));
  const all = { ...earlier, ...Object.fromEntries(fresh), ears: { ...earlier.ears, ...ears } };
  writeFileSync(jsonPath, `${JSON.stringify(all, undefined, 2)}\n`);
  return all;
}
