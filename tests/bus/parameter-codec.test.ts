import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindOf, rangeOf, readRaw, writeParameter } from '../../src/bus/parameter-codec.ts';
import { PARAMETERS, type ParameterDefinition } from '../../src/bus/parameters.ts';

const parameter = (name: string): ParameterDefinition =>
  PARAMETERS.find(one => one.name === name) ?? expect.fail(`there is no ${name}`);

describe.each(PARAMETERS)('Parameter $spn, $name', definition => {
  const { scale, offset } = definition;
  const { min, max } = rangeOf(definition);

  it('is the same after writing and reading, to half a step', () => {
    fc.assert(
      fc.property(
        fc.double({ min, max, noNaN: true }),
        fc.uint8Array({ minLength: 8, maxLength: 8 }),
        (value, data) => {
          writeParameter(definition, value, data);
          const raw = readRaw(definition, data);
          expect(kindOf(definition, raw)).toBe('value');
          expect(Math.abs(raw * scale + offset - value)).toBeLessThanOrEqual(
            scale / 2 + 1e-9 * Math.abs(value),
          );
        },
      ),
    );
  });

  it('keeps absent and faulty apart, and leaves the other bits of the message alone', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 8, maxLength: 8 }), data => {
        for (const content of ['notAvailable', 'error'] as const) {
          const written = data.slice();
          writeParameter(definition, content, written);
          expect(kindOf(definition, readRaw(definition, written))).toBe(content);
          const own = new Uint8Array(8);
          writeParameter(definition, 'notAvailable', own);
          written.forEach((byte, at) => {
            expect(byte & ~(own[at] ?? 0)).toBe((data[at] ?? 0) & ~(own[at] ?? 0));
          });
        }
      }),
    );
  });

  it('cannot show a value outside its range', () => {
    for (const value of [min - scale, max + scale, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => writeParameter(definition, value, new Uint8Array(8))).toThrow(RangeError);
  });

  it('of a message that is too short is not available', () => {
    expect(kindOf(definition, readRaw(definition, new Uint8Array(0)))).toBe('notAvailable');
    const bytes = Math.max(1, definition.bits / 8);
    const short = new Uint8Array(definition.startByte + bytes - 2);
    expect(kindOf(definition, readRaw(definition, short))).toBe('notAvailable');
    expect(() => writeParameter(definition, 'error', short)).toThrow('does not fit');
  });
});

describe('The ranges of raw numbers (SAE J1939-71 table 1, from memory)', () => {
  it.each([
    [0x00, 'value'],
    [0xfa, 'value'],
    [0xfb, 'parameterSpecific'],
    [0xfc, 'error'],
    [0xfd, 'error'],
    [0xfe, 'error'],
    [0xff, 'notAvailable'],
  ])('of one byte: %d is %s', (raw, kind) => {
    expect(kindOf(parameter('oilPressure'), raw)).toBe(kind);
  });

  it.each([
    [0xfaff, 'value'],
    [0xfb00, 'parameterSpecific'],
    [0xfbff, 'parameterSpecific'],
    [0xfc00, 'error'],
    [0xfe00, 'error'],
    [0xfeff, 'error'],
    [0xff00, 'notAvailable'],
    [0xffff, 'notAvailable'],
  ])('of two bytes: %d is %s', (raw, kind) => {
    expect(kindOf(parameter('engineSpeed'), raw)).toBe(kind);
  });

  it.each([
    [0xfaffffff, 'value'],
    [0xfb000000, 'parameterSpecific'],
    [0xfe000000, 'error'],
    [0xff000000, 'notAvailable'],
  ])('of four bytes: %d is %s', (raw, kind) => {
    expect(kindOf(parameter('engineHours'), raw)).toBe(kind);
  });

  it.each([
    [0, 'value'],
    [1, 'value'],
    [2, 'error'],
    [3, 'notAvailable'],
  ])('of two bits: %d is %s', (raw, kind) => {
    expect(kindOf(parameter('waitToStartLamp'), raw)).toBe(kind);
  });
});
