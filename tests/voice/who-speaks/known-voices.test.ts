import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enoughUtterances, KnownVoices } from '../../../src/voice/who-speaks/known-voices.ts';
import { ofLengthOne } from '../../../src/voice/who-speaks/voice-network.ts';

const towards = (...numbers: number[]) => ofLengthOne(Float32Array.from(numbers));
const anna = towards(1, 0.1, 0);
const ben = towards(0.1, 1, 0);

function both(): KnownVoices<'anna' | 'ben'> {
  const known = new KnownVoices<'anna' | 'ben'>();
  for (let i = 0; i < enoughUtterances; i++) {
    known.learn('anna', anna);
    known.learn('ben', ben);
  }
  return known;
}

describe('voices that were heard', () => {
  it('tell nothing before there is enough of both', () => {
    const known = new KnownVoices<'anna' | 'ben'>();
    for (let i = 1; i < enoughUtterances; i++) {
      expect(known.learn('anna', anna)).toBe(i);
      known.learn('ben', ben);
    }
    known.learn('anna', anna);
    expect(known.tell('anna', 'ben', [anna])).toBeNull();
    known.learn('ben', ben);
    expect(known.tell('anna', 'ben', [anna])).toMatchObject({ of: 'anna' });
  });

  it('tell whose an utterance is, the surer the farther they are apart', () => {
    const known = both();
    const [sure, half] = [known.tell('anna', 'ben', [anna]), known.tell('anna', 'ben', [towards(1, 0.6, 0)])];
    expect(sure?.of).toBe('anna');
    expect(half?.of).toBe('anna');
    expect(sure?.certainty).toBeGreaterThan(half?.certainty ?? 1);
    expect(known.tell('anna', 'ben', [towards(1, 1, 0)])?.certainty).toBeCloseTo(0.5);
    expect(known.tell('ben', 'anna', [anna])).toEqual(sure);
  });

  it('tell more by several utterances than by one', () => {
    const unsure = towards(1, 0.8, 0);
    const [one, several] = [[unsure], [unsure, unsure]].map(voices => both().tell('anna', 'ben', voices));
    expect(several?.certainty).toBeGreaterThan(one?.certainty ?? 1);
  });

  it('are neither of both where it is near none of them', () => {
    expect(both().tell('anna', 'ben', [towards(-0.1, -0.1, 1)])?.of).toBe('neither');
    expect(both().tell('anna', 'ben', [towards(-1, -1, 1)])?.of).toBe('neither');
  });

  it('that are alike are not told apart', () => {
    fc.assert(
      fc.property(fc.float32Array({ minLength: 3, maxLength: 3, noNaN: true, min: -1, max: 1 }), numbers => {
        const known = new KnownVoices<'anna' | 'ben'>();
        for (let i = 0; i < enoughUtterances; i++) {
          known.learn('anna', anna);
          known.learn('ben', towards(1, 0.2, 0.1));
        }
        expect(known.tell('anna', 'ben', [ofLengthOne(numbers)])).toBeNull();
      }),
    );
  });

  it('follow their owner: what is long ago goes out of them', () => {
    const known = both();
    for (let i = 0; i < 40; i++) known.learn('anna', towards(0, 0, 1));
    expect(known.nearness('anna', [towards(0, 0, 1)])).toBeCloseTo(1);
  });
});
