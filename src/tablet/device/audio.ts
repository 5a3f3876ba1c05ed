import { speechRateHz } from '../../voice/resample.ts';

/** A browser that lets a page sound at all has its audio running within this. */
const AWAKE_WITHIN_MS = 1000;
/** What browsers take for a touch differs: a finger counts when it is lifted, a mouse when it is pressed. */
const touches = ['pointerdown', 'pointerup', 'keydown'] as const;

/** Wakes audio now, at each touch or key, and whenever an interruption is over, until it is closed. */
export function wakeByTouch(context: BaseAudioContext & Pick<AudioContext, 'resume'>): void {
  const wake = () => {
    if (context.state === 'closed') for (const touch of touches) removeEventListener(touch, wake, true);
    // Before a touch this may never settle.
    else if (context.state !== 'running') context.resume().catch(() => {});
  };
  wake();
  for (const touch of touches) addEventListener(touch, wake, true);
  context.addEventListener('statechange', wake);
}

let own: AudioContext | undefined;

/**
 * The page's audio, at the rate that the recognizer listens at, so that the browser does the resampling. No page may
 * sound or hear before it was touched: until then, and after an interruption, it waits for a touch.
 */
export function openAudio(): AudioContext {
  if (!own) {
    own = new AudioContext({ sampleRate: speechRateHz, latencyHint: 'interactive' });
    wakeByTouch(own);
  }
  return own;
}

/**
 * Tells whether the browser keeps this audio from running: at each change, and when it has been so for a second.
 * @returns what ends that
 */
export function watchAsleep(context: BaseAudioContext, told: (isAsleep: boolean) => void): () => void {
  let late: ReturnType<typeof setTimeout> | undefined;
  const look = () => {
    clearTimeout(late);
    if (context.state === 'running') told(false);
    else late = setTimeout(() => told(true), AWAKE_WITHIN_MS);
  };
  look();
  context.addEventListener('statechange', look);
  return () => {
    clearTimeout(late);
    context.removeEventListener('statechange', look);
  };
}
