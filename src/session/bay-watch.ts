import type { EarLevel, UtteranceLevel } from '../voice/ports.ts';

/** What is found out about voice and noise; what people are told of it has the same names. */
export type HearingFinding =
  | 'voiceTooLoud'
  | 'voiceTooFaint'
  | 'bayTooNoisy'
  | 'bayQuietEnough'
  | 'bayLoud'
  | 'bayLessLoud'
  | 'bayChecked';

export interface HearingReport {
  readonly finding: HearingFinding;
  readonly noiseDbfs: number | null;
  readonly aboveNoiseDb: number | null;
}

/**
 * A voice that stands less than this above the noise is not trusted: at 5 dB beside a fan 14 of 20 replies of one voice
 * were heard rightly. It is trusted again only well above, so that it does not change with every word.
 */
export const untrustedBelowDb = 5;
export const trustedAgainDb = 8;
/**
 * A voice that stands less than this above the noise is helped: numbers figure by figure, and the wordings that are
 * farthest apart. Of 56 numbers of two made voices at 10 dB beside an engine, a fan and a wrench 4 were taken for others
 * as they are usually said, and 2 figure by figure; at 5 dB it helps no more (4 and 5).
 */
export const helpedBelowDb = 12;
export const helpedUpToDb = 15;
/** So faint that the least movement of the microphone loses it. */
export const faintDbfs = -50;
/** The check needs the first few utterances: at the start of a session the two stop-word proofs are among them. */
const utterancesToJudge = 3;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/**
 * Follows what the ear measures, and reports what people have to be told: once, until it is different again. It begins
 * with a check of the bay over the first utterances and goes on with the last three.
 */
export class BayWatch {
  readonly #report: (report: HearingReport) => void;
  #lastNth = 0;
  #recent: UtteranceLevel[] = [];
  #checked = false;
  #trusted = true;
  #helped = false;
  #clipped = false;
  #clippedInARow = 0;
  #faint = false;
  #toolSpoke = false;

  constructor(report: (report: HearingReport) => void) {
    this.#report = report;
  }

  /** Whether replies by voice count; stop words always do. */
  get voiceTrusted(): boolean {
    return this.#trusted;
  }

  /** Whether it is so loud that people are helped to be understood. */
  get voiceHelped(): boolean {
    return this.#helped;
  }

  /** @param toolSpeaks the loudspeaker is on: what the microphone then hears may be the tool, and judges nobody */
  take(level: EarLevel, toolSpeaks: boolean): void {
    if (level.speech && level.clipping) this.#clipped = true;
    if (level.speech && toolSpeaks) this.#toolSpoke = true;
    if (level.utterance === undefined || level.utterance.nth === this.#lastNth) return;
    this.#lastNth = level.utterance.nth;
    if (this.#toolSpoke) {
      this.#toolSpoke = false;
      this.#clipped = false;
      return;
    }
    this.#recent = [...this.#recent, level.utterance].slice(-utterancesToJudge);
    const noiseDbfs = level.noiseDbfs ?? null;
    this.#judgeLoudness(level.utterance, noiseDbfs);
    if (this.#recent.length === utterancesToJudge) this.#judgeBay(noiseDbfs);
  }

  #judgeLoudness({ speechDbfs, aboveNoiseDb }: UtteranceLevel, noiseDbfs: number | null): void {
    this.#clippedInARow = this.#clipped ? this.#clippedInARow + 1 : 0;
    this.#clipped = false;
    // Once may be a knock against the microphone.
    if (this.#clippedInARow === 2) this.#report({ finding: 'voiceTooLoud', noiseDbfs, aboveNoiseDb });
    const faint = speechDbfs < faintDbfs;
    if (faint && !this.#faint) this.#report({ finding: 'voiceTooFaint', noiseDbfs, aboveNoiseDb });
    this.#faint = faint;
  }

  /** The median: one cough or one shout decides nothing. A figure that is no number is no reason for trust. */
  #judgeBay(noiseDbfs: number | null): void {
    const measured = median(this.#recent.map(({ aboveNoiseDb }) => aboveNoiseDb));
    const aboveNoiseDb = Number.isFinite(measured) ? measured : null;
    const trusted = measured >= (this.#trusted ? untrustedBelowDb : trustedAgainDb);
    const changed = trusted !== this.#trusted;
    const first = !this.#checked;
    this.#trusted = trusted;
    this.#checked = true;
    const finding = trusted ? 'bayQuietEnough' : 'bayTooNoisy';
    if (changed) this.#report({ finding, noiseDbfs, aboveNoiseDb });
    else if (first) this.#report({ finding: 'bayChecked', noiseDbfs, aboveNoiseDb });
    // Whoever answers by keys is told nothing of how to speak.
    if (trusted) this.#judgeHelp(measured, { noiseDbfs, aboveNoiseDb });
  }

  #judgeHelp(measured: number, figures: Omit<HearingReport, 'finding'>): void {
    const helped = measured < (this.#helped ? helpedUpToDb : helpedBelowDb);
    if (helped === this.#helped) return;
    this.#helped = helped;
    this.#report({ finding: helped ? 'bayLoud' : 'bayLessLoud', ...figures });
  }
}
