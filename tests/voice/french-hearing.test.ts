import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { synthesize } from '../../audio-fixtures/synthesize.ts';
import { outcomeOf } from '../../bench/voice.ts';
import { listenTo } from '../../bench/voice-measure.ts';
import { french } from '../../prompts/fr/index.ts';
import { createMatcher } from '../../src/voice/meaning.ts';
import type { Grammar, SoundRecognizer } from '../../src/voice/ports.ts';
import { createEmbeddedRecognizer } from '../../src/voice/recognizers/embedded.ts';
import { everythingIn } from '../helpers/everything.ts';
import { frenchNumber, singleFrenchNumbers } from '../helpers/french-recordings.ts';

/** Slow machines take their time over a model. */
const LONG = 5 * 60_000;

const everything = everythingIn(french, -30, 120);

const number: Grammar = {
  ...everything,
  key: 'number',
  replies: [],
  number: { id: 'n', language: 'fr', leads: [], units: [], min: 0, max: 100, step: 1 },
};

const sayings = ['arrête', 'arrêtez', 'arrêtez le moteur', 'halte', "arrêt d'urgence", 'stop', 'coupez tout'];

let ear: SoundRecognizer;
beforeAll(async () => {
  ear = await createEmbeddedRecognizer({ language: 'fr' });
}, LONG);
afterAll(() => ear.close());

describe('the embedded recognizer in French', () => {
  it('knows how to pronounce every word of the language', () => {
    expect(() => ear.listen(everything)).not.toThrow();
    expect(() =>
      ear.listen({ ...everything, replies: [{ id: 'x', wordings: [french.words.second] }] }),
    ).not.toThrow();
  });

  it(
    'hears a person say numbers, most of them rightly',
    async () => {
      // Debian asterisk-core-sounds-fr-g722, one woman: 0 to 19 and the tens, in one piece each.
      ear.listen(number);
      const { meaningOf } = createMatcher(number);
      const right: string[] = [];
      for (const { text, sound } of singleFrenchNumbers.map(name => frenchNumber(name))) {
        const heard = outcomeOf(await listenTo(ear, sound));
        const meant = meaningOf(text);
        if (heard?.kind === 'number' && meant?.kind === 'number' && heard.value === meant.value)
          right.push(text);
      }
      expect(right.length, right.join(', ')).toBeGreaterThanOrEqual(12);
    },
    LONG,
  );

  it(
    'hears at least half of the French stop words that a voice made by rule says',
    async () => {
      // Debian espeak-ng: the only French voice there is for tests, and far from a person's.
      ear.listen(number);
      const missed: string[] = [];
      for (const text of sayings) {
        const heard = outcomeOf(await listenTo(ear, synthesize('espeak-fr', text)));
        if (heard?.kind !== 'stop') missed.push(text);
      }
      expect(missed.length, missed.join(', ')).toBeLessThanOrEqual(sayings.length / 2);
    },
    LONG,
  );
});
