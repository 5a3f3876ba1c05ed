const SIGNALS = ['SIGTERM', 'SIGINT', 'SIGHUP'] as const;

/**
 * Calls `restore` before the process ends in any way it can notice: an exit, an exception nobody caught, a
 * signal. It changes nothing about the end itself: a signal nobody else listens for is sent again.
 *
 * @returns what takes these hooks away again
 */
export function onEnd(restore: () => void): () => void {
  const signalled = (signal: NodeJS.Signals) => {
    restore();
    unhook();
    if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
  };
  const unhook = () => {
    process.off('exit', restore);
    process.off('uncaughtExceptionMonitor', restore);
    for (const signal of SIGNALS) process.off(signal, signalled);
  };
  process.on('exit', restore);
  process.on('uncaughtExceptionMonitor', restore);
  for (const signal of SIGNALS) process.on(signal, signalled);
  return unhook;
}
