import { describe, expect, it } from 'vitest';
import {
  createStopSpotter,
  leastEarlyStopPerPhone,
  leastStopPerPhone,
} from '../../../src/voice/ear/stop-spotter.ts';
import { pronounceEnglish } from '../../../src/voice/languages/pronunciations/english.ts';
import { outputOf } from '../../../src/voice/phone-network/phones.ts';
import { certain, spelled } from '../phone-network/sounds.ts';

const nothing = certain(undefined);
const quiet = (count: number) => Array.from({ length: count }, () => nothing);
const saying = (...words: readonly string[]) => spelled(words.map(word => pronounceEnglish(word)[0] ?? word));

/** Of each phone something else is likelier by so much. */
const doubtful = (moments: readonly Float32Array[], by: number) =>
  moments.map(moment => {
    const doubted = moment.map(each => (each === 0 ? -by : each));
    doubted[outputOf('ZH') ?? 0] = 0;
    return doubted;
  });

/** What is heard, moment by moment, in the early outputs and in those that come later. */
function heardIn(early: readonly Float32Array[], phones: readonly Float32Array[]) {
  const spotter = createStopSpotter(pronounceEnglish);
  spotter.listen(['stop', 'kill it']);
  return Array.from({ length: Math.max(early.length, phones.length) }, (_, i) =>
    spotter.next({ early: early[i] ?? nothing, phones: phones[i] ?? nothing }),
  ).filter(text => text !== undefined);
}

describe('the stop spotter', () => {
  it.each([['stop'], ['kill', 'it']])('hears %s %s in either outputs, alone and in talk', (...words) => {
    const text = words.join(' ');
    for (const moments of [saying(...words), [...saying('good'), ...saying(...words), ...saying('here')]]) {
      expect(heardIn(moments, [])).toEqual([text]);
      expect(heardIn([], moments)).toEqual([text]);
    }
  });

  it('says it once of what both have heard, the later ones some moments after the early ones', () => {
    const stop = saying('stop');
    const both = heardIn([...stop, ...quiet(8)], [...quiet(4), ...stop, ...quiet(4)]);
    expect(both.length).toBeLessThanOrEqual(2);
    expect(new Set(both)).toEqual(new Set(['stop']));
  });

  it('hears a stop that is a little doubtful in either outputs, and none in what is less like it', () => {
    for (const [least, heard] of [
      [leastEarlyStopPerPhone, (stop: readonly Float32Array[]) => heardIn(stop, [])],
      [leastStopPerPhone, (stop: readonly Float32Array[]) => heardIn([], stop)],
    ] as const) {
      expect(heard(doubtful(saying('stop'), -least - 0.1))).toEqual(['stop']);
      expect(heard(doubtful(saying('stop'), 0.1 - least))).toEqual([]);
    }
    expect(heardIn(saying('good', 'here'), saying('good', 'here'))).toEqual([]);
  });
});
