import { parentPort } from 'node:worker_threads';
import { takeIn } from './intake.ts';

// One after the other: the answers have to come in the order of the questions.
let last: Promise<unknown> = Promise.resolve();
parentPort?.on('message', (path: string) => {
  last = last.then(async () => parentPort?.postMessage(await takeIn(path)));
});
