import type { Recorded } from '../../record/vocabulary/index.ts';
import type { SpokenStory, VoicesStory } from '../model.ts';

const stepOf = (state: string) => state.split('.').slice(0, 2).join('.');

/** What was said by whom, and in whose voice; null where no voice was learned. */
export function voicesOf(entries: readonly Recorded[]): VoicesStory | null {
  if (!entries.some(({ kind }) => kind === 'voiceLearned')) return null;
  const spoken: SpokenStory[] = [];
  let step = 'job.card';
  let text = '';
  for (const entry of entries) {
    if (entry.kind === 'heard') text = entry.data.text;
    if (entry.kind === 'otherVoice') {
      const last = spoken.at(-1);
      if (last) spoken[spoken.length - 1] = { ...last, refused: true };
    }
    if (entry.kind !== 'event') continue;
    const { data: event } = entry;
    if (event.via === 'voice' && (event.type === 'reply' || event.type === 'value'))
      spoken.push({
        timeMs: entry.timeMs,
        step,
        text,
        by: event.by,
        ...(event.voice ? { voice: event.voice.of } : {}),
        refused: false,
      });
    step = stepOf(event.state);
  }
  return { spoken };
}
