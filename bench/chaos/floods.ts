import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import type { Flood } from './flooder.ts';

const PROGRAM = fileURLToPath(new URL('flooder.ts', import.meta.url));

/** Floods over HTTP, from a process of its own. */
export class Floods {
  readonly #child: ChildProcess;
  readonly #waiting = new Map<number, () => void>();
  readonly #base: string;
  #nth = 0;

  constructor(base: string) {
    this.#base = base;
    this.#child = spawn(process.execPath, ['--import', 'tsx', PROGRAM], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    if (this.#child.stdout)
      createInterface({ input: this.#child.stdout }).on('line', id => this.#waiting.get(Number(id))?.());
  }

  /** Returns when all of it was answered, or will never be. */
  flow(from: Pick<Flood, 'address' | 'token' | 'what'>): Promise<void> {
    this.#nth += 1;
    const id = this.#nth;
    this.#child.stdin?.write(`${JSON.stringify({ id, base: this.#base, ...from })}\n`);
    return new Promise(resolve => this.#waiting.set(id, resolve));
  }

  end(): void {
    this.#child.kill();
  }
}
