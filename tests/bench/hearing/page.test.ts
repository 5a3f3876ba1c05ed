import { describe, expect, it } from 'vitest';
import { countOf, share } from '../../../bench/hearing/page/cells.ts';
import { missesIn } from '../../../bench/hearing/page/not-reached.ts';
import { shortTable } from '../../../bench/hearing/page/short.ts';

const spent = { realTimeFactor: 0, soundS: 0 };
const latency = { count: 0, medianMs: 0, p95Ms: 0 };
const taken = (right: number, unclear: number, wrong: number, falseStop: number) => ({
  right,
  unclear,
  wrong,
  falseStop,
});

describe('the page of the hearing', () => {
  it('has a line for each thing that was measured, and nothing where it was not', () => {
    const table = shortTable({
      peopleDigits: {
        size: 'full',
        sources: [],
        rows: [
          { of: 'digits', level: 'clean', speakers: 40, taken: taken(96, 3, 1, 0), confusions: [] },
          { of: 'digits', level: 10, speakers: 40, taken: taken(90, 6, 2, 2), confusions: [] },
        ],
        replyLatency: latency,
        spent,
      },
      accuracy: {
        size: 'full',
        voices: ['a', 'b'],
        repliesPerVoice: 10,
        rows: [
          { level: 'clean', taken: taken(20, 0, 0, 0), byNoise: { none: taken(20, 0, 0, 0) } },
          {
            level: 20,
            taken: taken(15, 5, 0, 0),
            byNoise: { fan: taken(9, 1, 0, 0), radio: taken(6, 4, 0, 0) },
          },
        ],
        replyLatency: latency,
        spent,
        wrong: [],
      },
    });
    expect(table.split('\n').slice(2)).toEqual([
      '| people: digits | 96 / 1 % |  | 90 / 4 % |  |  | 100 by 40 |',
      '| made voices: replies in idle, sweep, fan, wrench | 100 / 0 % | 90 / 0 % |  |  |  | 10 by 2 |',
      '| made voices: replies in babble, radio |  | 60 / 0 % |  |  |  | 10 by 2 |',
    ]);
  });

  it('says within what a share lies, and which figure is preliminary', () => {
    expect(share(81, 263)).toBe('30.8 (25.5-36.6) %');
    expect(countOf(300, 30)).toBe('300 by 30');
    expect(countOf(299, 30)).toMatch(/preliminary/);
    expect(countOf(300, 29)).toMatch(/preliminary/);
  });

  it('lists each figure that is wanted and was not reached, and no other', () => {
    const digits = (right: number, wrong: number) => ({
      peopleDigits: {
        size: 'full',
        sources: [],
        rows: [
          {
            of: 'digits',
            level: 10 as const,
            speakers: 40,
            taken: taken(right, 100 - right - wrong, wrong, 0),
            confusions: [],
          },
        ],
        replyLatency: { count: 100, medianMs: 200, p95Ms: 300 },
        spent,
      },
    });
    expect(missesIn(digits(94, 2))).toEqual([]);
    expect(missesIn(digits(93, 2))).toEqual([
      { what: 'people: digits, 10 dB', wanted: 'right >= 94 %, wrong <= 2 %', measured: '93.0 %, 2.0 %' },
    ]);
    expect(missesIn(digits(96, 3))).toHaveLength(1);
    const talk = { of: 'babble alone', hours: 0.5, gating: 0, confirmed: 1, controls: 0, stops: 2 };
    expect(
      missesIn({ talk: { size: 'full', rows: [{ ...talk, examples: [] }] } }).map(({ what }) => what),
    ).toEqual(['stops in babble alone', 'replies agreed to in babble alone']);
  });
});
