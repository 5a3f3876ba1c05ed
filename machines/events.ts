export type { BusSight, Code, SessionEvent } from '../src/record/vocabulary/event.ts';
