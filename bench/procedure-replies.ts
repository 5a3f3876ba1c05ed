import { inWords, linesOfGoodStart } from '../audio-fixtures/good-start.ts';
import { languages } from '../prompts/index.ts';
import { grammarOf } from '../src/session/grammar.ts';
import { createMatcher, type Meaning } from '../src/voice/meaning.ts';
import type { Grammar, HeardLanguage } from '../src/voice/ports.ts';
import { goodReply, type Rig } from '../tests/helpers/session-rig.ts';

/** The invented engines in vehicles; the others ask hardly anything else. */
const vehicles = ['demo-six', 'demo-four'];

/** One reply of the procedure in a state that takes it. */
export interface AskedReply {
  readonly grammar: Grammar;
  readonly says: string;
  readonly means: Meaning;
}

/**
 * Every different question of both demo engines in vehicles, with the asked-for wording of each reply and control word that
 * it takes, and in English the value that an engine in good order shows.
 */
export async function procedureReplies(language: HeardLanguage = 'en'): Promise<readonly AskedReply[]> {
  const found = new Map<string, AskedReply>();
  for (const profile of vehicles) {
    const take = (run: Rig) => {
      const grammar = grammarOf(run.session.moment, languages[language], 'us', 'voice');
      const { meaningOf } = createMatcher(grammar);
      const good = language === 'en' ? goodReply(run) : null;
      const wordings = grammar.replies.flatMap(({ wordings: [first = ''] }) => [first]);
      for (const says of [...wordings, ...(good === null ? [] : [inWords(good, run.session.moment)])]) {
        const means = meaningOf(says);
        const question = JSON.stringify([grammar.replies, grammar.number, says]);
        if (means && means.kind !== 'stop' && !found.has(question))
          found.set(question, { grammar, says, means });
      }
    };
    await linesOfGoodStart(profile, take, 'voice', language);
  }
  return [...found.values()];
}
