import { spawn } from 'node:child_process';
import type { Readable, Writable } from 'node:stream';

/** A system program and what it is told. */
export interface Command {
  readonly program: string;
  readonly args: readonly string[];
}

export interface Ending {
  /** Ended by itself and without an error. */
  readonly well: boolean;
  /** In a few words, naming the program: "parec: Connection refused". */
  readonly why: string;
}

/** A program that runs beside this one, for as long as it is wanted. */
export interface ChildProgram {
  readonly input: Writable;
  readonly output: Readable;
  /** Settles when the program has ended and all it wrote was read; also when it could not start. */
  readonly ended: Promise<Ending>;
  /** What it wrote on standard error so far, its last few thousand characters. */
  messages(): string;
  /** Ends it at once. */
  kill(): void;
}

const MESSAGES_KEPT = 8_000;

/** Starts a program. Never throws: what goes wrong is in `ended`. */
export function startProgram({ program, args }: Command, env: NodeJS.ProcessEnv): ChildProgram {
  const child = spawn(program, args, {
    env,
    stdio: ['pipe', 'pipe', 'pipe'],
    windowsHide: true,
    // A process group of its own: Ctrl-C in the terminal, which the session survives, must not take its ear away.
    detached: process.platform !== 'win32',
  });
  let messages = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    messages = (messages + text).slice(-MESSAGES_KEPT);
  });
  // A program that ends before it was told everything is reported by `ended`, not by the broken pipe.
  child.stdin.on('error', () => undefined);
  const ended = new Promise<Ending>(resolve => {
    child.once('error', cause => resolve({ well: false, why: `${program}: ${cause.message}` }));
    child.once('close', (code, signal) => {
      const said = messages.trim().split('\n').at(-1)?.trim();
      const why = said || (signal === null ? `exit code ${code}` : `ended by ${signal}`);
      resolve({ well: code === 0, why: `${program}: ${why}` });
    });
  });
  return {
    input: child.stdin,
    output: child.stdout,
    ended,
    messages: () => messages,
    kill: () => void child.kill('SIGKILL'),
  };
}
