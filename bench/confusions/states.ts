import type { Moment } from '../../machines/moment.ts';
import { languages } from '../../prompts/index.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { explore } from '../../tests/machines/helpers/explore.ts';
import { demoFour, demoSix } from '../../tests/machines/helpers/profiles.ts';

let reached: readonly Moment[] | undefined;

/** Every moment that a start can come to in which something may be said, and one stop, with every cause; looked for once. */
function moments(): readonly Moment[] {
  let stopped = 0;
  reached ??= [demoSix, demoFour].flatMap(profile => {
    const { places } = explore(profile, {
      returns: 1,
      stopAt: place => place.returns === 0 && stopped++ === 0,
      causes: () => true,
      codes: [],
      everything: () => false,
    });
    return [...places.values()].map(({ moment }) => moment);
  });
  return reached;
}

/** Every different grammar of the procedure, in the units that the language's speakers use. */
export function grammarsOf(language: LanguageCode): readonly Grammar[] {
  const words = languages[language];
  const found = new Map<string, Grammar>();
  for (const moment of moments()) {
    if (moment.status !== 'active') continue;
    const grammar = grammarOf(moment, words, words.usualUnits, 'voice');
    const same = JSON.stringify([grammar.replies, grammar.number]);
    if (!found.has(same)) found.set(same, grammar);
  }
  return [...found.values()];
}
