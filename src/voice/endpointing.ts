import { concatenate } from './concatenate.ts';
import { FrameBuffer } from './frame-buffer.ts';
import { levelDbfs } from './levels.ts';
import { speechRateHz } from './resample.ts';

/** What a piece of the stream means for the utterance in progress. */
export type SpeechEvent =
  /** Speech begins; `samples` reach back a little before it, so that the first sound is whole. */
  | { readonly kind: 'begin'; readonly samples: Float32Array }
  | { readonly kind: 'more'; readonly samples: Float32Array }
  /** The speaker may be through: comes before every end by silence, and perhaps earlier. */
  | { readonly kind: 'pause' }
  /** The speaker has been silent long enough, or has talked too long. */
  | { readonly kind: 'end'; readonly cause: 'silence' | 'tooLong' };

export interface EndpointerSettings {
  /**
   * Silence after which the speaker may be through: longer than the closure of a "t" or a "p" (about 0.1 s, from
   * memory), and early enough that the reply is worked out when the silence is complete.
   */
  readonly pauseMs: number;
  /** Silence that ends an utterance; not shorter than a pause. */
  readonly trailingSilenceMs: number;
  /** Sound kept from before the first speech frame. */
  readonly preRollMs: number;
  /** An utterance longer than this is cut off: nobody answers at such length. */
  readonly longestMs: number;
  /** Rise above the noise floor that counts as speech, and below which it has ceased. */
  readonly beginDb: number;
  readonly ceaseDb: number;
}

export const defaultEndpointing: EndpointerSettings = {
  pauseMs: 120,
  trailingSilenceMs: 260,
  preRollMs: 300,
  longestMs: 8_000,
  beginDb: 12,
  ceaseDb: 8,
};

const frameMs = 20;
const frameLength = (speechRateHz * frameMs) / 1000;
/** Speech frames in a row that begin an utterance: a click or a dropped spanner is shorter. */
const framesToBegin = 3;
/** The floor is the quietest that the last seconds have been: no speaker goes so long without a gap. */
const floorWindowFrames = 3_000 / frameMs;
/** Quieter than this is never speech, however silent the line. */
const faintestSpeechDbfs = -62;
/** First-order high-pass: engine and mains rumble lie below the voice. */
const preEmphasis = 0.95;

/** Tracks the noise floor: the lowest smoothed level within the window. */
export class NoiseFloor {
  private readonly recent: number[] = [];
  private smooth: number | undefined;

  update(levelDb: number): void {
    this.smooth = this.smooth === undefined ? levelDb : 0.7 * this.smooth + 0.3 * levelDb;
    this.recent.push(this.smooth);
    if (this.recent.length > floorWindowFrames) this.recent.shift();
  }

  get levelDb(): number {
    return Math.min(...this.recent);
  }
}

/**
 * Decides, frame by frame and without ever looking ahead, where speech begins and ends in a stream
 * at 16 kHz. Silence costs a few additions a sample.
 */
export class Endpointer {
  private readonly settings: EndpointerSettings;
  private readonly floor = new NoiseFloor();
  private readonly frames = new FrameBuffer(frameLength);
  private lastSample = 0;
  /** Kept up during speech too: what is cut off for its length goes on as a new utterance. */
  private readonly preRoll: Float32Array[] = [];
  private speechRun = 0;
  private silentMs = 0;
  private spokenMs = 0;
  private inSpeech = false;

  constructor(settings: EndpointerSettings = defaultEndpointing) {
    this.settings = settings;
  }

  get speaking(): boolean {
    return this.inSpeech;
  }

  /** The next piece of the stream, of any length. */
  next(samples: Float32Array): readonly SpeechEvent[] {
    return this.frames.next(samples).flatMap(frame => this.frame(frame));
  }

  private frame(frame: Float32Array): readonly SpeechEvent[] {
    const levelDb = this.level(frame);
    this.floor.update(levelDb);
    this.preRoll.push(frame);
    if (this.preRoll.length > this.settings.preRollMs / frameMs + framesToBegin) this.preRoll.shift();
    return this.inSpeech ? this.during(frame, levelDb) : this.before(levelDb);
  }

  private level(frame: Float32Array): number {
    const emphasized = frame.map((sample, i) => sample - preEmphasis * (frame[i - 1] ?? this.lastSample));
    this.lastSample = frame[frame.length - 1] ?? 0;
    return levelDbfs(emphasized);
  }

  private isAbove(levelDb: number, riseDb: number): boolean {
    return levelDb > Math.max(this.floor.levelDb + riseDb, faintestSpeechDbfs);
  }

  private before(levelDb: number): readonly SpeechEvent[] {
    this.speechRun = this.isAbove(levelDb, this.settings.beginDb) ? this.speechRun + 1 : 0;
    if (this.speechRun < framesToBegin) return [];
    const samples = concatenate(this.preRoll);
    this.inSpeech = true;
    this.silentMs = 0;
    this.spokenMs = framesToBegin * frameMs;
    return [{ kind: 'begin', samples }];
  }

  private during(frame: Float32Array, levelDb: number): readonly SpeechEvent[] {
    this.spokenMs += frameMs;
    this.silentMs = this.isAbove(levelDb, this.settings.ceaseDb) ? 0 : this.silentMs + frameMs;
    const events: SpeechEvent[] = [{ kind: 'more', samples: frame }];
    const { pauseMs, trailingSilenceMs, longestMs } = this.settings;
    if (this.silentMs >= pauseMs && this.silentMs < pauseMs + frameMs) events.push({ kind: 'pause' });
    if (this.silentMs >= trailingSilenceMs) events.push(this.end('silence'));
    else if (this.spokenMs >= longestMs) events.push(this.end('tooLong'));
    return events;
  }

  private end(cause: 'silence' | 'tooLong'): SpeechEvent {
    this.inSpeech = false;
    this.speechRun = 0;
    return { kind: 'end', cause };
  }
}
