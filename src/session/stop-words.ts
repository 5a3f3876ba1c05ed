import type { Language } from '../../prompts/types.ts';
import { createMatcher, type Matcher } from '../voice/meaning.ts';

const matchers = new WeakMap<Language, Matcher>();

/** Whether a text means stop, whatever else is said in it and whatever is asked: "Stop!", "please stop". */
export function meansStop(text: string, language: Language): boolean {
  let matcher = matchers.get(language);
  if (!matcher) {
    matcher = createMatcher({
      key: 'stop',
      language: language.code,
      stop: language.stopWordings,
      replies: [],
    });
    matchers.set(language, matcher);
  }
  return matcher.meaningOf(text)?.kind === 'stop';
}
