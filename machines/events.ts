export type { BusSight, Code, EarSight, SessionEvent } from '../src/record/vocabulary/event.ts';
