import { type ChildProcess, fork } from 'node:child_process';
import { Refused } from '../refused.ts';
import type { JobName, Jobs } from './jobs.ts';
import type { Delivery, Order } from './program.ts';

export interface LaneBounds {
  /** Jobs that may wait; one more is refused. */
  readonly mostWaiting: number;
  /** After so long a job is given up, and its program with it. */
  readonly forMs: number;
  /** Memory for JavaScript; what needs more is given up. */
  readonly heapMb: number;
}

/** A program that has nothing to do for so long gives its memory back. */
const IDLE_MS = 60_000;

interface Waiting {
  readonly order: Order;
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: Error) => void;
}

type Result<Name extends JobName> = Awaited<ReturnType<Jobs[Name]>>;

/** V8 aborts a program that has no memory left. */
const isOutOfMemory = (code: number | null, signal: NodeJS.Signals | null) =>
  signal === 'SIGABRT' || code === ABORTED;
/** The exit code of a program that was aborted, where that is no signal. */
const ABORTED = 134;

const tooLarge = () =>
  new Refused('tooLong', 'This is too large to be done here; do it on the laptop itself.');

/**
 * Heavy work, one job after the other in a program of its own, within bounds: whoever serves the faces never waits for it,
 * and a stop passes by it. The program is started when there is something to do. It is no thread: where a thread runs out of
 * memory, V8 may end the whole program, and every stop with it (nodejs/node issue 47224).
 */
export class Lane {
  readonly #what: string;
  readonly #bounds: LaneBounds;
  readonly #waiting: Waiting[] = [];
  #program: ChildProcess | null = null;
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
    this.#program ??= this.#start();
    this.#program.send(next.order);
  }

  #start(): ChildProcess {
    const program = fork(new URL('./start.js', import.meta.url), {
      execArgv: [`--max-old-space-size=${this.#bounds.heapMb}`],
      serialization: 'advanced',
      // What it says at its end is for nobody at the terminal.
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    });
    const isOurs = () => this.#program === program;
    program.on('message', delivery => {
      // It is ours, and its answers are held by their type on both sides.
      if (isOurs()) this.#take(delivery as Delivery);
    });
    program.on('error', error => {
      if (isOurs()) this.#giveUp(error);
    });
    program.on('exit', (code, signal) => {
      if (isOurs())
        this.#giveUp(isOutOfMemory(code, signal) ? tooLarge() : new Error(`It ended (${signal ?? code}).`));
    });
    return program;
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
    const program = this.#program;
    this.#program = null;
    program?.kill('SIGKILL');
  }

  #after(ms: number, act: () => void): void {
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = setTimeout(act, ms);
    this.#timer.unref();
  }
}
