import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pack, unpack } from '../../src/archive/packed-log.ts';

it('gives back every record to the byte, also one that an earlier archive kept with gzip', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 5000 }), bytes => {
      const packed = pack(bytes);
      expect(unpack(packed)).toEqual(Buffer.from(bytes));
      expect(unpack(gzipSync(bytes))).toEqual(Buffer.from(bytes));
    }),
  );
});
