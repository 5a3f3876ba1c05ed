import { Biquads, highPass, lowPass } from '../../engineering/engine-sound/filters.ts';
import { cycleDeg, type Firing, firingAnglesDeg } from '../../engineering/engine-sound/firing.ts';
import { soundRateHz } from '../../engineering/engine-sound/streams.ts';
import { type Random, seeded } from '../random.ts';

/** What an engine does that can be heard: it fires by itself, something else turns it (starter or flywheel), or it stands. */
export interface Turning {
  readonly rpm: number;
  readonly firing: boolean;
  readonly starter: boolean;
}

/** How one engine differs from the next: drawn from its seed. All of it our own choice; no engine was measured for it. */
interface Character {
  /** Strength of each cylinder's blow, about 1. */
  readonly cylinders: readonly number[];
  /** Spread of a cylinder's blows from cycle to cycle, a share. */
  readonly cycleSpread: number;
  readonly jitterDeg: number;
  readonly misfires: number;
  readonly ringTeeth: number;
  readonly gearOrder: number;
  readonly fanOrder: number;
  readonly clatter: number;
  readonly exhaust: number;
  readonly rush: number;
}

function characterOf(random: Random, cylinders: number, misfires: number): Character {
  return {
    cylinders: Array.from({ length: cylinders }, () => 1 + 0.15 * random.normal()),
    cycleSpread: random.between(0.08, 0.22),
    jitterDeg: random.between(0.5, 1.5),
    misfires,
    ringTeeth: Math.round(random.between(105, 155)),
    gearOrder: Math.round(random.between(23, 49)),
    fanOrder: random.between(7, 13),
    clatter: random.between(0.7, 1.6),
    exhaust: random.between(0.4, 1.4),
    rush: random.between(0.1, 0.3),
  };
}

/** Second-order resonance as a section for `Biquads`; gain 1 at its frequency. */
function resonance(hz: number, q: number) {
  const angle = (2 * Math.PI * hz) / soundRateHz;
  const alpha = Math.sin(angle) / (2 * q);
  const a0 = 1 + alpha;
  return [alpha / a0, 0, -alpha / a0, (-2 * Math.cos(angle)) / a0, (1 - alpha) / a0] as const;
}

/** How much of a turn's speed is lost in compressions and won back behind them: by hand of starter, and when it fires. */
const RIPPLE_TURNED = 0.07;
const RIPPLE_FIRING = 0.015;
const BLOW_S = 0.0035;
const PUFF_S = 0.004;
const LEVEL = 0.05;

/**
 * The sound of an engine as it might reach a microphone beside it, made as it goes: blows of combustion that ring in
 * the block and puff out of the exhaust, uneven from cylinder to cylinder and from cycle to cycle; gears, fan and rushing
 * air; compression and starter while something turns it. The same for the same seed.
 */
export class EngineSound {
  readonly #random: Random;
  readonly #character: Character;
  readonly #angles: readonly number[];
  readonly #cycleDeg: number;
  readonly #spacingDeg: number;
  readonly #modes: readonly Biquads[];
  readonly #pipe: Biquads;
  readonly #air = new Biquads([highPass(250, soundRateHz), lowPass(2_200, soundRateHz)]);
  readonly #chuff = new Biquads([highPass(150, soundRateHz), lowPass(1_100, soundRateHz)]);
  #deg = 0;
  #turns = 0;
  #next = 0;
  #nextAtDeg = 0;
  #blow = 0;
  #puff = 0;
  #rpm = 0;

  /** @param misfires share of blows that are missing, 0 to 0.5 */
  constructor(firing: Firing, seed: number, misfires = 0) {
    this.#random = seeded(seed, 'engine sound');
    this.#character = characterOf(this.#random, firing.cylinders, misfires);
    this.#angles = firingAnglesDeg(firing);
    this.#cycleDeg = cycleDeg(firing);
    this.#spacingDeg = this.#cycleDeg / firing.cylinders;
    const about = (hz: number) => hz * this.#random.between(0.8, 1.25);
    this.#modes = [550, 1_300, 2_400, 4_300].map(
      hz => new Biquads([resonance(about(hz), this.#random.between(3, 7))]),
    );
    this.#pipe = new Biquads([resonance(about(110), 1.2), lowPass(700, soundRateHz)]);
  }

  /** The next samples at 16 kHz: the speed goes over to `turning.rpm` evenly within them. */
  next(turning: Turning, count: number): Float32Array {
    const from = this.#rpm;
    this.#rpm = turning.rpm;
    return Float32Array.from({ length: count }, (_, i) =>
      this.#sample(turning, from + ((turning.rpm - from) * (i + 1)) / count),
    );
  }

  #sample({ firing, starter }: Turning, rpm: number): number {
    const random = this.#random;
    const { ringTeeth, gearOrder, fanOrder, clatter, exhaust, rush } = this.#character;
    // Compression: 1 at a firing angle, 0 between two of them.
    const compression =
      0.5 + 0.5 * Math.cos((2 * Math.PI * (this.#deg - this.#behindDeg())) / this.#spacingDeg);
    const ripple = (firing ? RIPPLE_FIRING : RIPPLE_TURNED) * (0.5 - compression);
    this.#turn(rpm * (1 + ripple), firing);
    const white = random.next() + random.next() - 1;
    this.#blow *= Math.exp(-1 / (BLOW_S * soundRateHz));
    this.#puff *= Math.exp(-1 / (PUFF_S * soundRateHz));
    const speed = Math.min(4, rpm / 800);
    const struck = this.#blow * white;
    let sound = 0;
    for (const mode of this.#modes) sound += 2.2 * clatter * mode.next(struck);
    sound += exhaust * this.#pipe.next(this.#puff);
    sound += rush * speed * this.#air.next(white);
    const turnsRad = 2 * Math.PI * this.#turns;
    if (rpm > 0) sound += 0.02 * speed * (Math.sin(gearOrder * turnsRad) + Math.sin(fanOrder * turnsRad));
    const chuff = this.#chuff.next(white);
    if (!firing && rpm > 5) sound += 0.9 * Math.min(1, rpm / 120) * compression * compression * chuff;
    if (starter) {
      const mesh = ringTeeth * turnsRad;
      sound +=
        (0.16 + 0.1 * compression) * (Math.sin(mesh) + 0.5 * Math.sin(2 * mesh) + 0.3 * Math.sin(3 * mesh));
    }
    return LEVEL * sound;
  }

  #behindDeg(): number {
    return this.#angles[(this.#next + this.#angles.length - 1) % this.#angles.length] ?? 0;
  }

  #turn(rpm: number, firing: boolean): void {
    const deg = (rpm * 6) / soundRateHz;
    this.#turns += deg / 360;
    this.#deg += deg;
    while (this.#deg >= this.#nextAtDeg) {
      this.#strike(this.#next, firing);
      this.#next += 1;
      if (this.#next === this.#angles.length) {
        this.#next = 0;
        this.#deg -= this.#cycleDeg;
      }
      const jitter = this.#character.jitterDeg * Math.max(-2, Math.min(2, this.#random.normal()));
      this.#nextAtDeg = (this.#angles[this.#next] ?? 0) + (this.#next === 0 ? Math.max(0, jitter) : jitter);
    }
  }

  #strike(cylinder: number, firing: boolean): void {
    const { cylinders, cycleSpread, misfires } = this.#character;
    if (!firing || this.#random.next() < misfires) return;
    const strength = Math.max(0, (cylinders[cylinder] ?? 1) * (1 + cycleSpread * this.#random.normal()));
    this.#blow += strength;
    this.#puff += strength;
  }
}
