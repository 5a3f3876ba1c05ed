import { VoiceError } from '../../src/voice/errors.ts';
import type { AudioSink, Pcm } from '../../src/voice/ports.ts';

export interface Playing {
  readonly label: string;
  end?: 'whole' | 'cut' | 'failed';
}

/** A loudspeaker whose sounds last until the test says so. */
export class ScriptedSink implements AudioSink {
  readonly description = 'scripted';
  readonly played: Playing[] = [];
  /** Two sounds at once: must stay empty. */
  readonly overlaps: string[] = [];
  closed = false;
  onPlay: (label: string) => void = () => undefined;
  #end: ((end: 'whole' | 'cut' | 'failed') => void) | undefined;

  play(_sound: Pcm, label: string): Promise<void> {
    if (this.#end) this.overlaps.push(label);
    this.onPlay(label);
    const playing: Playing = { label };
    this.played.push(playing);
    return new Promise((resolve, reject) => {
      this.#end = end => {
        this.#end = undefined;
        playing.end = end;
        if (end === 'failed') reject(new VoiceError('loudspeakerUnusable', 'The loudspeaker failed.'));
        else resolve();
      };
    });
  }

  /** The sound being played comes to its end. */
  finish(): void {
    this.#end?.('whole');
  }

  fail(): void {
    this.#end?.('failed');
  }

  cut(): void {
    this.#end?.('cut');
  }

  async close(): Promise<void> {
    this.closed = true;
  }

  /** What was played, as `label` or `label (cut)`. */
  get script(): string[] {
    return this.played.map(({ label, end }) => (end === 'whole' ? label : `${label} (${end ?? 'playing'})`));
  }
}
