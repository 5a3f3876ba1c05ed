import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { quantile } from '../voice-measure.ts';
import type { Level } from './accuracy.ts';
import type { Taken } from './count.ts';
import type { PeopleReplies } from './people/replies.ts';
import type { PeopleStops } from './people/stops.ts';
import type { PeopleTalk } from './people/talk.ts';
import type { ReadBackResult } from './read-back.ts';
import type { StopResult } from './stops.ts';
import type { FalseAccepts } from './talk-hours.ts';

export interface AccuracyRow {
  readonly system: 'first-fire' | 'native PocketSphinx';
  readonly level: Level;
  readonly taken: Taken;
  /** The same by kind of noise. */
  readonly byNoise: Readonly<Record<string, Taken>>;
}

export interface Spent {
  readonly realTimeFactor: number;
  readonly soundS: number;
}

export interface Latency {
  readonly count: number;
  readonly medianMs: number;
  readonly p95Ms: number;
}

export const latencyOf = (ms: readonly number[]): Latency => ({
  count: ms.length,
  medianMs: Math.round(quantile(ms, 0.5)),
  p95Ms: Math.round(quantile(ms, 0.95)),
});

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
  readonly talk?: {
    readonly size: string;
    readonly rows: readonly (FalseAccepts & { readonly of: string })[];
  };
  readonly humans?: {
    readonly size: string;
    readonly rows: readonly { readonly of: string; readonly taken: Taken }[];
  };
  readonly peopleReplies?: PeopleReplies & { readonly size: string };
  readonly peopleStops?: { readonly size: string; readonly rows: readonly PeopleStops[] };
  readonly peopleTalk?: { readonly size: string; readonly rows: readonly PeopleTalk[] };
}

/** Stored parts, and what each was measured with: parts are measured anew one by one, and the network changes. */
export interface StoredResults extends Results {
  /** By part, the network that listened (see `networkNow`); a part that is not here was heard by another ear. */
  readonly networks?: Readonly<Partial<Record<keyof Results, string>>>;
}

const modelPath = fileURLToPath(new URL('../../src/voice/phone-network/model/english.bin', import.meta.url));

/** Tells one network from another: the beginning of the SHA-256 of its weights. */
export const networkNow = (): string =>
  createHash('sha256').update(readFileSync(modelPath)).digest('hex').slice(0, 16);

const jsonPath = fileURLToPath(new URL('../../docs/hearing.json', import.meta.url));

export const storedResults = (): StoredResults =>
  existsSync(jsonPath) ? (JSON.parse(readFileSync(jsonPath, 'utf8')) as StoredResults) : {};

/** Puts one part in the place of its earlier figures, and leaves the others. */
export function storePart(part: Results): StoredResults {
  const earlier = storedResults();
  const network = networkNow();
  const networks = Object.fromEntries(Object.keys(part).map(name => [name, network]));
  const all = { ...earlier, ...part, networks: { ...earlier.networks, ...networks } };
  writeFileSync(jsonPath, `${JSON.stringify(all, undefined, 2)}\n`);
  return all;
}
