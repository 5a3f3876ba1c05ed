import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

/**
 * Starts one of the small programs beside this file in a process of its own.
 * @param through a command that runs it in turn, such as `prlimit --fsize=...`
 */
export function startProgram(
  name: string,
  args: readonly string[],
  through: readonly string[] = [],
): Program {
  const file = fileURLToPath(new URL(`programs/${name}.ts`, import.meta.url));
  const [command = process.execPath, ...rest] = [
    ...through,
    process.execPath,
    '--import',
    'tsx',
    file,
    ...args,
  ];
  return new Program(spawn(command, rest));
}

class Program {
  readonly #child: ChildProcess;
  readonly #ended: Promise<void>;
  #errors = '';

  constructor(child: ChildProcess) {
    this.#child = child;
    this.#ended = new Promise(resolve => child.once('close', () => resolve()));
    child.stderr?.on('data', data => {
      this.#errors += String(data);
    });
  }

  /** The lines of the standard output until it ends. */
  async *lines(): AsyncGenerator<string> {
    if (this.#child.stdout !== null) yield* createInterface({ input: this.#child.stdout });
    await this.#ended;
    if (this.#errors !== '') throw new Error(this.#errors);
  }

  async firstLine(): Promise<string> {
    for await (const line of this.lines()) return line;
    throw new Error('the program said nothing');
  }

  /** The signal that cannot be caught: as sudden as an end gets, short of a power loss. */
  kill(): void {
    this.#child.kill('SIGKILL');
  }

  /** Ends the standard input, which asks the program to finish. */
  async finish(): Promise<void> {
    this.#child.stdin?.end();
    await this.#ended;
  }
}
