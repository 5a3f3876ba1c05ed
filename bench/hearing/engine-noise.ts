import { normal, uniform } from '../../audio-fixtures/random.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { chain, highPass, lowPass, resonator } from './filters.ts';

export interface EngineNoise {
  readonly cylinders: number;
  /** Crankshaft speed at a moment of the sound. */
  readonly rpmAt: (seconds: number) => number;
  readonly seconds: number;
  readonly seed: number;
}

/** Firings a second of a four-stroke engine: each cylinder fires on every second turn. */
export const firingHz = (rpm: number, cylinders: number): number => (rpm / 60) * (cylinders / 2);

const harmonics = 40;
/** Where an engine's block and pan ring; our own choice of three. */
const modesHz = [650, 1450, 2600];

/** The sound of one firing as harmonics with phases at random; highest of all: 40 times 115 Hz in the sweep. */
function oneFiring(random: () => number): Float32Array {
  const phases = Array.from({ length: harmonics }, () => 2 * Math.PI * random());
  return Float32Array.from({ length: 8_192 }, (_, i) =>
    phases.reduce(
      (sum, phase, k) => sum + Math.sin((2 * Math.PI * (k + 1) * i) / 8_192 + phase) / (k + 1) ** 0.8,
      0,
    ),
  );
}

/**
 * A diesel engine beside the microphone: harmonics of the firing frequency that fall off slowly, uneven from
 * cylinder to cylinder, a knock of the hot block at each firing, and the rush of air. A model of our own for
 * testing, not a recording of an engine.
 */
export function engineNoise({ cylinders, rpmAt, seconds, seed }: EngineNoise): Float32Array {
  const random = uniform(seed);
  const gauss = normal(seed + 1);
  const wave = oneFiring(random);
  const evenness = Array.from({ length: cylinders }, () => 0.75 + 0.5 * random());
  const rings = modesHz.map(hz => resonator(hz * (0.9 + 0.2 * random()), 4));
  const rush = chain(highPass(150), lowPass(1_500));
  let firings = 0;
  let knock = 0;
  let wander = 0;
  return Float32Array.from({ length: Math.round(seconds * speechRateHz) }, (_, i) => {
    // The governor hunts a little.
    wander = 0.9999 * wander + 0.000_05 * gauss();
    const hz = firingHz(rpmAt(i / speechRateHz) * (1 + wander), cylinders);
    const before = Math.floor(firings);
    firings += hz / speechRateHz;
    const cylinder = evenness[Math.floor(firings) % cylinders] ?? 1;
    const tones = wave[Math.floor((firings % 1) * wave.length)] ?? 0;
    if (Math.floor(firings) > before) knock = cylinder * (0.7 + 0.6 * random());
    knock *= Math.exp(-1 / (0.004 * speechRateHz));
    const blow = knock * gauss();
    const clatter = rings.reduce((sum, ring) => sum + ring(blow), 0);
    return 0.35 * cylinder * tones + 3 * clatter + 0.3 * rush(gauss());
  });
}

/** Idling a little unevenly. */
export const idleNoise = (seconds: number, seed: number): Float32Array =>
  engineNoise({ cylinders: seed % 2 === 0 ? 6 : 4, rpmAt: () => 650 + (seed % 5) * 50, seconds, seed });

/** From idle to high speed and back, once in twelve seconds. */
export const sweepNoise = (seconds: number, seed: number): Float32Array =>
  engineNoise({
    cylinders: seed % 2 === 0 ? 4 : 6,
    rpmAt: at => 1_500 - 800 * Math.cos((2 * Math.PI * at) / 12),
    seconds,
    seed,
  });
