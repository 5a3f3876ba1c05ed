import type { RecordClock } from '../../../src/record/index.ts';

export const systemClock: RecordClock = { wall: () => new Date(), monoMs: () => performance.now() };
