import { onTestFinished } from 'vitest';
import { scratchFolder } from './scratch.ts';
import { launchPulse, type PulseServer } from './sound-server.ts';

/** A sound server for one test; it ends with the test. */
export async function startPulse(): Promise<PulseServer> {
  const server = await launchPulse(scratchFolder());
  onTestFinished(server.kill);
  return server;
}
