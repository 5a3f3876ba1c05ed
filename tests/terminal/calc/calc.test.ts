import { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { registerCalc } from '../../../src/terminal/calc/register.ts';
import { subjects } from '../../../src/terminal/calc/subjects/index.ts';

async function calc(line: string, files: Readonly<Record<string, string>> = {}) {
  const out: string[] = [];
  const err: string[] = [];
  let exitCode = 0;
  const program = new Command().exitOverride();
  registerCalc(program, {
    print: text => out.push(text),
    complain: text => err.push(text),
    setExitCode: code => {
      exitCode = code;
    },
    readFile: async path => files[path] ?? '',
    readStandardInput: async () => files['-'] ?? '',
  });
  await program.parseAsync(['calc', ...line.split(' ')], { from: 'user' });
  return { out: out.join('\n'), err: err.join('\n'), exitCode };
}

const jsonSchema = z.object({
  subject: z.string(),
  results: z.array(
    z.object({
      name: z.string(),
      value: z.union([z.number(), z.string()]),
      unit: z.string().optional(),
      limit: z.object({ min: z.number().optional(), max: z.number().optional() }).optional(),
      margin: z.number().optional(),
      marginUnit: z.string().optional(),
      met: z.boolean().optional(),
      rule: z.string().min(1),
      source: z.string().min(1),
      validity: z.string().min(1),
    }),
  ),
});

async function results(line: string, files: Readonly<Record<string, string>> = {}) {
  const { out, err, exitCode } = await calc(`${line} --json`, files);
  expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 });
  return jsonSchema.parse(JSON.parse(out)).results;
}

const WARMING = '0,10\n30,16\n60,22\n90,27\n120,32\n180,41\n240,49\n300,56\n';
const COOLING = '0,95\n120,92\n240,89\n360,87\n480,84\n600,82\n';
const STEADY = Array.from({ length: 21 }, (_, i) => `${i},${700 + (i % 3)}`).join('\n');
const SWEEP = '700,150\n1000,190\n1300,230\n1600,270\n1900,310\n2200,350\n';

/** Every subject with input that it can use, and the first line of its answer. */
const USABLE: readonly (readonly [string, string, Record<string, string>])[] = [
  ['coolant --low -30 --system 40', 'share of glycol by volume: ', {}],
  ['boil --cap 100 --share 0.5', 'boils at: ', {}],
  ['oil --grades 10W-30,15W-40 --low -22 --min-viscosity 9', '10W-30: suits', {}],
  [
    'oil --grades 15W-40 --low -10 --min-viscosity 9 --running 110 --v40 110 --v100 14.5',
    '15W-40: suits',
    {},
  ],
  ['viscosity --v40 110 --v100 14.5 --at -15', 'viscosity index: ', {}],
  ['fuel --low -18 --no1-cloud -40 --no2-cloud -9', 'No. 2 alone: below the cloud point', {}],
  ['fuel --low -18 --no1-cloud -40 --no2-cloud -9 --tank 200', 'No. 2 alone: below the cloud point', {}],
  ['priming --pump 0.03 --speed 180 --fill 4', 'pressure at the earliest after: ', {}],
  ['battery --temperature -10 --rest 12.4', 'state of charge, 0 to 1: ', {}],
  ['battery --temperature -10 --cranking 9.5 --charging 14.6', 'while cranking: 9.5 V, OK', {}],
  [
    'starter --ambient 10 --longest 15 --time-constant 120 --history crank:15,rest:30 --want 10',
    'windings now: ',
    {},
  ],
  ['heater --table=-20:30,0:10,20:0 --temperature -10 --lamp-on 25', 'lamp on for: 20 s', {}],
  ['idle --min 650 --max 750', 'idle: in range and steady', { '-': STEADY }],
  [
    'oilpressure --pressure 250 --speed 1000 --oil 90 --floor 700:80,1500:180',
    'oil pressure: 250 kPa, OK',
    {},
  ],
  ['sweep', 'oil pressure: rises with the speed', { '-': SWEEP }],
  ['fault --code 157/18', 'SPN: 157', {}],
  ['warmup --opens 82 --fully-open 95', 'warm-up: warming', { '-': WARMING }],
  ['heatsoak --coolant 92 --cap 100', 'hottest under the cap: 107 °C, OK', {}],
  ['cooldown --ambient 20', 'cool-down: cooling', { '-': COOLING }],
];

describe('npm start -- calc', () => {
  test.each(USABLE)('%s answers', async (line, begins, files) => {
    const { out, err, exitCode } = await calc(line, files);
    expect(out.slice(0, begins.length)).toBe(begins);
    expect(out).toContain('\nBy:\n');
    expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 });
  });

  test.each(USABLE)('%s --json gives every figure its rule and source', async (line, _, files) => {
    expect((await results(line, files)).length).toBeGreaterThan(0);
  });

  test('every subject is tried above', () => {
    const tried = new Set(USABLE.map(([line]) => line.split(' ')[0]));
    expect(subjects.map(({ name }) => name).filter(name => !tried.has(name))).toEqual([]);
  });

  test.each(subjects.filter(({ pairs }) => !pairs).map(({ name }) => name))(
    '%s without any input names what is missing, in one sentence',
    async name => {
      const { out, err, exitCode } = await calc(name);
      expect(out).toBe('');
      expect(err).toMatch(/^[^\n]* is missing[^\n]*\.$/);
      expect(exitCode).toBe(2);
    },
  );

  test('a broken limit is an answer, not an error', async () => {
    const [first] = await results('heatsoak --coolant 115 --cap 50');
    expect(first).toMatchObject({ value: 130, unit: '°C', met: false, marginUnit: 'K' });
    expect(first?.margin).toBeLessThan(0);
  });
});

