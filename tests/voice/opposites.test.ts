import { afterAll, beforeAll, expect, it } from 'vitest';
import { synthesize } from '../../audio-fixtures/synthesize.ts';
import { listenTo } from '../../bench/voice-measure.ts';
import { english } from '../../prompts/en/index.ts';
import type { SoundRecognizer } from '../../src/voice/ports.ts';
import { createEmbeddedRecognizer } from '../../src/voice/recognizers/embedded.ts';

let ear: SoundRecognizer;
beforeAll(async () => {
  ear = await createEmbeddedRecognizer();
});
afterAll(() => ear.close());

it.each([
  ['yes', 'no', 'that is right'],
  ['lit', 'dark', 'it is out'],
  ['oilPressureShows', 'nothingYet', 'oil pressure'],
  ['pointGood', 'somethingWrong', 'all good'],
] as const)(
  'a wording too near to its opposite never counts as %s, beside %s: "%s"',
  async (yes, no, said) => {
    const replies = [yes, no].map(id => ({ id, wordings: english.replies[id] }));
    ear.listen({ key: said, stop: english.stopWordings, replies });
    for (const voice of ['flite-awb', 'festival-slt-hts']) {
      const { reports } = await listenTo(ear, synthesize(voice, said));
      expect(reports.some(({ heard }) => heard.kind === 'reply' && heard.id === yes)).toBe(false);
    }
  },
);
