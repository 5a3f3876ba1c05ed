// A new thread does not understand TypeScript by itself, even where the main thread does.
import { register } from 'tsx/esm/api';

register();
await import('./thread.ts');
