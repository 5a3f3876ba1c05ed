import type { SoundRecognizer } from '../../src/voice/ports.ts';
import type { Scene } from './scene.ts';

/** An ear, and the processor time that everything has taken up to now, what the ear was spared included. */
export interface TimedEar {
  readonly ear: SoundRecognizer;
  cpuMs(): number;
}

/** Whoever hears scenes: a new ear for each, or the same for all. */
export type Listener = (scene: Scene) => TimedEar;

/** Processor time of this process. */
export function processCpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** One ear, never restarted. */
export const sameEar =
  (ear: SoundRecognizer): Listener =>
  () => ({ ear, cpuMs: processCpuMs });
