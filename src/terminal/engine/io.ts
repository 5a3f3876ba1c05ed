import { stdin, stdout } from 'node:process';
import { createInterface } from 'node:readline';

/** Where an interview is held: a terminal, a pipe, or a test. */
export interface TalkIo {
  /** The next line that was typed; null when nobody types any more. */
  ask(prompt: string): Promise<string | null>;
  print(line: string): void;
  close(): void;
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
    print: line => console.log(line),
    close: () => lines.close(),
  };
}
