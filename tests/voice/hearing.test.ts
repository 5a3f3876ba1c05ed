import { describe, expect, it } from 'vitest';
import { synthesize } from '../../audio-fixtures/synthesize.ts';
import { measureHumans } from '../../bench/human.ts';
import { outcomeOf } from '../../bench/voice.ts';
import { stopSayings, stopsInTheMiddle } from '../../bench/voice-grammars.ts';
import { listenTo } from '../../bench/voice-measure.ts';
import { english } from '../../prompts/en/index.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { createEmbeddedRecognizer } from '../../src/voice/recognizers/embedded.ts';

const LONG = 10 * 60_000;

const readBack: Grammar = {
  key: 'readBack',
  stop: english.stopWordings,
  replies: [
    { id: 'yes', wordings: english.replies.yes },
    { id: 'no', wordings: english.replies.no },
  ],
};

describe('a stop wording', () => {
  it(
    'is heard from men and women, on its own and in the middle of other talk',
    async () => {
      const ear = await createEmbeddedRecognizer();
      ear.listen(readBack);
      const missed: string[] = [];
      const all = ['flite-slt', 'flite-rms', 'flite-awb'].flatMap(voice =>
        [...stopSayings, ...stopsInTheMiddle].map(text => ({ voice, text })),
      );
      for (const { voice, text } of all) {
        const heard = outcomeOf(await listenTo(ear, synthesize(voice, text)));
        if (heard?.kind !== 'stop') missed.push(`${voice} "${text}"`);
      }
      ear.close();
      // At most one in twenty; the bench lists them.
      expect(missed.length / all.length, missed.join(', ')).toBeLessThanOrEqual(0.05);
    },
    LONG,
  );
});

describe('recordings of people', () => {
  it(
    'are heard as far as is measured, and what is not understood is not taken for an answer',
    async () => {
      // Debian asterisk-core-sounds-en-g722 (one woman) and pocketsphinx-testdata (several people).
      const { numbers, digits, otherTalk } = await measureHumans(20);
      expect(digits).toMatchObject({ right: 1 });
      expect(numbers.right).toBeGreaterThanOrEqual(20);
      expect(numbers.falseStop).toBe(0);
      expect(numbers.wrong).toBeLessThanOrEqual(12);
      expect(otherTalk.wrong).toBeLessThanOrEqual(3);
    },
    LONG,
  );
});
