import { describe, expect, it } from 'vitest';
import { buildFirstStart } from '../../machines/first-start.ts';
import { english } from '../../prompts/en/index.ts';
import { buildProfile, profileData } from '../../src/interview/build.ts';
import {
  type Answers,
  answerTyped,
  draftOf,
  fillIn,
  keptSchema,
  nextQuestion,
  progressOf,
  withAnswer,
} from '../../src/interview/interview.ts';
import type { QuestionId, Value } from '../../src/interview/question.ts';
import { questionOf, questions } from '../../src/interview/questions/index.ts';
import { readTyped, showValue } from '../../src/interview/typed.ts';
import { fields } from '../../src/profile/fields.ts';
import { ProfileError, parseProfile } from '../../src/profile/parse.ts';
import { profileSchema } from '../../src/profile/schema.ts';
import { seeded } from '../../src/rehearsal/random.ts';
import { broken } from './broken.ts';
import { randomInterview } from './random-interview.ts';

const typed = (id: QuestionId, text: string, units: 'metric' | 'si' | 'us' = 'metric') =>
  readTyped(text, questionOf(id), units);
const valueIn = (id: QuestionId, text: string, units: 'metric' | 'si' | 'us' = 'metric'): Value => {
  const read = typed(id, text, units);
  if (!read.ok) throw new Error(read.sentence);
  return read.value;
};
const faultOf = (id: QuestionId, text: string, units: 'metric' | 'si' | 'us' = 'metric'): string => {
  const read = typed(id, text, units);
  return read.ok ? '' : read.sentence;
};

/** With these answers before it. */
const known = (values: Readonly<Partial<Record<QuestionId, Value>>>): Answers =>
  Object.fromEntries(
    Object.entries(values).map(([id, value]) => [id, { value, origin: { from: 'manual' } }]),
  );

describe('a number that is not allowed', () => {
  it('is told with the limits in the units of the manual, those that hang on other answers as well', () => {
    const us = known({ units: 'us', 'engine.cylinders': 6, 'engine.displacementL': 6 });
    const told = (id: QuestionId, text: string) => {
      const read = answerTyped(text, questionOf(id), us);
      return read.ok ? '' : read.sentence;
    };
    expect(told('engine.displacementL', '6')).toMatch(/cu in/);
    expect(told('engine.displacementL', '40')).toBe('6 cylinders make from 54.9 cu in to 2930 cu in.');
    expect(told('oil.capacityL', '90')).toMatch(
      /of an engine of 366\.\d cu in has to be from .* qt to .* qt\.$/,
    );
  });
});

