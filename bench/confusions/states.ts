import type { Moment } from '../../machines/moment.ts';
import { languages } from '../../prompts/index.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { explore } from '../../tests/machines/helpers/explore.ts';
import { demoFour, demoSix } from '../../tests/machines/helpers/profiles.ts';

let reached: readonly Moment[] | undefined;

/** What a path may do: be stopped for any cause and not go on, or for one cause and go on once. */
const ways = [
  { returns: 0, causes: () => true },
  { returns: 1, causes: (id: string) => id === 'causeOther' },
];

/**
 * Every moment that a start can come to in which something may be said, and one stop; looked for once. What is listened for
 * after a stop does not hang on its cause: to go on after every cause gives no other grammar, and takes twice the time.
 */
function moments(): readonly Moment[] {
  reached ??= [demoSix, demoFour].flatMap(profile =>
    ways.flatMap(way => {
      let stopped = 0;
      const { places } = explore(profile, {
        ...way,
        stopAt: place => place.returns === 0 && stopped++ === 0,
        codes: [],
        everything: () => false,
      });
      return [...places.values()].map(({ moment }) => moment);
    }),
  );
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
