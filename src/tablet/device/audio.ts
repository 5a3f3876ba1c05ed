import { speechRateHz } from '../../voice/resample.ts';

/**
 * The page's audio, at the rate that the recognizer listens at, so that the browser does the resampling.
 * Called from a touch, or heard from the first touch on: no page may sound before.
 */
export function openAudio(): AudioContext {
  const context = new AudioContext({ sampleRate: speechRateHz, latencyHint: 'interactive' });
  void context.resume();
  addEventListener('pointerdown', () => void context.resume(), { once: true, capture: true });
  return context;
}