describe('what is typed', () => {
  it('is taken in the units of the manual, or in those that are typed', () => {
    expect(valueIn('oil.capacityL', '15')).toBe(15);
    expect(valueIn('oil.capacityL', '15', 'us')).toBeCloseTo(14.195, 3);
    expect(valueIn('oil.capacityL', '16 qt')).toBeCloseTo(15.1416, 4);
    expect(valueIn('oil.capacityL', '3.5 gal', 'us')).toBeCloseTo(13.249, 3);
    expect(valueIn('fuel.tankL', '50', 'us')).toBeCloseTo(189.27, 2);
    expect(valueIn('floorIdleKpa', '1,2')).toBeCloseTo(120);
    expect(valueIn('floorIdleKpa', '120', 'si')).toBe(120);
    expect(valueIn('floorIdleKpa', '15 psi')).toBeCloseTo(103.42, 2);
    expect(valueIn('thermostat.opensC', '180 F')).toBeCloseTo(82.22, 2);
    expect(valueIn('engine.displacementL', '359 cu in')).toBeCloseTo(5.883, 3);
    expect(valueIn('engine.displacementL', '5900 cc')).toBeCloseTo(5.9);
    // Nobody who chose US units is asked for litres.
    expect(valueIn('engine.displacementL', '359', 'us')).toBeCloseTo(5.883, 3);
    expect(valueIn('engine.displacementL', '5.9 L', 'us')).toBeCloseTo(5.9);
    expect(valueIn('starter.minRestS', '2 min')).toBe(120);
    expect(valueIn('ratedRpm', '2,200 rpm')).toBe(2200);
    expect(valueIn('coolantMix', '40-60 %')).toEqual([0.4, 0.6]);
    expect(valueIn('idle.warm', '650 to 750')).toEqual([650, 750]);
    expect(valueIn('idle.warm', '650-750 rpm')).toEqual([650, 750]);
  });

  it('is shown as it was meant, nought as nought', () => {
    const nought = valueIn('heaterWaitAtC', '0 F', 'us');
    expect(showValue(nought, questionOf('heaterWaitAtC'), 'us', english)).toBe('0 °F');
  });

  it('may say behind a value where it comes from', () => {
    expect(typed('oil.capacityL', '15 L p 12')).toMatchObject({
      value: 15,
      origin: { from: 'manual', page: '12' },
    });
    expect(typed('oil.capacityL', '15 page 3-14')).toMatchObject({
      origin: { from: 'manual', page: '3-14' },
    });
    expect(typed('starter.crankingRpm', '165 measured')).toMatchObject({
      value: 165,
      origin: { from: 'measured' },
    });
    expect(typed('starter.crankingRpm', '165 assumed')).toMatchObject({ origin: { from: 'assumed' } });
    expect(typed('engine.cylinders', '6')).toMatchObject({ origin: { from: 'plate' } });
    expect(typed('turbo', 'yes')).toMatchObject({ origin: { from: 'seen' } });
    expect(typed('cutOff', 'air flap at the intake; page 9')).toMatchObject({
      value: 'air flap at the intake',
      origin: { from: 'manual', page: '9' },
    });
    expect(typed('engine.name', 'Model P 12')).toMatchObject({
      value: 'Model P 12',
      origin: { from: 'plate' },
    });
  });

  it('asks whether the end of a name is its source, and takes it for one only apart from it', () => {
    expect(faultOf('engine.name', 'IE-5.2T plate')).toMatch(/"IE-5.2T, plate" or "IE-5.2T plate, manual"/);
    for (const text of ['lever at the pump plate', 'lever at the pump p 5'])
      expect(faultOf('cutOff', text)).toMatch(
        /^"(plate|p 5)" may be where it comes from, .*"lever at the pump, /,
      );
    expect(faultOf('sensors', 'oil pressure, boost plate')).toMatch(/"oil pressure, boost, plate"/);
    expect(typed('sensors', 'oil pressure, boost, p 5')).toMatchObject({
      value: ['oil pressure', 'boost'],
      origin: { from: 'manual', page: '5' },
    });
    expect(valueIn('sensors', 'oil pressure and coolant temperature')).toHaveLength(2);
    // Why it cannot be called so comes before where its source goes.
    expect(faultOf('cutOff', 'stop lever p 6')).toMatch(/stops the session/);
    expect(typed('cutOff', 'flap behind the cover plate, measured')).toMatchObject({
      value: 'flap behind the cover plate',
      origin: { from: 'measured' },
    });
  });

  it('is a source alone where what is put forward stands there too', () => {
    const proposal = { value: 'ethylene', origin: { from: 'assumed' } } as const;
    const confirmed = (text: string, put?: typeof proposal) =>
      answerTyped(text, questionOf('coolant.kind'), {}, put);
    expect(confirmed('p 4', proposal)).toEqual({
      ok: true,
      value: 'ethylene',
      origin: { from: 'manual', page: '4' },
    });
    expect(confirmed('manual', proposal)).toMatchObject({ ok: true, origin: { from: 'manual' } });
    expect(confirmed('p 4')).toMatchObject({ ok: false });
    expect(confirmed('propylene', proposal)).toMatchObject({ ok: true, value: 'propylene' });
  });

  it('chooses by number or by the word, and a word goes before its number', () => {
    expect(valueIn('systemVoltage', '24')).toBe('24');
    expect(valueIn('systemVoltage', '1')).toBe('12');
    expect(valueIn('heaterKind', '3')).toBe('glow');
    expect(valueIn('heaterKind', 'glow')).toBe('glow');
    for (const text of ['12 volt', '12V', '12 v']) expect(valueIn('systemVoltage', text)).toBe('12');
    expect(valueIn('coolant.kind', 'ethylene glycol')).toBe('ethylene');
    expect(valueIn('use', 'tractor')).toBe('vehicle');
    expect(valueIn('firstFilter', 'fitted dry')).toBe('dry');
    expect(valueIn('fuel.primer.kind', 'by hand')).toBe('hand');
    expect(faultOf('firstFilter', 'not dry')).toMatch(/none of these/);
    expect(faultOf('fuelling.disabledBy', 'mechanical')).toBe(
      '"mechanical" may be 2, 3, 4; give the number.',
    );
    expect(faultOf('use', 'sawmill')).toMatch(/none of these; give its number, 1 to 4/);
    expect(valueIn('engine.cylinders', '4 cyl')).toBe(4);
    expect(valueIn('turbo', 'Y')).toBe(true);
    expect(valueIn('prelube', 'none')).toBe(null);
  });

  it('takes no band of idle that hardly a reading lies in', () => {
    const check = (id: QuestionId, range: readonly [number, number]) =>
      questionOf(id).check?.(range, { ratedRpm: 2400, 'idle.warm': [700, 800] }) ?? null;
    expect(check('idle.warm', [700, 719])).toMatch(/20 rpm from end to end/);
    expect(check('idle.warm', [700, 720])).toBeNull();
    expect(check('idle.cold', [800, 819])).toMatch(/20 rpm from end to end/);
  });

  it('names oil for some nights only, in the units of the manual', () => {
    expect(valueIn('oil.grades', '15W-40, 10W-30 below 0 F', 'us')).toMatchObject([
      { grade: '15W-40' },
      { grade: '10W-30', nightsToC: expect.closeTo(-17.78, 2) },
    ]);
    expect(valueIn('oil.grades', '15W-40 110/14.5 above -10')).toEqual([
      { grade: '15W-40', viscosity40Mm2S: 110, viscosity100Mm2S: 14.5, nightsFromC: -10 },
    ]);
    expect(valueIn('oil.grades', 'SAE 15W-40 all year; 10W-30 below 0 °F', 'us')).toMatchObject([
      { grade: '15W-40' },
      { grade: '10W-30', nightsToC: expect.closeTo(-17.78, 2) },
    ]);
    expect(faultOf('oil.grades', '10W-30 below 90')).toBe('90 °C is not allowed; from -60 °C to 50 °C is.');
    expect(faultOf('oil.grades', '10W-30 below zero')).toMatch(/is no number/);
  });

  it('names oil by its grade, with its data sheet or the usual one', () => {
    expect(valueIn('oil.grades', '15w40, 5W-30 66/11.4')).toEqual([
      { grade: '15W-40', viscosity40Mm2S: 109, viscosity100Mm2S: 14.4 },
      { grade: '5W-30', viscosity40Mm2S: 66, viscosity100Mm2S: 11.4 },
    ]);
  });

  it.each<readonly [QuestionId, string, RegExp]>([
    ['oil.capacityL', 'much', /"much" is no number.*12 L/],
    ['oil.capacityL', '15 bar', /"bar" is no unit here; allowed: L, qt, gal/],
    ['oil.capacityL', '0.2', /0\.2 is not allowed; from 1 L to 300 L is/],
    ['oil.capacityL', '1,500', /may mean two things/],
    ['engine.cylinders', '5.5', /whole number/],
    ['engine.cylinders', '99999', /^99999 is not allowed; from 1 to 24 is/],
    ['engine.cylinders', '6 L', /"L" is no unit here; give the bare number/],
    ['idle.warm', '700', /one number; give two numbers, such as 650-750 rpm/],
    ['idle.warm', '900-700', /first has to be below the second/],
    ['idle.warm', '700-9000', /9000 rpm is not allowed/],
    ['systemVoltage', '48', /none of these; give its number, 1 to 2/],
    ['turbo', 'perhaps', /answer yes or no/],
    ['oil.grades', '30', /"30" is no grade/],
    ['oil.grades', '15W-41', /no multigrade of SAE J300/],
    ['oil.grades', '15W-40 110/9', /from 12\.5 up to 16\.3/],
    ['sensors', ' , ', /Name at least one/],
    ['cutOff', 'x'.repeat(61), /61 letters long; 60 are allowed/],
    ['oilPressure.reliefKpa', '13', /from 1 bar to 10 bar is: no relief valve of a diesel opens later/],
    [
      'starter.timeConstantS',
      '55 min',
      /from 60 s to 1200 s is: a starter that has cranked is cool after minutes/,
    ],
    ['starter.ratedAmbientC', '-9', /from 10 °C to 50 °C is: a limit for a frosty day/],
    ['charging.minStateOfCharge', '90', /from 50 % to 75 % is: .*a good one that has cranked shows no more/],
  ])('that cannot be, as %s = "%s", gets a sentence with what is allowed', (id, text, says) => {
    const sentence = faultOf(id, text);
    expect(sentence).toMatch(says);
    expect(sentence).toMatch(/^\S.*\.$/);
  });
});

