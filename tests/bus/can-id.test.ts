import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodeCanId, GLOBAL_ADDRESS } from '../../src/bus/can-id.ts';
import { anyCanId } from './arbitraries.ts';
import { fieldsOf } from './can-id-fields.ts';

describe('A 29-bit identifier', () => {
  it('of a group for all keeps its low byte in the group number', () => {
    expect(fieldsOf(0x0cf00400)).toEqual({
      priority: 3,
      pgn: 61444,
      source: 0,
      destination: GLOBAL_ADDRESS,
    });
  });

  it('of a group for one address has that address beside the group number', () => {
    expect(fieldsOf(0x18ea21f9)).toEqual({ priority: 6, pgn: 59904, source: 0xf9, destination: 0x21 });
  });

  it('has the data page and the extended data page in the group number', () => {
    expect(fieldsOf(0x19f00400).pgn).toBe(0x1f004);
    expect(fieldsOf(0x1af00400).pgn).toBe(0x2f004);
    expect(fieldsOf(0x1fffffff)).toEqual({ priority: 7, pgn: 0x3ffff, source: 255, destination: 255 });
  });

  it('is the same after decoding and encoding, whatever its 29 bits', () => {
    fc.assert(fc.property(anyCanId, id => encodeCanId(fieldsOf(id)) === id));
  });

  it('is not made from fields that do not fit', () => {
    const good = { priority: 6, pgn: 65262, source: 0, destination: 255 };
    expect(() => encodeCanId({ ...good, priority: 8 })).toThrow('priority is 8; it has to be');
    expect(() => encodeCanId({ ...good, pgn: 0x40000 })).toThrow(RangeError);
    expect(() => encodeCanId({ ...good, source: -1 })).toThrow(RangeError);
    expect(() => encodeCanId({ ...good, destination: 0.5 })).toThrow(RangeError);
    expect(() => encodeCanId({ ...good, pgn: 0xea21 })).toThrow('give it as destination');
  });
});
