import { describe, expect, it } from 'vitest';
import { readRecorded } from '../../src/record/vocabulary/index.ts';
import { earOf } from '../../src/report/story/ear.ts';

const entry = (data: Readonly<Record<string, string | number>>, seq: number) => ({
  v: 1 as const,
  seq,
  at: '2026-01-02T03:04:05.000Z',
  monoMs: seq * 1000,
  kind: 'engineHeard',
  data,
  prev: '',
  hash: '',
});

describe('what the ear heard of the engine, in the report', () => {
  it('is what happened, in order, with what was measured of it; speeds alone are readings', () => {
    const { entries } = readRecorded([
      entry({ happened: 'fired' }, 0),
      entry({ rpm: 750, certainty: 0.97 }, 1),
      entry({ happened: 'hunting', amplitudeRpm: 30, periodS: 4 }, 2),
      entry({ happened: 'changed', fromHz: 1600, toHz: 3500, db: 8, microphone: "T's tablet" }, 3),
    ]);
    expect(earOf(entries).map(({ timeMs: _, ...rest }) => rest)).toEqual([
      { happened: 'fired' },
      { happened: 'hunting', hunting: { amplitudeRpm: 30, periodS: 4 } },
      { happened: 'changed', change: { fromHz: 1600, toHz: 3500, db: 8 }, microphone: "T's tablet" },
    ]);
  });
});
