import { stdin, stdout } from 'node:process';
import { createInterface } from 'node:readline';
import type { Answer } from '../../interview/interview.ts';
import type { Question } from '../../interview/question.ts';
import type { UnitChoice } from '../../interview/units.ts';

/** Where an interview is held: a terminal, a pipe, or a test. */
export interface TalkIo {
  /** The next line that was typed; null when nobody types any more. */
  ask(prompt: string): Promise<string | null>;
  print(line: string): void;
  /** What is asked from now on, for whoever answers by other means than lines. */
  about?(question: Question, proposal: Answer | undefined, units: UnitChoice, spoken: string): void;
  /** The answer was not taken, and is asked for again. */
  refused?(sentence: string): void;
  /** Nothing more is asked that could be answered so. */
  over?(): void;
  close(): void;
}

/** A line broken between its words where it is wider than this, each part behind the same indentation. */
export function wrapped(line: string, columns: number): string {
  const indent = /^ */.exec(line)?.[0] ?? '';
  const parts: string[] = [];
  let open = '';
  for (const word of line.slice(indent.length).split(' ')) {
    const longer = open === '' ? indent + word : `${open} ${word}`;
    if (longer.length > columns && open !== '') {
      parts.push(open);
      open = indent + word;
    } else open = longer;
  }
  return [...parts, open].join('\n');
}

/** The keys of this terminal, or the lines of a pipe. */
export function terminalTalk(): TalkIo {
  const lines = createInterface({ input: stdin, output: stdout, terminal: stdin.isTTY === true });
  const typed = lines[Symbol.asyncIterator]();
  lines.on('SIGINT', () => lines.close());
  return {
    async ask(prompt) {
      lines.setPrompt(prompt);
      lines.prompt();
      const { value, done } = await typed.next();
      return done === true ? null : value;
    },
    print: line => console.log(wrapped(line, stdout.columns ?? Number.POSITIVE_INFINITY)),
    close: () => lines.close(),
  };
}
