import { describe, expect, it } from 'vitest';
import { kindOf, readRaw } from '../../../src/bus/parameter-codec.ts';
import { PARAMETERS } from '../../../src/bus/parameters.ts';
import { hexData } from '../hex-data.ts';

/**
 * Raw bytes and the values that another program reads in them: freeze frame of DM25 in the unit tests of the
 * J1939-84 test program of the Equipment and Tool Institute (Part03Step13ControllerTest, 2021). Rail pressure is in MPa there.
 */
const FREEZE_FRAME: readonly (readonly [spn: number, raw: string, value: number])[] = [
  [91, '19', 10],
  [92, '0A', 10],
  [94, 'AF', 700],
  [96, '9E', 63.2],
  [102, '00', 0],
  [105, '56', 46],
  [106, '1F', 62],
  [108, 'CB', 101.5],
  [110, '62', 58],
  [157, '0F 3C', 60058.594],
  [158, '15 01', 13.85],
  [168, '15 01', 13.85],
  [171, 'C6 24', 21.1875],
  [175, '7C 29', 58.875],
  [183, '30 00', 2.4],
  [188, '50 14', 650],
  [190, '54 14', 650.5],
  [247, 'C6 02 00 00', 35.5],
];

/**
 * Resolution and offset of the others: SPN table of a public J1939 gateway program (buslab-socket_full-php,
 * src/Utils/J1939/SPN.php), each entry with its unit and range; 174: J1939db.json of
 * pretty_j1939, from a published data mapping paper.
 */
const RESOLUTIONS: readonly (readonly [spn: number, resolution: number, offset: number])[] = [
  [38, 0.4, 0],
  [98, 0.4, 0],
  [100, 4, 0],
  [101, 0.0078125, -250],
  [109, 2, 0],
  [111, 0.4, 0],
  [114, 1, -125],
  [115, 1, 0],
  [167, 0.05, 0],
  [174, 1, -40],
];

/**
 * Where each lies, bytes and bits from 0. FMS: description of the FMS standard 05 as tabulated in a public reader.
 * Canboat: field definitions of that marine project for J1939 groups. Tables: j1939tbl.c of 2015, public domain.
 * The last has some rows that contradict each other; those are left out, and so are rows of the first that do.
 */
const POSITIONS: readonly (readonly [
  spn: number,
  pgn: number,
  byte: number,
  bit: number,
  bits: number,
  from: string,
])[] = [
  [190, 61444, 3, 0, 16, 'FMS'],
  [91, 61443, 1, 0, 8, 'FMS'],
  [92, 61443, 2, 0, 8, 'FMS'],
  [96, 65276, 1, 0, 8, 'FMS'],
  [97, 65279, 0, 0, 2, 'FMS'],
  [105, 65270, 2, 0, 8, 'FMS, Canboat'],
  [106, 65270, 3, 0, 8, 'FMS, Canboat'],
  [108, 65269, 0, 0, 8, 'FMS, Canboat'],
  [110, 65262, 0, 0, 8, 'FMS, Canboat'],
  [171, 65269, 3, 0, 16, 'FMS'],
  [174, 65262, 1, 0, 8, 'FMS'],
  [175, 65262, 2, 0, 16, 'FMS'],
  [183, 65266, 0, 0, 16, 'FMS'],
  [168, 65271, 4, 0, 16, 'FMS, Canboat'],
  [247, 65253, 0, 0, 32, 'FMS'],
  [157, 65243, 2, 0, 16, 'Canboat'],
  [100, 65263, 3, 0, 8, 'J1939db.json of pretty_j1939, from a published data mapping paper'],
  [114, 65271, 0, 0, 8, 'Tables'],
  [115, 65271, 1, 0, 8, 'Tables'],
  [1081, 65252, 3, 0, 2, 'Tables'],
  [1110, 65252, 4, 0, 2, 'Tables'],
  [1109, 65252, 4, 2, 2, 'Tables'],
  [1675, 61444, 6, 0, 4, 'Tables'],
];

const parameter = (spn: number) =>
  PARAMETERS.find(one => one.spn === spn) ?? expect.fail(`SPN ${spn} is missing`);

describe('As others have published', () => {
  it.each(FREEZE_FRAME)('SPN %d of raw %s is %d', (spn, text, value) => {
    const definition = { ...parameter(spn), startByte: 1 };
    const raw = readRaw(definition, hexData(text));
    expect(definition.bits / 8).toBe(hexData(text).length);
    expect(kindOf(definition, raw)).toBe('value');
    // Published to six decimals, of MPa for the rail.
    expect(raw * definition.scale + definition.offset).toBeCloseTo(value, 3);
  });

  it.each(RESOLUTIONS)('SPN %d has %d for each bit and begins at %d', (spn, scale, offset) => {
    expect(parameter(spn)).toMatchObject({ scale, offset });
  });

  it.each(POSITIONS)(
    'SPN %d lies in group %d at byte %d, bit %d, %d bits (%s)',
    (spn, pgn, byte, bit, bits) => {
      expect(parameter(spn)).toMatchObject({ pgn, startByte: byte + 1, startBit: bit + 1, bits });
    },
  );

  it('every parameter but two is checked for its scale, and all but a named few for its place', () => {
    const states = PARAMETERS.filter(one => one.unit === 'state').map(one => one.spn);
    const scaled = new Set([...FREEZE_FRAME, ...RESOLUTIONS].map(([spn]) => spn));
    const placed = new Set(POSITIONS.map(([spn]) => spn));
    const spns = PARAMETERS.map(one => one.spn);
    expect(spns.filter(spn => !scaled.has(spn) && !states.includes(spn)).toSorted()).toEqual(
      [172, 444].toSorted(),
    );
    // From memory alone.
    const unplaced = [38, 94, 98, 101, 102, 109, 111, 158, 167, 172, 188, 444];
    expect(spns.filter(spn => !placed.has(spn)).toSorted()).toEqual(unplaced.toSorted());
  });
});
