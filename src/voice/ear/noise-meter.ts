import { isClipping, levelDbfs, silentDbfs } from '../levels.ts';
import type { EarLevel, Pcm, UtteranceLevel } from '../ports.ts';

/** The noise is what the last seconds without speech were like. */
const noiseWindowMs = 3_000;
/** Speech is noticed late: what came shortly before it is not yet noise. */
const doubtfulMs = 400;
/** Less noise than this has not been heard for long enough. */
const leastNoiseMs = 500;
/** Shorter sounds are no utterance to measure. */
const leastSpeechMs = 160;
/** Of an utterance the louder part counts: pauses and its ends are left out. */
const loudShare = 0.6;

interface Piece {
  readonly power: number;
  readonly ms: number;
}

const meanPower = (pieces: readonly Piece[]) =>
  pieces.reduce((sum, { power, ms }) => sum + power * ms, 0) / Math.max(lengthMs(pieces), 1e-9);

const lengthMs = (pieces: readonly Piece[]) => pieces.reduce((sum, { ms }) => sum + ms, 0);

const decibels = (power: number) => Math.max(silentDbfs, 10 * Math.log10(Math.max(power, 1e-12)));

/** Measures the noise beside the voice, and how far the voice stands above it, on the sound as it came in. */
export class NoiseMeter {
  private readonly sampleRateHz: number;
  private readonly quiet: Piece[] = [];
  private doubtful: Piece[] = [];
  private spoken: Piece[] = [];
  private lastUtterance: UtteranceLevel | undefined;

  constructor(sampleRateHz: number) {
    this.sampleRateHz = sampleRateHz;
  }

  /** The next piece of the stream (10 to 50 ms), and whether somebody speaks in it. */
  next(samples: Float32Array, speech: boolean): void {
    if (samples.length === 0) return;
    const piece = {
      power: 10 ** (levelDbfs(samples) / 10),
      ms: (samples.length / this.sampleRateHz) * 1000,
    };
    if (speech) {
      this.spoken.push(piece);
      this.doubtful = [];
      return;
    }
    if (this.spoken.length > 0) this.endUtterance();
    this.doubtful.push(piece);
    while (lengthMs(this.doubtful) > doubtfulMs) this.quiet.push(...this.doubtful.splice(0, 1));
    while (lengthMs(this.quiet) > noiseWindowMs) this.quiet.shift();
  }

  private endUtterance(): void {
    const spoken = this.spoken;
    this.spoken = [];
    const noiseDbfs = this.noiseDbfs;
    if (noiseDbfs === undefined || lengthMs(spoken) < leastSpeechMs) return;
    const loudest = [...spoken].sort((a, b) => b.power - a.power);
    const power = meanPower(loudest.slice(0, Math.ceil(loudest.length * loudShare)));
    const noise = 10 ** (noiseDbfs / 10);
    this.lastUtterance = {
      nth: (this.lastUtterance?.nth ?? 0) + 1,
      speechDbfs: decibels(power),
      aboveNoiseDb: decibels(Math.max(power - noise, noise / 100)) - noiseDbfs,
    };
  }

  /** Mean level of the noise, dB relative to full scale; undefined until half a second of it has been heard. */
  get noiseDbfs(): number | undefined {
    return lengthMs(this.quiet) < leastNoiseMs ? undefined : decibels(meanPower(this.quiet));
  }

  /** Level of the last utterance and how far its speech stood above the noise; undefined before the first. */
  get utterance(): UtteranceLevel | undefined {
    return this.lastUtterance;
  }

  /** What an ear reports of a block of sound, with what was measured so far. */
  report(block: Pcm, speech: boolean): EarLevel {
    return {
      levelDbfs: levelDbfs(block.samples),
      clipping: isClipping(block.samples),
      speech,
      ...(this.noiseDbfs === undefined ? {} : { noiseDbfs: this.noiseDbfs }),
      ...(this.lastUtterance === undefined ? {} : { utterance: this.lastUtterance }),
    };
  }
}
