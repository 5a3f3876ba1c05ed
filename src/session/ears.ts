import type { Moment } from '../../machines/moment.ts';
import type { Via } from '../../machines/vocabulary.ts';
import type { Language } from '../../prompts/types.ts';
import type { EarLevel, Grammar, Heard, Recognizer } from '../voice/ports.ts';
import { BayWatch, type HearingReport } from './bay-watch.ts';
import { grammarOf } from './grammar.ts';
import { figureByFigure, spokenInNoise } from './in-noise.ts';
import type { SessionParts } from './parts.ts';

interface Ear {
  readonly recognizer: Recognizer;
  readonly via: Via;
}

/** Everything that listens for a session, by voice or by keys, and what it listens for. */
export class Ears {
  readonly #parts: Pick<SessionParts, 'language' | 'units'>;
  readonly #moment: () => Moment;
  readonly #ears: Ear[] = [];
  readonly #bay: BayWatch;
  #toolSpeaks = false;

  /** @param found called with what is found out about voice and noise */
  constructor(
    parts: Pick<SessionParts, 'language' | 'units'>,
    moment: () => Moment,
    found: (report: HearingReport) => void,
  ) {
    this.#parts = parts;
    this.#moment = moment;
    this.#bay = new BayWatch(found);
  }

  /** Lets one more listen. */
  attach(recognizer: Recognizer, via: Via, hear: (heard: Heard) => void): void {
    this.#ears.push({ recognizer, via });
    recognizer.onHeard(hear);
    this.#setOnlyStop();
    recognizer.listen(this.grammar(via));
  }

  /** What an ear measures. */
  level(level: EarLevel): void {
    this.#bay.take(level, this.#toolSpeaks);
  }

  get toolSpeaks(): boolean {
    return this.#toolSpeaks;
  }

  /** Keys are never deafened by the tool's own voice. */
  set toolSpeaks(speaks: boolean) {
    this.#toolSpeaks = speaks;
    this.#setOnlyStop();
  }

  /** While the tool speaks, and where voice cannot be trusted, only stop words are heard. */
  get hearsOnlyStop(): boolean {
    return this.#toolSpeaks || !this.#bay.voiceTrusted;
  }

  /** Whether the bay is so loud that figures are said one by one, and of the wordings those that are farthest apart. */
  get inNoise(): boolean {
    return this.#bay.voiceHelped;
  }

  /** The language, with what is asked for in a loud bay first while it is loud. */
  get language(): Language {
    return this.inNoise ? spokenInNoise(this.#parts.language) : this.#parts.language;
  }

  /** Everything that may be said now on this way. */
  grammar(via: Via): Grammar {
    const grammar = grammarOf(this.#moment(), this.language, this.#parts.units, via);
    return this.inNoise && via === 'voice' ? figureByFigure(grammar) : grammar;
  }

  /** Has them listen for what may be said now. */
  listen(): void {
    for (const { recognizer, via } of this.#ears) recognizer.listen(this.grammar(via));
  }

  /** After what was found out about the bay: what counts, and how it is said. */
  adjust(): void {
    this.#setOnlyStop();
    this.listen();
  }

  #setOnlyStop(): void {
    for (const { recognizer, via } of this.#ears)
      if (via === 'voice') recognizer.onlyStop(this.hearsOnlyStop);
  }
}
