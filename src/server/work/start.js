import { constants, getPriority, setPriority } from 'node:os';
// A new program does not understand TypeScript by itself, even where the one that starts it does.
import { register } from 'tsx/esm/api';

// Whoever serves the faces goes first.
setPriority(Math.max(getPriority(), constants.priority.PRIORITY_BELOW_NORMAL));
register();
await import('./program.ts');
