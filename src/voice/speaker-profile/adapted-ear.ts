import type { Heard, Pcm, SoundRecognizer } from '../ports.ts';
import { type Adaptation, shippedCertainty } from './profile.ts';

const louder = ({ samples, sampleRateHz }: Pcm, factor: number): Pcm => ({
  samples: samples.map(sample => Math.max(-1, Math.min(1, sample * factor))),
  sampleRateHz,
});

/**
 * A recognizer as one person needs it: louder, and asking again below their own certainty. It can only make replies
 * count less, never more; a stop is passed on as it is.
 */
export function adaptedTo(
  { gainDb, leastCertainty }: Pick<Adaptation, 'gainDb' | 'leastCertainty'>,
  ear: SoundRecognizer,
): SoundRecognizer {
  const factor = 10 ** (gainDb / 20);
  const asksForMore = leastCertainty > shippedCertainty;
  const held = (heard: Heard): Heard =>
    asksForMore &&
    (heard.kind === 'reply' || heard.kind === 'number') &&
    !(heard.confidence >= leastCertainty)
      ? { kind: 'unclear', text: heard.text, reason: 'lowConfidence' }
      : heard;
  return {
    listen: grammar => ear.listen(grammar),
    onlyStop: active => ear.onlyStop(active),
    onHeard: handler => ear.onHeard(heard => handler(held(heard))),
    onLevel: handler => ear.onLevel(handler),
    onVoice: handler => ear.onVoice?.(handler),
    hear: block => ear.hear(gainDb === 0 ? block : louder(block, factor)),
    close: () => ear.close(),
  };
}
