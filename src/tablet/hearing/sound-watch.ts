/**
 * Sound comes many times a second; where none has come for so long nothing is heard. On two cores that had nine times as
 * much to do no gap was longer than 0.4 s, grammars and sentences included.
 */
export const SOUND_WITHIN_MS = 1000;
/** How often `look` is to be called. */
export const LOOK_EVERY_MS = 500;

/** `waits`: nothing has come yet, and may still. */
export type Sound = 'waits' | 'comes' | 'missing';

/** Whether sound comes from a microphone: only where it does is anything heard, whatever is open. */
export class SoundWatch {
  readonly #nowMs: () => number;
  readonly #onChange: (sound: Sound) => void;
  #sound: Sound = 'waits';
  #sinceMs: number;
  #lookedMs: number;
  #held = false;

  constructor(nowMs: () => number, onChange: (sound: Sound) => void) {
    this.#nowMs = nowMs;
    this.#onChange = onChange;
    this.#sinceMs = nowMs();
    this.#lookedMs = nowMs();
  }

  get sound(): Sound {
    return this.#sound;
  }

  /** Some of it was listened to. */
  came(): void {
    this.#sinceMs = this.#nowMs();
    if (!this.#held) this.#set('comes');
  }

  /** Nothing real comes for now, whatever does: the audio sleeps, or the system has muted the microphone. */
  holds(isHeld: boolean): void {
    if (isHeld === this.#held) return;
    this.#held = isHeld;
    this.#sinceMs = this.#nowMs();
    this.#set(isHeld ? 'missing' : 'waits');
  }

  /** It is looked for anew: what listens was away. */
  again(): void {
    this.#sinceMs = this.#nowMs();
    if (!this.#held) this.#set('waits');
  }

  /** Whether any has come of late. */
  look(): void {
    const nowMs = this.#nowMs();
    const isLate = nowMs - this.#lookedMs > 2 * LOOK_EVERY_MS;
    this.#lookedMs = nowMs;
    // The page itself stood still: what came meanwhile waits behind this.
    if (isLate) return;
    if (nowMs - this.#sinceMs > SOUND_WITHIN_MS) this.#set('missing');
  }

  #set(sound: Sound): void {
    if (sound === this.#sound) return;
    this.#sound = sound;
    this.#onChange(sound);
  }
}
