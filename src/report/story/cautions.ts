import { ofKind, type Recorded } from '../../record/vocabulary/index.ts';
import type { CautionStory } from '../model.ts';

/**
 * Every caution that was spoken, once, with the first time and how often. Sentences that begin with a signal
 * word are cautions, whoever says them and when.
 */
export function cautionsOf(entries: readonly Recorded[], signalWords: readonly string[]): CautionStory[] {
  const signalWord = new RegExp(`^(${signalWords.join('|')})\\b`, 'i');
  const stories = new Map<string, CautionStory>();
  for (const { timeMs, data } of entries.filter(ofKind('said'))) {
    const hazard = data.priority === 'hazard';
    if (!hazard && !signalWord.test(data.text)) continue;
    const before = stories.get(data.text);
    stories.set(
      data.text,
      before ? { ...before, times: before.times + 1 } : { timeMs, hazard, text: data.text, times: 1 },
    );
  }
  return [...stories.values()];
}
