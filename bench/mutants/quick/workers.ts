import { type ChildProcess, fork } from 'node:child_process';
import type { Order } from './worker.ts';

/** After so many orders a process is begun anew: what was loaded for a mutant is not all let go. */
const WORKS_FOR = 250;

/** One process at a time that carries out orders, one after the other. */
export class Worker {
  #child: ChildProcess | null = null;
  #orders = 0;

  /** The answer, or null where there was none in time or the process broke down. Rejects where the order failed. */
  async ask<Answer>(order: Order, patienceMs: number): Promise<Answer | null> {
    const child = await this.#ready();
    this.#orders += 1;
    return new Promise((resolve, reject) => {
      const over = (answer: Answer | null) => {
        clearTimeout(timer);
        child.removeAllListeners('message').removeAllListeners('exit');
        if (answer === null) this.end();
        resolve(answer);
      };
      const timer = setTimeout(() => over(null), patienceMs);
      child.once('exit', () => over(null));
      child.once('message', (message: { readonly answer?: Answer; readonly error?: string }) => {
        if (message.answer !== undefined) return over(message.answer);
        over(null);
        reject(new Error(message.error));
      });
      child.send(order);
    });
  }

  end(): void {
    this.#child?.kill('SIGKILL');
    this.#child = null;
  }

  async #ready(): Promise<ChildProcess> {
    if (this.#child && this.#orders < WORKS_FOR) return this.#child;
    this.end();
    this.#orders = 0;
    const child = fork(new URL('worker.ts', import.meta.url), {
      execArgv: ['--import', 'tsx'],
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    });
    this.#child = child;
    await new Promise(resolve => child.once('message', resolve));
    return child;
  }
}

/** Has all items worked on by so many processes at a time, in their order. */
export async function inProcesses<Item>(
  count: number,
  items: readonly Item[],
  work: (worker: Worker, item: Item) => Promise<void>,
): Promise<void> {
  const left = [...items];
  await Promise.all(
    Array.from({ length: count }, async () => {
      const worker = new Worker();
      for (let item = left.shift(); item !== undefined; item = left.shift()) await work(worker, item);
      worker.end();
    }),
  );
}
