import { mkdtempSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { english } from '../../../prompts/en/index.ts';
import { accepting } from '../../../src/profile/accepting.ts';
import { demoProfiles, loadProfile } from '../../../src/profile/load.ts';
import { checkProfile } from '../../../src/terminal/engine/check.ts';
import { compareLines } from '../../../src/terminal/engine/compare.ts';
import { type TalkIo, wrapped } from '../../../src/terminal/engine/io.ts';
import { newEngine } from '../../../src/terminal/engine/new.ts';
import { answersPath, profileHash } from '../../../src/terminal/engine/profile-file.ts';
import { fieldsPage, jsonSchema, undocumented, unknownPaths } from '../../../src/terminal/engine/schema.ts';
import { showLines } from '../../../src/terminal/engine/show.ts';

const folder = () => mkdtempSync(join(tmpdir(), 'engine-'));

/** Somebody who types these lines, one after the other, and then nothing more. */
function typist(lines: readonly string[]) {
  const printed: string[] = [];
  const left = [...lines];
  const io: TalkIo = {
    ask: async () => {
      if (printed.at(-1)?.includes('Supervisor: your name')) return 'S. Visor';
      return left.shift() ?? null;
    },
    print: line => printed.push(line),
    close: () => {},
  };
  return { io, printed };
}

const usual = { all: false, again: [] };

/** What a person types who knows the plate, and takes the rest as it is put forward. */
const quick = [
  ...['', 'no', 'Bench engine', '', '4', '3.9', '2400'],
  // A vehicle with a dry exhaust, no after-treatment, and steering.
  ...['1', '', '', '', ''],
  ...['yes', '2', '', 'shut-off lever', '', '2700'],
  ...['', '', '1', '3', '', ''],
  ...['9.5', '15W-40', '2', '11', '', '', '', '', '', ''],
  ...['70', '1', '', '', '', '1'],
  ...Array.from({ length: 12 }, () => ''),
];

it('a line is broken between its words where the terminal is narrower', () => {
  expect(wrapped('    Why: it is so. Where: there.', 20)).toBe('    Why: it is so.\n    Where: there.');
  expect(wrapped('short', 20)).toBe('short');
  expect(wrapped('  abcdefghijklmnopqrstuvwxyz', 10)).toBe('  abcdefghijklmnopqrstuvwxyz');
  expect(wrapped('a b', Number.POSITIVE_INFINITY)).toBe('a b');
});

describe('an interview at the keys', () => {
  it('makes a profile that loads, says what is assumed, and keeps the answers beside it', async () => {
    const path = join(folder(), 'mine.json');
    const { io, printed } = typist(quick);
    expect(await newEngine(path, usual, io, english)).toBe(0);
    const profile = await loadProfile(path);
    expect(profile).toMatchObject({ name: 'Bench engine', invented: true, version: 1, heater: null });
    expect(profile.provenance['oil.capacityL']).toEqual({ from: 'manual' });
    expect(profile.provenance['starter.limitC']?.from).toBe('assumed');
    expect(printed.join('\n')).toMatch(/values are assumed/);
    expect(JSON.parse(await readFile(answersPath(path), 'utf8')).answers['oil.capacityL'].value).toBe(9.5);
  });

  it('that was left is gone on with where it was', async () => {
    const path = join(folder(), 'mine.json');
    expect(await newEngine(path, usual, typist([...quick.slice(0, 20), 'quit']).io, english)).toBe(4);
    await expect(loadProfile(path)).rejects.toThrow('cannot be read');
    const { io, printed } = typist(quick.slice(20));
    expect(await newEngine(path, usual, io, english)).toBe(0);
    expect(printed[0]).toMatch(/^Going on with 20 answers/);
  });

  it('goes back, explains, lists, and says what is wrong in a sentence', async () => {
    const path = join(folder(), 'mine.json');
    const { io, printed } = typist(['', 'no', 'A', '', 'six', '4', '?', '<', '6', 'list', 'quit']);
    expect(await newEngine(path, usual, io, english)).toBe(4);
    const said = printed.join('\n');
    expect(said).toContain('"six" is no number; write it in figures, such as 3.');
    expect(said).toContain('engine.displacementL: displacement.');
    expect(said).toContain('Cylinders: 6  [plate]');
  });

  it('of which one answer is given again raises the version', async () => {
    const path = join(folder(), 'mine.json');
    await newEngine(path, usual, typist(quick).io, english);
    expect(
      await newEngine(path, { all: false, again: ['oil.capacityL'] }, typist(['10 p 7']).io, english),
    ).toBe(0);
    const profile = await loadProfile(path);
    expect(profile).toMatchObject({ version: 2, oil: { capacityL: 10 } });
    expect(profile.provenance['oil.capacityL']).toEqual({ from: 'manual', page: '7' });
    await expect(newEngine(path, { all: false, again: ['colour'] }, typist([]).io, english)).rejects.toThrow(
      'is no question; without --again all answers are listed',
    );
  });

  it('tells every answer as it was understood, and goes back to any of them by its number', async () => {
    const path = join(folder(), 'mine.json');
    const { io, printed } = typist([
      'us',
      'no',
      'A',
      '',
      '6 cyl',
      '318 cu in p 3',
      '< 5',
      '',
      '< 9',
      '< 6',
      '',
      'quit',
    ]);
    expect(await newEngine(path, usual, io, english)).toBe(4);
    expect(printed).toContain('    = 6  [plate]');
    expect(printed).toContain('    = 318 cu in  [manual page 3]');
    expect(printed).toContain('    There is no answer 9; list shows them.');
    // What was answered before is put forward again, with where it came from.
    expect(printed).toContain('    Enter: 6, plate');
    expect(printed).toContain('    Enter: 318 cu in, manual page 3');
  });

  it('that is finished is gone over by the numbers of its answers, or left as it is', async () => {
    const path = join(folder(), 'mine.json');
    await newEngine(path, usual, typist(quick).io, english);
    const before = await readFile(path, 'utf8');
    const left = typist(['']);
    expect(await newEngine(path, usual, left.io, english)).toBe(0);
    expect(left.printed.at(-1)).toBe('Nothing was changed.');
    expect(await readFile(path, 'utf8')).toBe(before);

    const number = /^ *(\d+) {2}Oil with a new filter: 9.5 L/.exec(
      left.printed.join('\n').match(/.*Oil with a new.*/)?.[0] ?? '',
    );
    const { io, printed } = typist(['none', '99', `${number?.[1]}, 5`, '', '10.5']);
    expect(await newEngine(path, usual, io, english)).toBe(0);
    expect(printed.filter(line => line.startsWith('Give numbers from 1 to '))).toHaveLength(2);
    // Under the number that it was chosen by.
    expect(printed.find(line => line.endsWith('Cylinders'))).toMatch(/^5\/\d+ /);
    const profile = await loadProfile(path);
    expect(profile).toMatchObject({ version: 2, engine: { cylinders: 4 }, oil: { capacityL: 10.5 } });
  });

  it('does not write over a profile that it did not make', async () => {
    const path = join(folder(), 'mine.json');
    await writeFile(path, '{}');
    await expect(newEngine(path, usual, typist([]).io, english)).rejects.toThrow('is there already');
  });

  it('asks nothing where its answers could not be kept', async () => {
    const { io, printed } = typist(quick);
    await expect(newEngine(join(folder(), 'not there', 'mine.json'), usual, io, english)).rejects.toThrow(
      'choose a place that can be',
    );
    expect(printed).toEqual([]);
  });

  it('asks the supervisor of a real engine for a name, and says what has to be found', async () => {
    const path = join(folder(), 'mine.json');
    const real = quick.with(1, 'yes').with(quick.indexOf('2700'), '-');
    const { io, printed } = typist(real);
    expect(await newEngine(path, usual, io, english)).toBe(0);
    const profile = await loadProfile(path);
    expect(printed.join('\n')).toMatch(/Has to be read or measured.*overspeed/);
    expect(profile.provenance['starter.longestBurstS']).toMatchObject({
      from: 'assumed',
      acceptedBy: 'S. Visor',
    });
    const { lines, good } = checkProfile(profile, path, english);
    expect(good).toBe(false);
    expect(lines.join('\n')).toMatch(/overspeedRpm: .*has to be read or measured/);
  });
});

describe('a profile, shown', () => {
  it.each(demoProfiles)(
    'of %s has its values, its procedure, and limits at three temperatures',
    async name => {
      const profile = await loadProfile(name);
      const said = showLines(profile, { language: english, units: 'metric' }).join('\n');
      expect(said).toContain(profileHash(profile));
      expect(said).toContain(`oil with a new filter: ${profile.oil.capacityL} L`);
      expect(said).toContain('Crank for oil pressure');
      for (const airC of [-20, 5, 30]) expect(said).toContain(`Limits at ${airC} °C`);
      expect(said.replace(/SHA-256 .*/, '')).not.toMatch(/undefined|NaN|\[object|[a-z][A-Z]|\d{6}/);
    },
  );

  it('of figures in the units of who reads it, in three figures where they were converted', async () => {
    const six = await loadProfile('demo-six');
    const inUs = showLines(six, { language: english, units: 'us' }).join('\n');
    // 24 L over 0.946353 L, 100 kPa over 6.894757 kPa: NIST SP 811 (2008), appendix B.8.
    for (const line of [
      'coolant in the whole system: 25.4 qt',
      'pressure of the radiator cap: 14.5 psi',
      'opening of the thermostat: 180 °F',
      'least glycol allowed: 40 %',
      'warm idle: 650-850 rpm',
      'oil grades allowed: 15W-40 (110/14.5 mm2/s), 5W-40 (90/14.2 mm2/s)',
      'fuel filters and how they are fitted: filled with clean fuel first; dry',
      'Limits at -4 °F, with a night of -13 °F, at sea level',
    ])
      expect(inUs).toContain(line);
    expect(inUs.replace(/displacement: .*/, '')).not.toMatch(/ (L|kPa|bar|°C)\b/);
  });
});

it('two profiles differ in what differs, and in nothing else', async () => {
  const [six, four] = [await loadProfile('demo-six'), await loadProfile('demo-four')];
  const reader = { language: english, units: 'metric' } as const;
  expect(compareLines(six, six, reader)).toEqual(['All values are the same.']);
  expect(compareLines(six, four, reader)).toContain('oil with a new filter: 15 L | 9.5 L');
  expect(compareLines(six, { ...six, overspeedRpm: 3000 }, reader)).toEqual([
    'overspeed: not said | 3000 rpm',
  ]);
});

it('the hash is of what a profile says, not of how its file is laid out', async () => {
  const six = await loadProfile('demo-six');
  const other = Object.fromEntries(Object.entries(six).reverse());
  expect(profileHash({ ...six, ...other })).toBe(profileHash(six));
  expect(profileHash({ ...six, $schema: 'elsewhere' })).toBe(profileHash(six));
  expect(profileHash({ ...six, version: 2 })).not.toBe(profileHash(six));
});

it('what is accepted by name is only what is assumed', async () => {
  const six = await loadProfile('demo-six');
  const profile = { ...six, provenance: { 'idle.cold': { from: 'manual' as const } } };
  expect(accepting(profile, 'idle', 'S. Visor').provenance).toEqual({
    'idle.cold': { from: 'manual' },
    'idle.warm': { from: 'assumed', acceptedBy: 'S. Visor' },
  });
});

describe('what is published of the schema', () => {
  it('says of every field what it is, why it matters, and where it is found', () => {
    expect(undocumented()).toEqual([]);
    expect(unknownPaths()).toEqual([]);
  });

  it.each([
    ['docs/engine-profile.schema.json', () => `${JSON.stringify(jsonSchema(), null, 2)}\n`],
    ['docs/engine-profile.md', fieldsPage],
  ])('lies in %s as it is now (npm start -- engine schema --write)', async (path, made) => {
    expect(await readFile(path, 'utf8')).toBe(made());
  });
});
