import { inWords, linesOfGoodStart } from '../audio-fixtures/good-start.ts';
import { english } from '../prompts/en/index.ts';

import { grammarOf } from '../src/session/grammar.ts';
import { createMatcher, type Meaning } from '../src/voice/meaning.ts';
import type { Grammar } from '../src/voice/ports.ts';
import { goodReply } from '../tests/helpers/session-rig.ts';

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
 * it takes, and the value that an engine in good order shows.
 */
export async function procedureReplies(): Promise<readonly AskedReply[]> {
  const found = new Map<string, AskedReply>();
  for (const profile of vehicles) {
    await linesOfGoodStart(profile, run => {
      const grammar = grammarOf(run.session.moment, english, 'us', 'voice');
      const { meaningOf } = createMatcher(grammar);
      const good = goodReply(run);
      const wordings = grammar.replies.flatMap(({ wordings: [first = ''] }) => [first]);
      for (const says of [...wordings, ...(good === null ? [] : [inWords(good, run.session.moment)])]) {
        const means = meaningOf(says);
        const question = JSON.stringify([grammar.replies, grammar.number, says]);
        if (means && means.kind !== 'stop' && !found.has(question))
          found.set(question, { grammar, says, means });
      }
    });
  }
  return [...found.values()];
}
