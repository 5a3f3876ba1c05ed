import { describe, expect, it } from 'vitest';
import { DM1_PGN, DM2_PGN, parseDiagnostics } from '../../../src/bus/diagnostics/dm1.ts';
import { parseTroubleCode } from '../../../src/bus/diagnostics/trouble-code.ts';
import { parseCandumpLine } from '../../../src/bus/formats/candump.ts';
import { hexData } from '../hex-data.ts';
import { listen } from '../listen.ts';

const known = (spn: number, fmi: number, occurrences: number) => ({
  spn: { kind: 'known', spn },
  fmi,
  occurrences,
});

/** Unit tests of the J1939-84 test program of the Equipment and Tool Institute: DTCModuleTest, and that of DM28. */
describe('Another program reads the same faults', () => {
  it('in a DM1 with three faults and flashing lamps', () => {
    const read = parseDiagnostics(DM1_PGN, 0, 0, hexData('11 01 61 02 13 00 21 06 1F 00 EE 10 04 00'));
    expect(read).toMatchObject({
      complete: true,
      lamps: {
        malfunction: { status: 'off', flash: 'slow' },
        redStop: { status: 'on', flash: 'slow' },
        amberWarning: { status: 'off', flash: 'slow' },
        protect: { status: 'on', flash: 'fast' },
      },
      faults: [known(609, 19, 0), known(1569, 31, 0), known(4334, 4, 0)],
    });
  });

  it('in a message with one fault of the rail pressure and a lamp with a reserved state', () => {
    const read = parseDiagnostics(DM2_PGN, 0, 0, hexData('42 FD 9D 00 07 01 FF FF'));
    expect(read.faults).toEqual([known(157, 7, 1)]);
    expect(read.lamps).toMatchObject({
      malfunction: { status: 'on' },
      redStop: { status: 'off' },
      amberWarning: { status: 'off' },
      protect: { status: 'reserved' },
    });
  });
});

/** Tests of pretty_j1939 (National Motor Freight Traffic Association): a DM1 announced to all. */
it('A published log of a long DM1 gives its four faults', () => {
  const { decoder, diagnostics } = listen();
  const log = [
    '18ECFF00#20120003FFCAFE00',
    '18EBFF00#0100FF5B0003015C',
    '18EBFF00#020004025D000503',
    '18EBFF00#035E000604FFFFFF',
  ];
  for (const text of log) {
    const line = parseCandumpLine(`(0.0) can0 ${text}`);
    if (line.kind === 'frame') decoder.push(line.frame);
  }
  expect(diagnostics).toMatchObject([
    { source: 0, faults: [known(91, 3, 1), known(92, 4, 2), known(93, 5, 3), known(94, 6, 4)] },
  ]);
});

/** Sample log of pretty_j1939: a message to all and one to a single address, mixed. */
it('A published log of two mixed long messages gives both', () => {
  const { decoder, readings, failures } = listen();
  const log = `
(15.2000000838) can0 1CEC0049#10160004FFECFE00
(14.9447040558) can0 1CECFF00#20220005FFE3FE00
(15.2000000838) can0 1CEC4900#110401FFFFECFE00
(14.9946782589) can0 1CEBFF00#015014BB7A44B620
(15.2000000838) can0 1CEB0049#012334567890FF23
(15.2000000838) can0 1CEB0049#022334567890FF23
(15.2000000838) can0 1CEB0049#032334567890FF23
(15.0446825624) can0 1CEBFF00#021CD16022E1E02E
(15.0946809053) can0 1CEBFF00#03E1C044FFFF7509
(15.1446917653) can0 1CEBFF00#04C0440341DC7DE1
(15.1946859360) can0 1CEBFF00#057A440000FFFFFF
(15.2000000838) can0 1CEB0049#042334567890FF23
(15.2000000838) can0 1CEC4900#13160004FFECFE00`;
  for (const text of log.trim().split('\n')) {
    const line = parseCandumpLine(text);
    if (line.kind !== 'frame') throw new Error(`not a frame: ${text}`);
    decoder.push(line.frame);
  }
  decoder.tick(100);
  expect(failures).toEqual([]);
  // Engine configuration 1, bytes 50 14: 5200 eighths.
  expect(readings).toMatchObject([{ name: 'idleSpeedSetting', value: 650 }]);
});

/**
 * The three old methods as a generator controller's manual describes them (GSC400 user manual, appendix F) and a
 * gateway's (HMSI-168-25, tables 6-3 and 6-4): which bits of the number are in which byte. Both agree on the bytes.
 */
describe('The old ways to pack a fault number, by published descriptions', () => {
  const SPN = 0b101_1010_0110_1100_1001;
  const high = SPN >>> 11;
  const middle = (SPN >>> 3) & 0xff;
  const pack = (first: number, second: number, top: number) =>
    Uint8Array.of(first, second, (top << 5) | 4, 0x81);

  it('1: the upper 16 bits, highest byte first, then the lowest three', () => {
    expect(parseTroubleCode(pack(high, middle, SPN & 7), 0, 1)).toEqual(known(SPN, 4, 1));
  });
  it('2: the upper 16 bits, lowest byte first, then the lowest three', () => {
    expect(parseTroubleCode(pack(middle, high, SPN & 7), 0, 2)).toEqual(known(SPN, 4, 1));
  });
  it('3: lowest byte first, the highest three bits last', () => {
    expect(parseTroubleCode(pack(SPN & 0xff, (SPN >>> 8) & 0xff, SPN >>> 16), 0, 3)).toEqual(
      known(SPN, 4, 1),
    );
  });
});
