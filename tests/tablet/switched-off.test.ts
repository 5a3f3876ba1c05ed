import { afterEach, describe, expect, it } from 'vitest';
import { languageCodes, languages } from '../../prompts/index.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import { viewSchema } from '../../src/server/protocol/view.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { offOf, stopNotice } from '../../src/tablet/face/stop-state.ts';
import { speakIn, words } from '../../src/tablet/words/index.ts';
import { rig } from '../helpers/session-rig.ts';

afterEach(() => speakIn('en'));

async function viewOf(profile: string, language: LanguageCode = 'en') {
  const { session } = await rig(profile, 'metric', undefined, language);
  return new Viewer(session, 'keys').view();
}

describe('How the engine is switched off', () => {
  it.each([
    ['demo-four', undefined],
    ['demo-genset', 'Mode switch to off'],
    ['demo-boat', 'Key off at the helm'],
  ] as const)('%s: goes with what is shown of its session, where it is not by the key', async (name, off) => {
    const view = await viewOf(name);
    expect(view.switchedOff).toBe(off);
    expect(viewSchema.parse(view).switchedOff).toBe(off);
  });

  it.each(languageCodes)(
    'stands in the words of the page in %s, as the procedure calls it out',
    async code => {
      speakIn(code);
      const { keyOff } = languages[code].lines;
      expect(words.keyOff.toLowerCase()).toBe(keyOff);
      const set = await viewOf('demo-genset', code);
      for (const [view, off] of [
        [null, words.keyOff],
        [await viewOf('demo-four', code), words.keyOff],
        [set, 'Mode switch to off'],
      ] as const) {
        expect(offOf(view)).toBe(off);
        const told = [
          words.stopped,
          words.stopHint,
          words.stopShort,
          words.stopStates.unanswered,
          words.stopStates.shout,
          words.away.keyOff,
          words.away.shown,
          words.link.stopAnyway,
        ].map(sentence => sentence(offOf(view)));
        for (const sentence of told) expect(sentence).toContain(off);
        expect(stopNotice('unanswered', view)?.text).toContain(off);
      }
      // Nothing of a key is left for an engine that has none.
      expect(JSON.stringify(words.stopStates.unanswered(offOf(set)))).not.toContain(words.keyOff);
    },
  );
});
