import { Worker } from 'node:worker_threads';
import { Refused } from '../refused.ts';
import type { JobName, Jobs } from './jobs.ts';
import type { Delivery, Order } from './thread.ts';

export interface LaneBounds {
  /** Jobs that may wait; one more is refused. */
  readonly mostWaiting: number;
  /** After so long a job is given up, and its thread with it. */
  readonly forMs: number;
  /** Memory of the thread; what needs more is given up. */
  readonly heapMb: number;
}

/** A thread that has nothing to do for so long gives its memory back. */
const IDLE_MS = 60_000;

interface Waiting {
  readonly order: Order;
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: Error) => void;
}

type Result<Name extends JobName> = Awaited<ReturnType<Jobs[Name]>>;

/**
 * Heavy work, one job after the other in a thread of its own, within bounds: whoever serves the faces never waits
 * for it, and a stop passes by it. The thread is started when there is something to do.
 */
export class Lane {
  readonly #what: string;
  readonly #bounds: LaneBounds;
  readonly #waiting: Waiting[] = [];
  #worker: Worker | null = null;
  #current: Waiting | null = null;
  #timer: NodeJS.Timeout | null = null;
  #closed = false;

  /** @param what the work as people are told of it: "reports" */
  constructor(what: string, bounds: LaneBounds) {
    this.#what = what;
    this.#bounds = bounds;
  }

  /** @throws Refused when too much waits already, when it takes too long or too much, or when the job refuses */
  do<Name extends JobName>(name: Name, input: Parameters<Jobs[Name]>[0]): Promise<Result<Name>> {
    if (this.#closed) return Promise.reject(new Refused('busy', 'The server is ending.'));
    if (this.#waiting.length >= this.#bounds.mostWaiting)
      return Promise.reject(new Refused('busy', `Too many ${this.#what} at once; try again in a minute.`));
    return new Promise<Result<Name>>((resolve, reject) => {
      this.#waiting.push({
        order: { name, input } as Order,
        resolve: result => resolve(result as Result<Name>),
        reject,
      });
      this.#next();
    });
  }

  get isClosed(): boolean {
    return this.#closed;
  }

  close(): void {
    this.#closed = true;
    this.#giveUp(new Refused('busy', 'The server is ending.'));
    for (const { reject } of this.#waiting.splice(0)) reject(new Refused('busy', 'The server is ending.'));
    if (this.#timer) clearTimeout(this.#timer);
  }

  #next(): void {
    if (this.#current || this.#closed) return;
    const next = this.#waiting.shift();
    if (!next) {
      this.#after(IDLE_MS, () => this.#end());
      return;
    }
    this.#current = next;
    const seconds = this.#bounds.forMs / 1000;
    this.#after(this.#bounds.forMs, () =>
      this.#giveUp(
        new Refused('failed', `This was given up after ${seconds} s; do it on the laptop itself.`),
      ),
    );
    this.#worker ??= this.#start();
    this.#worker.postMessage(next.order);
  }

  #start(): Worker {
    const worker = new Worker(new URL('./start.js', import.meta.url), {
      resourceLimits: { maxOldGenerationSizeMb: this.#bounds.heapMb },
    });
    worker.on('message', (delivery: Delivery) => {
      if (this.#worker === worker) this.#take(delivery);
    });
    worker.on('error', (error: Error) => {
      if (this.#worker !== worker) return;
      const isMemory = 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
      this.#giveUp(
        isMemory
          ? new Refused('tooLong', 'This is too large to be done here; do it on the laptop itself.')
          : error,
      );
    });
    return worker;
  }

  #take(delivery: Delivery): void {
    const current = this.#current;
    this.#current = null;
    if (delivery.kind === 'done') current?.resolve(delivery.result);
    else if (delivery.kind === 'refused')
      current?.reject(new Refused(delivery.refusal.code, delivery.refusal.sentence));
    else current?.reject(new Error(delivery.why));
    this.#next();
  }

  #giveUp(why: Error): void {
    this.#end();
    const current = this.#current;
    this.#current = null;
    current?.reject(why);
    this.#next();
  }

  #end(): void {
    void this.#worker?.terminate();
    this.#worker = null;
  }

  #after(ms: number, act: () => void): void {
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = setTimeout(act, ms);
    this.#timer.unref();
  }
}
