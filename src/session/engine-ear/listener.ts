import { EngineEar, type EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';
import type { Pcm } from '../../voice/ports.ts';
import { createResampler } from '../../voice/resample.ts';

/** Hears an engine in the sound that speech is heard in as well; needs no session, and may be in a thread of its own. */
export interface EngineListener {
  /** Any block length, any rate. @throws VoiceError `soundUnusable` */
  hear(block: Pcm): Promise<void>;
  close(): void;
}

export function createEngineListener(firing: Firing, onHeard: (heard: EngineHeard) => void): EngineListener {
  const ear = new EngineEar(firing);
  const resampler = createResampler();
  return {
    async hear(block) {
      ear.push(await resampler.next(block), onHeard);
    },
    close: () => resampler.close(),
  };
}