describe('what stands against what was said before', () => {
  it.each<readonly [QuestionId, string, Readonly<Partial<Record<QuestionId, Value>>>, RegExp]>([
    ['engine.displacementL', '100', { 'engine.cylinders': 4 }, /4 cylinders make from 0\.6 L to 32 L\./],
    ['overspeedRpm', '2200', { ratedRpm: 2200 }, /above 2200 rpm, as the rated speed is 2200/],
    ['idle.warm', '900-1300', { ratedRpm: 1500 }, /no room for sweeps/],
    ['idle.cold', '500-900', { 'idle.warm': [650, 750] }, /no slower than a warm one; allowed: from 650/],
    ['idle.cold', '700-1400', { 'idle.warm': [650, 750] }, /from 750 to 1125 rpm/],
    ['floorRatedKpa', '1', { floorIdleKpa: 150 }, /above 1\.5 bar, as that at idle is 1\.5 bar/],
    ['oil.capacityL', '60', { 'engine.displacementL': 6 }, /of 6 L has to be from 4\.2 L to 36 L/],
    [
      'thermostat.fullyOpenC',
      '86',
      { 'thermostat.opensC': 82 },
      /from 87 °C to 107 °C: a thermostat opens over 5 K to 25 K/,
    ],
    ['thermostat.fullyOpenC', '99', { 'thermostat.opensC': 60.7 }, /from 65\.7 °C to 85\.7 °C/],
    [
      'floorRatedKpa',
      '7',
      { 'idle.warm': [600, 850], ratedRpm: 1720, floorIdleKpa: 100 },
      /no relief valve leaves room for the sweeps; allowed: .* bar or less/,
    ],
    ['coolant.capPressureKpa', '0', { 'thermostat.opensC': 95 }, /would boil.*allowed: a cap of .* or more/],
    ['firstFilter', 'preFilled', { filterCount: '1' }, /unfiltered; allowed: dry/],
    ['lamps', 'oil pressure', { heaterKind: 'glow' }, /waited for by a lamp/],
    ['sensors', 'oil level, Oil Level', {}, /stands there twice/],
    [
      'oilPressure.showsKpa',
      '2.6',
      { floorIdleKpa: 100, floorRatedKpa: 370 },
      /at idle; allowed: 1 bar or less/,
    ],
    [
      'oilPressure.showsKpa',
      '1',
      { use: 'generator', ratedRpm: 1500, fixedSpeedRpm: true, floorRatedKpa: 150 },
      /allowed: 0\.75 bar or less/,
    ],
    [
      'oilPressure.gaugeMaxKpa',
      '6.7',
      { 'oilPressure.reliefKpa': 666 },
      /has to reach .*allowed: 6\.76 bar or more/,
    ],
    [
      'oil.minRunningViscosityMm2S',
      '9.3',
      {
        'oil.grades': [{ grade: '5W-30', viscosity40Mm2S: 68, viscosity100Mm2S: 10.9 }],
        'oil.runningC': 143,
      },
      /No grade that is allowed is so thick at 143 °C; allowed: 5 mm2\/s or less\./,
    ],
  ])('%s = "%s" is refused in a sentence', (id, text, values, says) => {
    const read = answerTyped(text, questionOf(id), known(values));
    expect(read.ok ? '' : read.sentence).toMatch(says);
  });

  it('is asked again when an answer before it changes', () => {
    let answers = known({
      units: 'metric',
      real: false,
      name: 'A',
      'engine.name': 'A',
      'engine.cylinders': 4,
    });
    answers = withAnswer(answers, 'engine.displacementL', { value: 2, origin: { from: 'plate' } });
    expect(nextQuestion(answers)?.question.id).toBe('ratedRpm');
    answers = withAnswer(answers, 'engine.cylinders', { value: 24, origin: { from: 'plate' } });
    expect(nextQuestion(answers)).toMatchObject({
      question: { id: 'engine.displacementL' },
      fault: expect.stringContaining('24 cylinders'),
    });
  });

  it('goes with what it hung on', () => {
    let answers = known({ filterCount: '2', secondFilter: 'dry' });
    answers = withAnswer(answers, 'filterCount', { value: '1', origin: { from: 'manual' } });
    expect(answers.secondFilter).toBeUndefined();
  });
});

