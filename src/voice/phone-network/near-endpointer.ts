import { concatenate } from '../concatenate.ts';
import type { SpeechEvent } from '../endpointing.ts';
import { speechRateHz } from '../resample.ts';
import { type Moment, momentMs } from './network.ts';

export interface NearSettings {
  /** Probability of near speech from which on, and below which no longer, somebody speaks. */
  readonly beginsAt: number;
  readonly ceasesAt: number;
  /** Moments in a row that begin an utterance. */
  readonly momentsToBegin: number;
  /** Moments in a row after which the speaker may be through, and is. */
  readonly momentsToPause: number;
  readonly momentsToEnd: number;
  /** Sound kept from before it was noticed that somebody speaks: the network knows it 0.1 s late. */
  readonly preRollMs: number;
  /** An utterance longer than this is cut off: nobody answers at such length. */
  readonly longestMs: number;
}

export const defaultNear: NearSettings = {
  beginsAt: 0.5,
  ceasesAt: 0.35,
  momentsToBegin: 2,
  momentsToPause: 4,
  momentsToEnd: 6,
  preRollMs: 200,
  longestMs: 8_000,
};

/**
 * Decides from what the network hears where somebody near begins to speak and where they have ended: bursts of a wrench,
 * a radio and talk further away are louder than any floor, and nobody's answer.
 */
export class NearEndpointer {
  private readonly settings: NearSettings;
  private preRoll: Float32Array[] = [];
  private run = 0;
  private spokenMs = 0;
  private inSpeech = false;

  constructor(settings: NearSettings = defaultNear) {
    this.settings = settings;
  }

  get speaking(): boolean {
    return this.inSpeech;
  }

  /** The next piece of the stream to listen to, and the moments that end with it. */
  next(samples: Float32Array, moments: readonly Moment[]): readonly SpeechEvent[] {
    const events: SpeechEvent[] = this.inSpeech ? [{ kind: 'more', samples }] : [];
    this.keep(samples);
    for (const { near } of moments) events.push(...(this.inSpeech ? this.during(near) : this.before(near)));
    return events;
  }

  /** Kept up during speech too: what is cut off for its length goes on as a new utterance. */
  private keep(samples: Float32Array): void {
    this.preRoll.push(samples);
    const longest = (this.settings.preRollMs / 1000) * speechRateHz;
    let kept = this.preRoll.reduce((sum, piece) => sum + piece.length, 0);
    while (kept - (this.preRoll[0]?.length ?? 0) >= longest) kept -= this.preRoll.shift()?.length ?? 0;
  }

  private before(near: number): readonly SpeechEvent[] {
    this.run = near >= this.settings.beginsAt ? this.run + 1 : 0;
    if (this.run < this.settings.momentsToBegin) return [];
    this.inSpeech = true;
    this.run = 0;
    this.spokenMs = 0;
    return [{ kind: 'begin', samples: concatenate(this.preRoll) }];
  }

  private during(near: number): readonly SpeechEvent[] {
    const { ceasesAt, momentsToPause, momentsToEnd, longestMs } = this.settings;
    this.spokenMs += momentMs;
    this.run = near < ceasesAt ? this.run + 1 : 0;
    const events: SpeechEvent[] = this.run === momentsToPause ? [{ kind: 'pause' }] : [];
    if (this.run >= momentsToEnd) events.push(this.end('silence'));
    else if (this.spokenMs >= longestMs) events.push(this.end('tooLong'));
    return events;
  }

  private end(cause: 'silence' | 'tooLong'): SpeechEvent {
    this.inSpeech = false;
    this.run = 0;
    return { kind: 'end', cause };
  }
}
