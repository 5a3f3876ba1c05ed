import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import type { Answer } from '../../interview/interview.ts';
import type { Question } from '../../interview/question.ts';
import type { UnitChoice } from '../../interview/units.ts';
import type { Heard, Recognizer } from '../../voice/ports.ts';
import type { TalkIo } from './io.ts';
import { grammarFor, readBackGrammar, spokenAnswer } from './spoken-answer.ts';

interface VoiceParts {
  readonly keys: TalkIo;
  readonly language: Language;
  readonly ear: Pick<Recognizer, 'listen' | 'onHeard'>;
  /** Settles when it has been said. */
  readonly say: (sentence: string) => Promise<void>;
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
export function voiceTalk({ keys, language, ear, say }: VoiceParts): TalkIo {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const listenFor = ({ question, isPut, units }: Asked) => grammarFor(question, isPut, units, language);
  let asked: Asked | null = null;
  /** What is read back, until it is answered. */
  let readBack: string | null = null;
  let answer: (typed: string) => void = () => {};
  let typing: Promise<string | null> | null = null;

  const listen = () => {
    if (!asked) return;
    readBack = null;
    const grammar = listenFor(asked);
    if (grammar) ear.listen(grammar);
  };
  const ask = async () => {
    if (!asked) return;
    const byKeys = listenFor(asked) === null;
    if (byKeys) keys.print(`    ${tell('This one by the keys, please.')}`);
    await say(
      byKeys
        ? tell(`${asked.spoken}. By the keys, please.`)
        : /\?$/.test(asked.spoken)
          ? asked.spoken
          : `${asked.spoken}?`,
    );
  };

  const hear = (heard: Heard) => {
    if (!asked || listenFor(asked) === null) return;
    if (readBack !== null) {
      const typed = readBack;
      const agreed = heard.kind === 'reply' && heard.id === 'yes';
      listen();
      if (agreed) answer(typed);
      else void ask();
      return;
    }
    const spoken = spokenAnswer(heard, asked.question, language);
    switch (spoken.kind) {
      case 'answer':
        readBack = spoken.typed;
        keys.print(`    ${tell(`Heard: ${spoken.shown}. Correct?`)}`);
        ear.listen(readBackGrammar(asked.question, language));
        void say(tell(`${spoken.shown}. Correct?`));
        return;
      case 'key':
        answer(spoken.typed);
        return;
      case 'again':
        void ask();
        return;
      case 'unclear':
        keys.print(`    ${tell('Not understood.')}`);
        void say(tell('Not understood.'));
    }
  };
  ear.onHeard(hear);

  return {
    about(question: Question, proposal: Answer | undefined, units: UnitChoice, spoken: string) {
      asked = { question, isPut: proposal !== undefined, units, spoken };
      listen();
      void ask();
    },
    async ask(prompt) {
      const heard = new Promise<string>(resolve => {
        answer = resolve;
      });
      // What nobody typed yet is still awaited when the next question is asked.
      typing ??= keys.ask(prompt);
      const typed = typing.then(line => {
        typing = null;
        return line;
      });
      const line = await Promise.race([heard, typed]);
      answer = () => {};
      if (line !== null) listen();
      return line;
    },
    refused(sentence) {
      void say(sentence);
    },
    over() {
      asked = null;
    },
    print: line => keys.print(line),
    close: () => keys.close(),
  };
}