describe('what is put forward', () => {
  it('is as certain as what it was worked out from', () => {
    const warm = (from: 'manual' | 'assumed') => ({
      ...known({ ratedRpm: 2200, floorIdleKpa: 100, floorRatedKpa: 300 }),
      'idle.warm': { value: [650, 750] as const, origin: { from } },
      'oilPressure.reliefKpa': { value: 600, origin: { from: 'manual' as const } },
    });
    expect(fillIn(warm('manual')).answers['warmUp.fastIdleRpm']?.origin.from).toBe('computed');
    expect(fillIn(warm('assumed')).answers['warmUp.fastIdleRpm']?.origin.from).toBe('assumed');
  });
});

it('at most 60 questions are asked of anybody', () => {
  for (let seed = 1; seed <= 20; seed += 1)
    expect(progressOf(randomInterview(seed)).all).toBeLessThanOrEqual(60);
});

it('every question says why it is asked and where the answer is found, and what it settles is a value', () => {
  for (const { fields: settled, why, where } of questions) {
    if (settled.length === 0) expect([why, where].every(text => text !== undefined)).toBe(true);
    for (const path of settled) expect(fields).toHaveProperty([path]);
  }
});

it('what is kept of an interview reads back as it was', () => {
  const answers = randomInterview(3);
  const kept = JSON.parse(JSON.stringify({ schema: 'first-fire-interview/1', answers }));
  expect(keptSchema.parse(kept).answers).toEqual(answers);
});

