import { speechRateHz } from '../../voice/resample.ts';

/**
 * The page's audio, at the rate that the recognizer listens at, so that the browser does the resampling.
 * Called from a touch: only then may a page be heard.
 */
export function openAudio(): AudioContext {
  const context = new AudioContext({ sampleRate: speechRateHz, latencyHint: 'interactive' });
  void context.resume();
  return context;
}
