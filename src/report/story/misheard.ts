import type { Recorded } from '../../record/vocabulary/index.ts';
import type { MisheardStory } from '../model.ts';

const stepOf = (state: string) => state.split('.').slice(0, 2).join('.');

/** What did not count when it was said, and what counted after it in the same step. */
export function misheardOf(entries: readonly Recorded[]): MisheardStory[] {
  const stories: MisheardStory[] = [];
  let step = 'job.card';
  let lastText = '';
  /** Stories of this step that nothing has repaired yet. */
  let open: number[] = [];
  entries.forEach(entry => {
    if (entry.kind === 'heard') {
      lastText = entry.data.text;
      if (entry.data.kind === 'unclear') {
        open.push(stories.length);
        stories.push({
          timeMs: entry.timeMs,
          step,
          text: entry.data.text,
          reason: entry.data.reason ?? 'notExpected',
        });
      }
    } else if (entry.kind === 'event') {
      const { data: event } = entry;
      if (event.type === 'reply' && event.id === 'no') {
        open.push(stories.length);
        stories.push({ timeMs: entry.timeMs, step, text: lastText, reason: 'deniedAtReadBack' });
      } else if (event.type === 'reply' || event.type === 'value' || event.type === 'reason') {
        for (const index of open) {
          const story = stories[index];
          if (story) stories[index] = { ...story, repaired: { text: lastText, timeMs: entry.timeMs } };
        }
        open = [];
      }
      const now = stepOf(event.state);
      if (now !== step) open = [];
      step = now;
    } else if (entry.kind === 'contradiction') {
      open.push(stories.length);
      stories.push({ timeMs: entry.timeMs, step, text: lastText, reason: 'contradicted' });
    }
  });
  return stories;
}
