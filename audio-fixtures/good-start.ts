import { type Moment, offerOf } from '../machines/moment.ts';
import type { Person } from '../machines/vocabulary.ts';
import { english } from '../prompts/en/index.ts';
import type { LanguageCode } from '../prompts/types.ts';
import { grammarOf } from '../src/session/grammar.ts';
import { isHeard } from '../src/voice/languages/index.ts';
import { sayNumber } from '../src/voice/number-words/say.ts';
import { goodReply, type Rig, rig } from '../tests/helpers/session-rig.ts';

/** One thing said, by whom, and in which state. */
export interface Line {
  readonly when: string;
  readonly says: string;
  readonly by: Person;
}

/** Figures as people say them, with their unit: "five percent", "twelve point six volts". */
export function inWords(reply: string, moment: Moment): string {
  const [, decimals = ''] = /^-?\d+(?:\.(\d+))?$/.exec(reply) ?? [];
  if (!/^-?[\d.]+$/.test(reply)) return reply;
  const unit = grammarOf(moment, english, 'us', 'voice').number?.units[0] ?? '';
  return `${sayNumber(Number(reply), 'grouped', decimals.length)} ${unit}`.trim();
}

/** Everything that is said in a start where all goes well, with the state it is said in. */
export async function linesOfGoodStart(
  profile: string,
  beforeEach: (run: Rig) => void = () => {},
  via: 'voice' | 'keys' = 'voice',
  language: LanguageCode = 'en',
): Promise<Line[]> {
  const run = await rig(profile, 'us', undefined, language, via);
  const lines: Line[] = [];
  await run.session.begin();
  while (run.session.moment.status === 'active') {
    beforeEach(run);
    const reply = goodReply(run);
    if (reply === null) {
      await run.pass(Math.max(1, (run.clock.nextMs() ?? 0) - run.clock.nowMs()));
      continue;
    }
    // Nobody is heard while the tool speaks.
    if (run.session.speaking) {
      await run.pass(Math.max(1, (run.clock.nextMs() ?? 0) - run.clock.nowMs()));
      continue;
    }
    lines.push({
      when: run.key(),
      // Nobody says figures where nobody is heard: they are typed.
      says: isHeard(language) ? inWords(reply, run.session.moment) : reply,
      by: offerOf(run.session.moment).by,
    });
    await run.type(reply);
    if (!run.key().startsWith('firstFire.oilPressure')) await run.pass(1500);
  }
  await run.record.close();
  return lines;
}
