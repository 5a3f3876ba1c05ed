import { constants, getPriority, setPriority } from 'node:os';
// A new thread does not understand TypeScript by itself, even where the main thread does.
import { register } from 'tsx/esm/api';

// Whoever serves the faces goes first. On Linux this is the thread's own; elsewhere it would be the whole program's.
if (process.platform === 'linux')
  setPriority(Math.max(getPriority(), constants.priority.PRIORITY_BELOW_NORMAL));
register();
await import('./thread.ts');
