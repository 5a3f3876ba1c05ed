import { describe, expect, it } from 'vitest';
import { encodeCanId } from '../../src/bus/can-id.ts';
import { MESSAGES } from '../../src/bus/messages.ts';
import { PARAMETERS } from '../../src/bus/parameters.ts';
import { hexData } from './hex-data.ts';
import { listen } from './listen.ts';
import { pgn61443 } from './pgns/61443.ts';
import { pgn61444 } from './pgns/61444.ts';
import { pgn65165 } from './pgns/65165.ts';
import { pgn65243 } from './pgns/65243.ts';
import { pgn65251 } from './pgns/65251.ts';
import { pgn65252 } from './pgns/65252.ts';
import { pgn65253 } from './pgns/65253.ts';
import { pgn65262 } from './pgns/65262.ts';
import { pgn65263 } from './pgns/65263.ts';
import { pgn65266 } from './pgns/65266.ts';
import { pgn65269 } from './pgns/65269.ts';
import { pgn65270 } from './pgns/65270.ts';
import { pgn65271 } from './pgns/65271.ts';
import { pgn65276 } from './pgns/65276.ts';
import { pgn65279 } from './pgns/65279.ts';

const ALL = [
  pgn61443,
  pgn61444,
  pgn65165,
  pgn65243,
  pgn65251,
  pgn65252,
  pgn65253,
  pgn65262,
  pgn65263,
  pgn65266,
  pgn65269,
  pgn65270,
  pgn65271,
  pgn65276,
  pgn65279,
];

describe.each(ALL)('Message $pgn', ({ pgn, cases }) => {
  it.each(cases)('$title', ({ data, readings }) => {
    const heard = listen();
    const id = encodeCanId({ priority: 6, pgn, source: 0, destination: 255 });
    heard.decoder.push({ timeS: 9, id, extended: true, remote: false, data: hexData(data) });
    const byName = new Map(heard.readings.map(reading => [reading.name, reading]));
    for (const [name, expected] of Object.entries(readings)) {
      const reading = byName.get(name) ?? expect.fail(`${name} was not read`);
      expect(reading).toMatchObject({ source: 0, timeS: 9 });
      if (typeof expected === 'string') expect([name, reading.kind]).toEqual([name, expected]);
      else expect(reading.kind === 'value' ? reading.value : reading.kind).toBeCloseTo(expected, 9);
    }
  });

  it('has cases of all ones and of errors for each of its parameters', () => {
    const names = PARAMETERS.filter(one => one.pgn === pgn).map(one => one.name);
    for (const kind of ['notAvailable', 'error'])
      expect(cases.some(one => names.every(name => one.readings[name] === kind))).toBe(true);
  });
});

describe('The table of messages', () => {
  it('has every message that carries a parameter, and a case file for each', () => {
    const carrying = [...new Set(PARAMETERS.map(({ pgn }) => pgn))].toSorted();
    expect(MESSAGES.map(({ pgn }) => pgn).toSorted()).toEqual(carrying);
    expect(ALL.map(({ pgn }) => pgn).toSorted()).toEqual(carrying);
  });

  it('names every parameter and its number once', () => {
    for (const key of ['spn', 'name'] as const)
      expect(new Set(PARAMETERS.map(one => one[key])).size).toBe(PARAMETERS.length);
  });

  it('puts no two parameters on the same bits', () => {
    for (const { pgn } of MESSAGES) {
      const taken = new Set<number>();
      for (const { startByte, startBit, bits } of PARAMETERS.filter(one => one.pgn === pgn))
        for (let bit = 0; bit < bits; bit += 1) {
          const at = (startByte - 1) * 8 + startBit - 1 + bit;
          expect(taken.has(at)).toBe(false);
          taken.add(at);
        }
    }
  });
});