/** The command for a thousand of them, rehearsed too, is `npm run random-profiles`. */
const SEEDS = Array.from({ length: 30 }, (_, index) => index + 1);

const has = (data: unknown, path: string) =>
  path.split('.').reduce<unknown>((at, key) => Reflect.get(Object(at), key), data) !== undefined;

describe('whatever is answered', () => {
  it('makes a profile that loads, with an origin for each of its values, and a machine whose gates hold', () => {
    for (const seed of SEEDS) {
      const answers = randomInterview(seed, seed % 3 === 0);
      const data = profileData(answers);
      const parsed = profileSchema.safeParse(data);
      expect([seed, parsed.error?.issues ?? []]).toEqual([seed, []]);
      if (!parsed.success) continue;
      buildFirstStart(parsed.data);
      const without = Object.keys(fields).filter(
        path => !Object.hasOwn(parsed.data.provenance, path) && has(data, path),
      );
      expect([seed, without]).toEqual([seed, []]);
    }
  });

  it('is what the profile says', () => {
    const answers = randomInterview(7);
    const profile = buildProfile(answers);
    const draft = draftOf(answers);
    expect(profile.oil.capacityL).toBe(draft['oil.capacityL']);
    expect(profile.cutOff?.at).toBe(draft.cutOff);
    expect([profile.idle.warm.minRpm, profile.idle.warm.maxRpm]).toEqual(draft['idle.warm']);
    expect(profile.invented).toBe(draft.real !== true);
  });
});

it('a profile with one thing broken gets a sentence that names the field', () => {
  const engines = [1, 2, 5].map(seed => profileData(randomInterview(seed)));
  for (let seed = 1; seed <= 100; seed += 1) {
    const { text, field } = broken(engines[seed % engines.length], seeded(seed, 'broken'));
    let faults: readonly string[] = [];
    try {
      parseProfile(text, 'broken');
    } catch (error) {
      if (!(error instanceof ProfileError)) throw error;
      faults = error.faults;
    }
    expect([seed, field, faults.some(fault => fault.includes(field))]).toEqual([seed, field, true]);
  }
});
