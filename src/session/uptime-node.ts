import os from 'node:os';

/** How long this machine has been up, in milliseconds of whole seconds: what it slept counts, a clock set anew does not. */
export const uptimeMs = (): number => os.uptime() * 1000;
