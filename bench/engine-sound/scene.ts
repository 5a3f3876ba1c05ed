import { uniform } from '../../audio-fixtures/random.ts';
import type { Firing } from '../../src/engineering/engine-sound/firing.ts';
import { soundRateHz } from '../../src/engineering/engine-sound/streams.ts';
import { EngineSound, type Turning } from '../../src/rehearsal/sound/engine-sound.ts';
import { chain, highPass } from '../hearing/filters.ts';

/** What an engine does through a scene, with its true speed at any moment. */
export interface Drive {
  readonly seconds: number;
  at(seconds: number): Turning;
  readonly firesAtS: number;
  readonly stallsAtS: number;
  readonly crankingFromS: number;
  /** When its first idle ends, and how it hunts in it. */
  readonly idleUntilS: number;
  readonly hunts: { readonly amplitudeRpm: number; readonly periodS: number } | null;
}

const ease = (from: number, to: number, share: number) =>
  from + (to - from) * Math.min(1, Math.max(0, share));

/**
 * A start: it stands, is cranked with the speed sagging, fires, idles (hunting in every other scene), is revved in steps
 * to 3,000 rpm and back, idles, and stalls.
 */
export function startScene(seed: number): Drive {
  const random = uniform(seed + 77);
  const between = (low: number, high: number) => low + (high - low) * random();
  const crankRpm = between(110, 250);
  const sag = between(0.02, 0.12);
  const idleRpm = between(600, 850);
  const hunts = seed % 2 === 1;
  const huntRpm = hunts ? idleRpm * between(0.03, 0.06) : 0;
  const huntS = between(2.5, 6);
  const [crankingFromS, crankS] = [3, 5];
  const firesAtS = crankingFromS + crankS;
  const holds = [1200, 1700, 2300, 3000].map(rpm => rpm * between(0.96, 1.03));
  const idleUntil = firesAtS + 14;
  /** Each: from when, to which speed, within how long. */
  const moves: { atS: number; rpm: number; withinS: number }[] = [];
  let at = idleUntil;
  for (const rpm of [...holds, idleRpm]) {
    const withinS = between(1.5, 3);
    moves.push({ atS: at, rpm, withinS });
    at += withinS + 4;
  }
  const stallsAtS = at + 4;
  const wander = [between(0.3, 0.6), between(0.9, 1.4)].map(hz => ({ hz, phase: between(0, 6) }));
  const running = (t: number): number => {
    let rpm = ease(crankRpm, idleRpm * 1.15, (t - firesAtS) / 0.9);
    if (t > firesAtS + 0.9) rpm = ease(idleRpm * 1.15, idleRpm, (t - firesAtS - 0.9) / 1.5);
    if (t > firesAtS + 3 && t < idleUntil - 0.5) rpm += huntRpm * Math.sin((2 * Math.PI * t) / huntS);
    let before = idleRpm;
    for (const move of moves) {
      if (t >= move.atS) rpm = ease(before, move.rpm, (t - move.atS) / move.withinS);
      before = move.rpm;
    }
    return (
      rpm *
      (1 + 0.004 * wander.reduce((sum, { hz, phase }) => sum + Math.sin(2 * Math.PI * hz * t + phase), 0))
    );
  };
  return {
    seconds: stallsAtS + 6,
    crankingFromS,
    firesAtS,
    stallsAtS,
    idleUntilS: idleUntil,
    hunts: hunts ? { amplitudeRpm: huntRpm, periodS: huntS } : null,
    at(t) {
      if (t < crankingFromS) return { rpm: 0, firing: false, starter: false };
      if (t < firesAtS) {
        const up = 1 - Math.exp(-(t - crankingFromS) / 0.12);
        return {
          rpm: up * crankRpm * (1 - (sag * (t - crankingFromS)) / crankS),
          firing: false,
          starter: true,
        };
      }
      if (t < stallsAtS) return { rpm: running(t), firing: true, starter: t < firesAtS + 0.4 };
      const rpm = running(stallsAtS) * Math.exp(-(t - stallsAtS) / 0.35);
      return { rpm: rpm < 25 ? 0 : rpm, firing: false, starter: false };
    },
  };
}

const BLOCK = 160;

/** The engine's sound through a drive, at 16 kHz. */
export function soundOf(drive: Drive, firing: Firing, seed: number, misfires = 0): Float32Array {
  const sound = new EngineSound(firing, seed, misfires);
  const all = new Float32Array(Math.round(drive.seconds * soundRateHz));
  for (let at = 0; at < all.length; at += BLOCK) {
    const count = Math.min(BLOCK, all.length - at);
    all.set(sound.next(drive.at((at + count) / soundRateHz), count), at);
  }
  return all;
}

const LEVEL_S = 1;

/**
 * Noise beside an engine, `snrDb` under it at every moment: measured over a second around, so that each speed has the
 * same; where the engine stands, as loud as beside its idle.
 */
export function beside(engine: Float32Array, noise: Float32Array, snrDb: number): Float32Array {
  const frame = (LEVEL_S * soundRateHz) / 4;
  const power = (sound: Float32Array, at: number) => {
    const [from, to] = [Math.max(0, at - 2 * frame), Math.min(sound.length, at + 2 * frame)];
    let sum = 0;
    for (let i = from; i < to; i++) sum += (sound[i] as number) ** 2;
    return sum / Math.max(1, to - from);
  };
  const frames = Math.ceil(engine.length / frame) + 1;
  const powers = Array.from({ length: frames }, (_, k) => power(engine, k * frame));
  const sorted = [...powers].filter(each => each > 1e-6).sort((a, b) => a - b);
  const usual = sorted[Math.floor(sorted.length / 3)] ?? 1e-4;
  let noisePower = 0;
  for (const sample of noise) noisePower += sample * sample;
  noisePower /= noise.length;
  const gains = powers.map(each => Math.sqrt(Math.max(each, usual * 0.25) / noisePower / 10 ** (snrDb / 10)));
  return engine.map((sample, i) => {
    const k = Math.floor(i / frame);
    const share = i / frame - k;
    const gain = (gains[k] ?? 0) * (1 - share) + (gains[k + 1] ?? 0) * share;
    return sample + gain * (noise[i % noise.length] ?? 0);
  });
}

/** A cheap headset: nothing below 100 Hz, 24 dB an octave. */
export function throughHeadset(sound: Float32Array): Float32Array {
  return sound.map(chain(highPass(100, 0.54), highPass(100, 1.31)));
}
