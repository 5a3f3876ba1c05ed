import { describe, expect, it } from 'vitest';
import { callSayings } from '../../../bench/hearing/calls.ts';
import { callsText } from '../../../bench/hearing/page/made.ts';
import type { Saying } from '../../../bench/hearing/scene.ts';

/** A state that takes these wordings for fire, and is asked for something else. */
const state = (key: string, wordings: readonly string[]): Saying => ({
  grammar: { key, stop: ['stop'], replies: [], calls: [{ id: 'smokeOrFire', wordings }] },
  says: 'correct',
  means: { kind: 'reply', id: 'yes' },
});

describe('calls for help that are measured', () => {
  it('are said to states that take them for one, each to as many, spread over the procedure', () => {
    const states = Array.from({ length: 9 }, (_, i) =>
      state(String(i), i % 3 === 0 ? ['smoke'] : ['smoke', 'fire']),
    );
    const sayings = callSayings(states);
    const keysOf = (wording: string) =>
      sayings.filter(({ says }) => says === wording).map(({ grammar }) => grammar.key);
    expect(keysOf('smoke')).toEqual(['0', '3', '6']);
    expect(keysOf('fire')).toEqual(['1', '4', '7']);
    expect(new Set(sayings.map(({ means }) => JSON.stringify(means)))).toEqual(
      new Set([JSON.stringify({ kind: 'stop', calls: 'smokeOrFire' })]),
    );
  });

  it('stand on the page with what was missed, the commonest first, and what was taken for one', () => {
    const row = { of: 'a', level: 10, said: 5, heard: 2, missed: ['smoke', 'fire', 'fire'], others: 4 };
    const latency = { count: 2, medianMs: 300, p95Ms: 600 };
    const text = callsText({
      calls: { size: 'full', rows: [{ ...row, falseCalls: ['"fired" as "fire"'], latency }] },
    });
    expect(text.join('\n')).toMatch(/\| a \| 10 dB \| 40\.0 \(.*\) % \| 5 \| 300 ms \| 600 ms \| 1 \| 4 \|/);
    expect(text.at(-1)).toBe('Not heard: 2 × "fire"; 1 × "smoke".');
    expect(callsText({})).toEqual([]);
  });
});
