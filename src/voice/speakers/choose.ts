import { monotonicTimer, type Sleep } from '../audio/timer.ts';
import type { AudioSink, Pcm } from '../ports.ts';
import { isInstalled, type Surroundings, thisComputer } from '../programs.ts';
import { DeviceSink } from './device-sink.ts';
import { playersFor } from './players.ts';
import { SilentSink } from './silent-sink.ts';
import { openWavFolder } from './wav-folder-sink.ts';

export interface SinkWishes {
  /** Write WAV files here instead of playing them. */
  readonly speakTo?: string;
  /** Play nothing, on purpose. */
  readonly silent?: boolean;
  readonly surroundings?: Surroundings;
  /** How the silent and the folder wait out a sound; the loudspeaker keeps its own time. */
  readonly sleep?: Sleep;
}

export interface ChosenSink {
  readonly sink: AudioSink;
  /** Set when nothing will be heard although it was wished: one sentence, why and what to do. */
  readonly notHeard?: string;
}

/** Long enough that a player opens its device, too short and silent to be noticed. */
const PROBE: Pcm = { samples: new Float32Array(800), sampleRateHz: 16_000 };

/**
 * What speech goes to: the folder named, or the first player that plays a moment of silence without an error.
 * Without one the sentences are silent, and `notHeard` says why.
 * @throws VoiceError when a folder was named that cannot be written to.
 */
export async function chooseSink(wishes: SinkWishes = {}): Promise<ChosenSink> {
  const { surroundings = thisComputer, sleep = monotonicTimer.sleep } = wishes;
  if (wishes.speakTo !== undefined) return { sink: await openWavFolder(wishes.speakTo, sleep) };
  const silent = new SilentSink(sleep);
  if (wishes.silent) return { sink: silent };
  const possible = playersFor(surroundings.platform);
  const refusals: string[] = [];
  for (const player of possible.filter(({ program }) => isInstalled(program, surroundings))) {
    const sink = new DeviceSink(player, surroundings.env);
    const why = await sink.tryPlaying(PROBE);
    if (why === undefined) return { sink };
    refusals.push(why);
  }
  const names = possible.map(({ program }) => program).join(', ') || `one for ${surroundings.platform}`;
  const why = refusals.length === 0 ? `no player is installed, looked for ${names}` : refusals.join('; ');
  return {
    sink: silent,
    notHeard: `Nothing will be heard (${why}); connect a loudspeaker and install a player, or read the screen.`,
  };
}
