import type { RunningServer } from './serve.ts';

/**
 * Acts on what nobody has caught, in place of the end of the program and with it of every STOP: what goes on is stopped in all
 * bays, and the server goes on to be stopped and answered until everything is said to be off.
 * @param tell says so in the terminal
 * @returns what takes this away again
 */
export function stopAllOnFailure(
  server: Pick<RunningServer, 'fails'>,
  tell: (sentence: string) => void,
): () => void {
  // Rejections that nobody takes come here, too.
  const failed = (error: unknown) => {
    try {
      server.fails(error);
    } catch {
      // A handler that throws would end the program.
    }
    tell(
      `The server failed (${String(error)}): all sessions were stopped. Key off, everywhere. When everything is said to be off, end the server and start it again.`,
    );
  };
  process.on('uncaughtException', failed);
  return () => {
    process.off('uncaughtException', failed);
  };
}
