import { onTestFinished } from 'vitest';
import { type HowStarted, type Ran, Started, startScript } from './started.ts';

export { startScript };

/** Starts the program for one test; whatever is left of it is ended after that test. */
export function startFirstFire(args: readonly string[], how: HowStarted = {}): Started {
  const started = new Started(args, how);
  onTestFinished(() => started.signal('SIGKILL'));
  return started;
}

/** Runs the program to its end, with nobody at the keys. */
export async function firstFire(args: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<Ran> {
  const { exitCode, stdout, stderr } = await new Started(args, { env }).ended;
  return { exitCode, stdout, stderr };
}
