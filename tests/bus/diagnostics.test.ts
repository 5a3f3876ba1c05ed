import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DM1_PGN, DM2_PGN, formatDiagnostics, parseDiagnostics } from '../../src/bus/diagnostics/dm1.ts';
import { formatLamps, type LampFlash, type LampStatus, parseLamps } from '../../src/bus/diagnostics/lamps.ts';
import {
  formatTroubleCode,
  type OldConversion,
  parseTroubleCode,
} from '../../src/bus/diagnostics/trouble-code.ts';
import { hexData } from './hex-data.ts';

const dm1 = (text: string, oldConversion?: OldConversion) =>
  parseDiagnostics(DM1_PGN, 0, 5, hexData(text), oldConversion);
const OFF = { status: 'off', flash: 'none' } as const;
const ALL_OFF = { malfunction: OFF, redStop: OFF, amberWarning: OFF, protect: OFF };

describe('The lamps of a diagnostic message', () => {
  it('each have two bits, malfunction highest', () => {
    expect(parseLamps(0x40, 0xff)).toEqual({ ...ALL_OFF, malfunction: { status: 'on', flash: 'none' } });
    expect(parseLamps(0x10, 0xff)).toEqual({ ...ALL_OFF, redStop: { status: 'on', flash: 'none' } });
    expect(parseLamps(0x04, 0xff)).toEqual({ ...ALL_OFF, amberWarning: { status: 'on', flash: 'none' } });
    expect(parseLamps(0x01, 0xff)).toEqual({ ...ALL_OFF, protect: { status: 'on', flash: 'none' } });
  });

  it('tell absent, reserved, slow and fast apart', () => {
    expect(parseLamps(0b11_10_01_01, 0b11_10_01_00)).toEqual({
      malfunction: { status: 'notAvailable', flash: 'none' },
      redStop: { status: 'reserved', flash: 'reserved' },
      amberWarning: { status: 'on', flash: 'fast' },
      protect: { status: 'on', flash: 'slow' },
    });
  });

  it('are the same after reading and writing, whatever the bytes', () => {
    fc.assert(
      fc.property(fc.nat({ max: 255 }), fc.nat({ max: 255 }), (status, flash) => {
        expect(formatLamps(parseLamps(status, flash))).toEqual([status, flash]);
      }),
    );
  });
});

describe('A fault code', () => {
  const ofBytes = (text: string, old?: OldConversion) => parseTroubleCode(hexData(text), 0, old);

  it('of SPN 1208 FMI 3 counted 10 times is packed as J1939-73 shows for its four methods (from memory)', () => {
    const known = { spn: { kind: 'known', spn: 1208 }, fmi: 3, occurrences: 10 };
    expect(ofBytes('00 97 03 8A', 1)).toEqual(known);
    expect(ofBytes('97 00 03 8A', 2)).toEqual(known);
    expect(ofBytes('B8 04 03 8A', 3)).toEqual(known);
    expect(ofBytes('B8 04 03 0A')).toEqual(known);
  });

  it('packed in an old way that nobody named is one of three', () => {
    expect(ofBytes('B8 04 03 8A')).toEqual({
      spn: { kind: 'oneOf', candidates: [(0xb8 << 11) | (4 << 3), (4 << 11) | (0xb8 << 3), 1208] },
      fmi: 3,
      occurrences: 10,
    });
  });

  it('with the conversion bit clear is not changed by what is said of old senders', () => {
    expect(ofBytes('B8 04 03 0A', 1)).toEqual(ofBytes('B8 04 03 0A'));
  });

  it('may be counted never, or not be counted', () => {
    expect(ofBytes('64 00 01 00')?.occurrences).toBe(0);
    expect(ofBytes('64 00 01 7E')?.occurrences).toBe(126);
    expect(ofBytes('64 00 01 7F')?.occurrences).toBeUndefined();
  });

  it('is the same after writing and reading, over the whole range', () => {
    const codes = fc.record({
      spn: fc.integer({ min: 1, max: 0x7fffe }),
      fmi: fc.nat({ max: 31 }),
      occurrences: fc.option(fc.nat({ max: 126 }), { nil: undefined }),
    });
    fc.assert(
      fc.property(codes, ({ spn, fmi, occurrences }) => {
        const data = Uint8Array.from(formatTroubleCode(spn, fmi, occurrences));
        expect(parseTroubleCode(data, 0)).toEqual({ spn: { kind: 'known', spn }, fmi, occurrences });
      }),
    );
  });

  it('that cannot be packed is refused', () => {
    expect(() => formatTroubleCode(0x80000, 3, 1)).toThrow('SPN goes to 524287');
    expect(() => formatTroubleCode(100, 32, 1)).toThrow(RangeError);
    expect(() => formatTroubleCode(100, 1, 128)).toThrow(RangeError);
    expect(() => formatTroubleCode(1.5, 1, 1)).toThrow(RangeError);
  });
});

describe('A diagnostic message', () => {
  it('without faults has none, in the way of today and in the older way', () => {
    expect(dm1('00 FF 00 00 00 00 FF FF')).toMatchObject({ lamps: ALL_OFF, faults: [], complete: true });
    expect(dm1('00 FF FF FF FF FF FF FF')).toMatchObject({ faults: [], complete: true });
  });

  it('of one frame has one fault and filler', () => {
    expect(dm1('10 3F 64 00 01 01 FF FF')).toEqual({
      active: true,
      source: 0,
      timeS: 5,
      lamps: {
        ...ALL_OFF,
        malfunction: { status: 'off', flash: 'slow' },
        redStop: { status: 'on', flash: 'none' },
      },
      faults: [{ spn: { kind: 'known', spn: 100 }, fmi: 1, occurrences: 1 }],
      complete: true,
    });
    expect(parseDiagnostics(DM2_PGN, 0, 5, hexData('00 FF 64 00 01 01 FF FF')).active).toBe(false);
  });

  it('that breaks off is not complete, so its silence about faults means nothing', () => {
    for (const text of ['', '04', '04 FF', '04 FF 64 00 01'])
      expect(dm1(text)).toMatchObject({ faults: [], complete: false });
    expect(dm1('')).toMatchObject({ lamps: { redStop: { status: 'notAvailable' } } });
    expect(dm1('04 FF 64 00 01 01 6E 00 00 02 9D')).toMatchObject({
      complete: false,
      faults: [{ fmi: 1 }, { fmi: 0 }],
    });
  });

  it('is the same after writing and reading, of any number of faults that can be sent', () => {
    const lamp = fc.record({
      status: fc.constantFrom<LampStatus>('off', 'on', 'reserved', 'notAvailable'),
      flash: fc.constantFrom<LampFlash>('slow', 'fast', 'reserved', 'none'),
    });
    const lamps = fc.record({ malfunction: lamp, redStop: lamp, amberWarning: lamp, protect: lamp });
    const fault = fc.record({
      spn: fc.integer({ min: 1, max: 0x7fffe }),
      fmi: fc.nat({ max: 31 }),
      occurrences: fc.nat({ max: 126 }),
    });
    fc.assert(
      fc.property(lamps, fc.array(fault, { maxLength: 445 }), (shown, faults) => {
        const data = formatDiagnostics(shown, faults);
        const read = parseDiagnostics(DM1_PGN, 0, 5, data);
        expect(read).toMatchObject({ lamps: shown, complete: true });
        expect(read.faults).toEqual(faults.map(one => ({ ...one, spn: { kind: 'known', spn: one.spn } })));
      }),
      { numRuns: 50 },
    );
  });
});