describe('units', () => {
  test('US units go in and come out, with the same verdict', async () => {
    const metric = await results('heatsoak --coolant 92 --cap 100 --altitude 1524');
    const us = await results(
      'heatsoak --units us --coolant 197.6 --cap 14.50377 --altitude 5000 --rise 27 --margin 9',
    );
    expect(us[0]?.value).toBeCloseTo(224.6, 6);
    expect(us[0]?.limit?.max).toBeCloseTo((metric[0]?.limit?.max ?? 0) * 1.8 + 32, 4);
    expect(us[0]?.margin).toBeCloseTo((metric[0]?.margin ?? 0) * 1.8, 4);
    expect(us[0]).toMatchObject({ unit: '°F', marginUnit: '°F', met: true });
  });

  test.each(['1bar', '100 kPa', '14.503774psi'])(
    'a unit typed after the number is understood: %s',
    async cap => {
      const { out } = await calc(`boil --cap ${cap.replace(' ', '')}`);
      expect(out).toContain('boils at: 120.4 °C');
    },
  );

  test('litres and quarts', async () => {
    const line = 'coolant --low -30 --units us --system';
    const [fromLitres, fromQuarts] = [await results(`${line} 40l`), await results(`${line} 42.26752838`)];
    expect(fromQuarts.map(({ value }) => Number(value).toFixed(6))).toEqual(
      fromLitres.map(({ value }) => Number(value).toFixed(6)),
    );
  });
});

describe('input that cannot be used', () => {
  test.each([
    ['heatsoak --coolant hot --cap 1', '--coolant has to be a number in °C, not "hot".'],
    ['heatsoak --coolant 92psi --cap 1', '--coolant has to be a number in °C, not "92psi"; units: °C, °F.'],
    ['heatsoak --coolant 1e3 --cap 1', '--coolant has to be a number in °C, not "1e3"; units: °C, °F.'],
    ['heatsoak --coolant 92 --cap NaN', '--cap has to be a number in kPa, not "NaN".'],
    [
      'heatsoak --coolant 752F --cap 1',
      '--coolant (752F) is outside the range of the rule; allowed: -60 to 150 degC.',
    ],
    ['heatsoak --coolant -500 --cap 1', '--coolant has to be a number in °C that can be, not "-500".'],
    [
      'oil --grades 99X --low 0 --min-viscosity 9',
      '--grades (99X) is outside the range of the rule; allowed: SAE J300 grades such as 15W-40.',
    ],
    [
      'starter --history burn:5',
      '--history has to be bursts and rests such as crank:15,rest:60, not "burn:5".',
    ],
    ['oilpressure --floor 700', '--floor has to be pairs such as 700:80,1500:180, not "700".'],
    [
      'fault --code 15718',
      'fmi (15718) is missing; allowed: an SPN and an FMI with something between them, such as 157/18.',
    ],
  ])('%s', async (line, sentence) => {
    expect(await calc(line)).toEqual({ out: '', err: sentence, exitCode: 2 });
  });

  test.each([
    ['0,700\nx,5', 'speeds.csv, line 2, first number, has to be a number in s, not "x".'],
    ['0,700\n5', 'speeds.csv, line 2 has to be two numbers with a comma between them, not "5".'],
    ['0,700\n\n1,7,00', 'speeds.csv, line 3 has to be two numbers with a comma between them, not "1,7,00".'],
    ['# only a comment\n', 'speeds.csv holds no lines of two numbers with a comma between them.'],
    ['seconds,rpm\nseconds,rpm\n', 'speeds.csv holds no lines of two numbers with a comma between them.'],
  ])('a readings file names its line at fault (case %#)', async (text, sentence) => {
    expect(await calc('idle speeds.csv --min 650 --max 750', { 'speeds.csv': text })).toEqual({
      out: '',
      err: sentence,
      exitCode: 2,
    });
  });

  test('a heading, comments, empty lines and Windows line ends are no fault', async () => {
    const text = `\uFEFFseconds,rpm\r\n# first run\r\n\r\n${STEADY.replaceAll('\n', '\r\n')}\r\n`;
    expect((await calc('idle - --min 650 --max 750', { '-': text })).exitCode).toBe(0);
  });

  test('readings that run backwards are named', async () => {
    const { err } = await calc('idle --min 650 --max 750', { '-': '5,700\n4,700' });
    expect(err).toContain('speedRpm 2 timeS (4) contradicts another input');
  });
});
