import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { ArchiveError } from './archive-error.ts';
import { type IntakeResult, takeIn } from './intake.ts';

/** Threads take half a second to start: not worth it for a few records. */
const WORTH_THREADS = 50;

/** Records read ahead of the database, for each thread. */
const AHEAD = 8;

/** Reads and checks records, many at a time where there are many, and gives them in the order asked for. */
export async function* takeInAll(
  paths: readonly string[],
  threads = availableParallelism(),
): AsyncGenerator<IntakeResult> {
  const lanes = paths.length < WORTH_THREADS ? [] : Array.from({ length: threads }, () => new Lane());
  const ahead: Promise<IntakeResult>[] = [];
  try {
    for (const [index, path] of paths.entries()) {
      const lane = lanes[index % Math.max(1, lanes.length)];
      const coming = lane ? lane.takeIn(path) : takeIn(path);
      // It is awaited in its turn; until then a failure must not count as nobody's.
      coming.catch(() => undefined);
      ahead.push(coming);
      const next = ahead.length > AHEAD * lanes.length ? ahead.shift() : undefined;
      if (next) yield await next;
    }
    for (const coming of ahead) yield await coming;
  } finally {
    for (const lane of lanes) lane.close();
  }
}

interface Waiting {
  readonly resolve: (result: IntakeResult) => void;
  readonly reject: (error: ArchiveError) => void;
}

/** One thread, which answers in the order of the questions. */
class Lane {
  readonly #worker = new Worker(new URL('./worker-start.js', import.meta.url));
  readonly #waiting: Waiting[] = [];
  #broken: ArchiveError | undefined;

  constructor() {
    this.#worker.on('message', (result: IntakeResult) => this.#waiting.shift()?.resolve(result));
    this.#worker.on('error', (error: unknown) => {
      const why = error instanceof Error ? error.message : String(error);
      this.#broken = new ArchiveError(`Reading records broke down (${why}); add fewer files at once.`, error);
      for (const { reject } of this.#waiting.splice(0)) reject(this.#broken);
    });
  }

  takeIn(path: string): Promise<IntakeResult> {
    if (this.#broken) return Promise.reject(this.#broken);
    return new Promise((resolve, reject) => {
      this.#waiting.push({ resolve, reject });
      this.#worker.postMessage(path);
    });
  }

  close(): void {
    void this.#worker.terminate();
  }
}
