import fc from 'fast-check';
import type { CanFrame } from '../../src/bus/frame.ts';

export const anyCanId = fc.integer({ min: 0, max: 0x1fffffff });
const anyData = fc.uint8Array({ maxLength: 8 });
/** Whole microseconds, as logs have them. */
const anyTimeS = fc.integer({ min: 0, max: 2_000_000_000_000_000 }).map(micros => micros / 1e6);

const extended = fc.record({ id: anyCanId, extended: fc.constant(true) });
const standard = fc.record({ id: fc.integer({ min: 0, max: 0x7ff }), extended: fc.constant(false) });
const payload = fc.oneof(
  fc.record({ remote: fc.constant(false), data: anyData }),
  fc.constant({ remote: true, data: new Uint8Array(0) }),
);

export const anyFrame: fc.Arbitrary<CanFrame> = fc
  .tuple(fc.record({ timeS: anyTimeS }), fc.oneof(extended, standard), payload)
  .map(([time, head, body]) => ({ ...time, ...head, ...body }));
