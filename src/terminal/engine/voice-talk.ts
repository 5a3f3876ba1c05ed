import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import type { Answer } from '../../interview/interview.ts';
import type { Question } from '../../interview/question.ts';
import type { UnitChoice } from '../../interview/units.ts';
import type { Heard, Recognizer } from '../../voice/ports.ts';
import type { TalkIo } from './io.ts';
import { grammarFor, readBackGrammar, type Spoken, spokenAnswer } from './spoken-answer.ts';

interface VoiceParts {
  readonly keys: TalkIo;
  readonly language: Language;
  readonly ear: Pick<Recognizer, 'listen' | 'onHeard'>;
  /** Settles when it has been said. */
  readonly say: (sentence: string) => Promise<void>;
  /** Closes ear and voice, before the keys. */
  readonly close?: () => void;
}

interface Asked {
  readonly question: Question;
  readonly isPut: boolean;
  readonly units: UnitChoice;
  readonly spoken: string;
}

/**
 * The keys with an ear beside them: whichever answers first counts. What is heard is read back before it does; what is
 * unclear is asked again, and what cannot be said is left to the keys.
 */
export const voiceTalk = (parts: VoiceParts): TalkIo => new VoiceTalk(parts);

class VoiceTalk implements TalkIo {
  readonly #parts: VoiceParts;
  #asked: Asked | null = null;
  /** What is read back, until it is answered. */
  #readBack: string | null = null;
  #answer: (typed: string) => void = () => {};
  #typing: Promise<string | null> | null = null;

  constructor(parts: VoiceParts) {
    this.#parts = parts;
    parts.ear.onHeard(heard => this.#hear(heard));
  }

  about(question: Question, proposal: Answer | undefined, units: UnitChoice, spoken: string): void {
    this.#asked = { question, isPut: proposal !== undefined, units, spoken };
    this.#listen();
    void this.#put(this.#asked);
  }

  async ask(prompt: string): Promise<string | null> {
    const heard = new Promise<string>(resolve => {
      this.#answer = resolve;
    });
    // What nobody typed yet is still awaited when the next question is asked.
    this.#typing ??= this.#parts.keys.ask(prompt);
    const typed = this.#typing.then(line => {
      this.#typing = null;
      return line;
    });
    const line = await Promise.race([heard, typed]);
    this.#answer = () => {};
    if (line !== null) this.#listen();
    return line;
  }

  refused(sentence: string): void {
    void this.#parts.say(sentence);
  }

  over(): void {
    this.#asked = null;
  }

  print(line: string): void {
    this.#parts.keys.print(line);
  }

  close(): void {
    this.#parts.close?.();
    this.#parts.keys.close();
  }

  #tell(sentence: string): string {
    return bySentence(sentence, this.#parts.language.bySentence);
  }

  /** What may be said to it; null where only the keys will do. */
  #grammar({ question, isPut, units }: Asked) {
    return grammarFor(question, isPut, units, this.#parts.language);
  }

  #listen(): void {
    if (!this.#asked) return;
    this.#readBack = null;
    const grammar = this.#grammar(this.#asked);
    if (grammar) this.#parts.ear.listen(grammar);
  }

  /** Asks it aloud. */
  async #put(asked: Asked): Promise<void> {
    const { spoken } = asked;
    if (this.#grammar(asked) === null) {
      this.print(`    ${this.#tell('This one by the keys, please.')}`);
      await this.#parts.say(this.#tell(`${spoken}. By the keys, please.`));
      return;
    }
    await this.#parts.say(spoken.endsWith('?') ? spoken : `${spoken}?`);
  }

  #hear(heard: Heard): void {
    const asked = this.#asked;
    if (!asked || this.#grammar(asked) === null) return;
    if (this.#readBack === null) this.#take(spokenAnswer(heard, asked.question, this.#parts.language), asked);
    else this.#confirm(heard, this.#readBack, asked);
  }

  /** Somebody says whether what was read back is right. */
  #confirm(heard: Heard, readBack: string, asked: Asked): void {
    this.#listen();
    if (heard.kind === 'reply' && heard.id === 'yes') this.#answer(readBack);
    else void this.#put(asked);
  }

  #take(spoken: Spoken, asked: Asked): void {
    const { ear, say, language } = this.#parts;
    switch (spoken.kind) {
      case 'answer':
        this.#readBack = spoken.typed;
        this.print(`    ${this.#tell(`Heard: ${spoken.shown}. Correct?`)}`);
        ear.listen(readBackGrammar(asked.question, language));
        void say(this.#tell(`${spoken.shown}. Correct?`));
        return;
      case 'key':
        this.#answer(spoken.typed);
        return;
      case 'again':
        void this.#put(asked);
        return;
      case 'unclear':
        this.print(`    ${this.#tell('Not understood.')}`);
        void say(this.#tell('Not understood.'));
    }
  }
}
