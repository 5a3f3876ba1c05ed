import type { HearingView } from '../../session/view.ts';
import type { EarLevel } from '../../voice/ports.ts';

/** As a session calls what is done without a voice. */
const KEYS = 'keys';
const LEVEL_EVERY_MS = 250;

/** What this device hears with, and how loudly: shown to whoever holds it, and told to the laptop, not too often. */
export class OwnHearing {
  readonly #nowMs: () => number;
  readonly #tell: (level: EarLevel) => void;
  #source = KEYS;
  /** Null until something is heard. */
  #level: EarLevel | null = null;
  #toldMs = Number.NEGATIVE_INFINITY;
  #toldNth = 0;

  constructor(nowMs: () => number, tell: (level: EarLevel) => void) {
    this.#nowMs = nowMs;
    this.#tell = tell;
  }

  /** @returns whether it hears at all */
  listensWith(source: string): boolean {
    this.#source = source;
    if (source === KEYS) this.#level = null;
    return source !== KEYS;
  }

  /** Each utterance is told, and the level between them a few times a second. */
  hears(level: EarLevel): void {
    this.#level = level;
    const isNews = level.utterance !== undefined && level.utterance.nth !== this.#toldNth;
    if (!isNews && this.#nowMs() - this.#toldMs < LEVEL_EVERY_MS) return;
    this.#toldMs = this.#nowMs();
    this.#toldNth = level.utterance?.nth ?? this.#toldNth;
    this.#tell(level);
  }

  /** Who holds this device has to know whether it hears, not whether another one does. */
  shownIn(hearing: HearingView): HearingView {
    return {
      ...hearing,
      source: this.#source,
      levelDbfs: this.#level?.levelDbfs ?? null,
      clipping: this.#level?.clipping ?? false,
      speech: this.#level?.speech ?? false,
    };
  }
}
