import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

export interface Ran {
  readonly exitCode: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

const root = fileURLToPath(new URL('../..', import.meta.url));

/** What `npm start` runs, word for word, so that no test runs anything else. */
export const startScript: readonly string[] = z
  .object({ scripts: z.object({ start: z.string() }) })
  .parse(JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')))
  .scripts.start.split(' ');

export interface HowStarted {
  /** Through npm, as a user types it; else the very command of its script, without npm in between. */
  readonly npm?: boolean;
  readonly env?: NodeJS.ProcessEnv;
  /** Where it is started; the repository, where it is left out. */
  readonly cwd?: string;
  /** The keys: nobody at them, or lines that are typed. */
  readonly keys?: 'nobody' | 'typed';
}

/** The program as a process: what it tells, what is typed, and how it ends. */
export class Started {
  readonly child: ChildProcess;
  readonly ended: Promise<Ran & { readonly signal: NodeJS.Signals | null }>;
  #stdout = '';
  #stderr = '';
  #look: () => void = () => {};

  constructor(args: readonly string[], { npm = false, env = {}, cwd = root, keys = 'nobody' }: HowStarted) {
    const [command = '', ...words] = npm
      ? ['npm', 'start', '--']
      : [process.execPath, ...startScript.slice(1)];
    this.child = spawn(command, [...words, ...args], {
      cwd,
      env: { ...process.env, ...env },
      stdio: [keys === 'nobody' ? 'ignore' : 'pipe', 'pipe', 'pipe'],
      // A group of its own, as a terminal gives it: a signal to the group reaches npm and what npm runs.
      detached: true,
    });
    this.child.stdout?.on('data', (data: Buffer) => {
      this.#stdout += data.toString();
      this.#look();
    });
    this.child.stderr?.on('data', (data: Buffer) => {
      this.#stderr += data.toString();
      this.#look();
    });
    this.ended = new Promise((resolve, reject) => {
      this.child.on('error', reject);
      this.child.on('close', (exitCode, signal) =>
        resolve({ exitCode, signal, stdout: this.#stdout, stderr: this.#stderr }),
      );
    });
  }

  /** All that it has written so far. */
  get told(): string {
    return this.#stdout + this.#stderr;
  }

  /** Waits until it has written these words; rejects when it ends without. */
  tells(words: string): Promise<void> {
    return new Promise((resolve, reject) => {
      this.#look = () => this.told.includes(words) && resolve();
      this.#look();
      this.ended.then(() => reject(new Error(`It ended without "${words}":\n${this.told}`)), reject);
    });
  }

  type(line: string): void {
    this.child.stdin?.write(`${line}\n`);
  }

  /** The end of what is typed. */
  closeKeys(): void {
    this.child.stdin?.end();
  }

  /** A signal as the terminal sends it: to the program and to npm before it, at once. */
  signal(signal: NodeJS.Signals): void {
    if (this.child.pid !== undefined && this.child.exitCode === null && this.child.signalCode === null)
      process.kill(-this.child.pid, signal);
  }
}
