import type { Said } from '../../machines/context.ts';
import type { Language } from '../../prompts/types.ts';
import type { Tell } from './happening.ts';
import { asOneSentence } from './one-sentence.ts';
import type { SessionParts } from './parts.ts';
import type { RecordWriter } from './record-writer.ts';
import { type Sentence, wordSaid } from './wording.ts';

/** Says what a session has to say: worded, on the record, told to the faces, and spoken. */
export class Announcer {
  readonly #parts: Pick<SessionParts, 'units' | 'clock' | 'speech'>;
  readonly #language: () => Language;
  readonly #record: Pick<RecordWriter, 'keep'>;
  readonly #tell: Tell;

  /** @param language asked at each line: in a loud bay other wordings are asked for */
  constructor(
    parts: Pick<SessionParts, 'units' | 'clock' | 'speech'>,
    language: () => Language,
    record: Pick<RecordWriter, 'keep'>,
    tell: Tell,
  ) {
    this.#parts = parts;
    this.#language = language;
    this.#record = record;
    this.#tell = tell;
  }

  /** Hazards each for themselves, ahead of everything else. */
  callOut(hazards: readonly Said[]): void {
    for (const said of hazards) this.#speak(this.#word(said), said, 'hazard');
  }

  /** What is said at one moment, as one sentence; nothing where there is nothing. */
  announce(lines: readonly Said[]): void {
    const last = lines.at(-1);
    if (!last) return;
    const worded = lines.flatMap(repairApart).map(said => ({ ...this.#word(said), priority: said.priority }));
    const { priority, inPassing, ...sentence } = asOneSentence(worded);
    this.#speak(sentence, last, priority, inPassing);
  }

  #word(said: Said): Sentence {
    return wordSaid(said, this.#language(), this.#parts.units);
  }

  #speak({ spoken, shown }: Sentence, said: Said, priority: Said['priority'], inPassing = ''): void {
    if (spoken !== '')
      this.#record.keep('said', { text: spoken, line: said.line, step: said.step, priority });
    this.#tell({
      kind: 'said',
      atMs: this.#parts.clock.nowMs(),
      line: said.line,
      shown,
      hazard: priority === 'hazard',
      asks: priority === 'prompt',
      inPassing,
    });
    if (spoken === '') return;
    const label = `${said.step}-${said.line}`;
    const once = said.once ? { once: said.once } : {};
    void this.#parts.speech.enqueue({ text: spoken, priority, label, ...once }).then(outcome => {
      if (outcome.kind === 'failed') this.#tell({ kind: 'problem', sentence: outcome.reason });
    });
  }
}

/** "I did not understand", and what is asked again: the one is of a moment, and shown beside the other. */
function repairApart(said: Said): readonly Said[] {
  const { prefix, ...question } = said;
  if (said.priority !== 'prompt' || prefix === undefined || prefix === 'fromBus') return [said];
  return [{ line: prefix, values: {}, step: said.step, priority: 'notice' }, question];
}
