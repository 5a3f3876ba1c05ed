import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grammar, Heard, NumberSlot } from '../../../src/voice/ports.ts';
import { createTypedRecognizer } from '../../../src/voice/recognizers/typed.ts';
import { grammar, recognizerContract } from './contract.ts';

recognizerContract('typed', async () => {
  const recognizer = createTypedRecognizer();
  return { recognizer, say: async text => recognizer.type(text) };
});

const temperature: NumberSlot = {
  id: 'coolantTemperature',
  leads: ['coolant'],
  units: ['degrees'],
  writtenUnits: ['°F'],
  min: -40,
  max: 120,
  step: 0.5,
};

function typed(line: string, asked: Grammar = { ...grammar, number: temperature }): readonly Heard[] {
  const recognizer = createTypedRecognizer();
  const reports: Heard[] = [];
  recognizer.listen(asked);
  recognizer.onHeard(heard => reports.push(heard));
  recognizer.type(line);
  return reports;
}

const withSlot = (changes: Partial<NumberSlot>): Grammar => ({
  ...grammar,
  number: { ...temperature, ...changes },
});

describe('a typed line', () => {
  it.each([
    ['42', 42],
    ['42.0', 42],
    ['42.5', 42.5],
    ['42.50', 42.5],
    ['.5', 0.5],
    ['-5', -5],
    ['−5', -5],
    ['+5', 5],
    ['minus 5', -5],
    ['-12.5', -12.5],
    ['coolant 85 degrees', 85],
    ['42.3', 42.3],
    ['10,4', 10.4],
    ['41°F', 41],
    ['41 f', 41],
    ['10.4°f', 10.4],
    ['85 degree', 85],
    ['Coolant -5', -5],
    ['forty-two point five', 42.5],
    ['MINUS FIVE', -5],
    ['eight five', 85],
    ['  85  ', 85],
  ])('"%s" is the number %d', (line, value) => {
    expect(typed(line)).toEqual([
      { kind: 'number', id: 'coolantTemperature', value, text: line.trim(), confidence: 1 },
    ]);
  });

  it('is any value of the slot, in figures', () => {
    fc.assert(
      fc.property(fc.integer({ min: -80, max: 240 }), fc.constantFrom(0, 1, 2, 3), (halves, decimals) => {
        const value = halves / 2;
        const figures = Number.isInteger(value)
          ? value.toFixed(decimals)
          : value.toFixed(Math.max(1, decimals));
        expect(typed(figures)).toMatchObject([{ kind: 'number', value: value === 0 ? 0 : value }]);
      }),
    );
  });

  it.each([
    ['42.0001', 'finer than any gauge'],
    ['42 43', 'two numbers'],
    ['4 2', 'two numbers'],
    ['42 or forty three', 'two numbers'],
    ['- 5', 'a sign on its own'],
    ['– 5', 'a dash on its own'],
    ['--5', 'two signs'],
    ['minus -5', 'two signs'],
    ['5-', 'a sign behind it'],
    ['40-45', 'a range'],
    ['< 5', 'no value'],
    ['~ 5', 'not a reading'],
    ['5 ?', 'a question'],
    ['1,000', 'a comma'],
    ['4e1', 'not as people write it'],
    ['0x1F', 'not as people write it'],
    ['NaN', 'not a number'],
    ['Infinity', 'not a number'],
    ['99999999999', 'absurd'],
    ['42 psi', 'another unit'],
    ['oil 42', 'another lead'],
  ])('"%s" is unclear (%s)', line => {
    expect(typed(line)).toEqual([{ kind: 'unclear', text: line, reason: 'outOfGrammar' }]);
  });

  it.each(['121', '-41', '1000 degrees', '-40.001'])('"%s" is out of range', line => {
    expect(typed(line)).toEqual([{ kind: 'unclear', text: line, reason: 'outOfRange' }]);
  });

  it.each([
    ['1,000 ft', 1000],
    ['1,000', 1000],
    ['12 500', 12_500],
    ["19'000 feet", 19_000],
    ['-430', -430],
    ['1250', 1250],
  ])('"%s" is the altitude %d', (line, value) => {
    const altitude = withSlot({ units: ['feet'], writtenUnits: ['ft'], min: -1640, max: 19_685, step: 100 });
    expect(typed(line, altitude)).toMatchObject([{ kind: 'number', value }]);
  });

  it.each(['fueling disabled', 'Fuelling disabled'])('"%s" is one word in two spellings', line => {
    const asked = { ...grammar, replies: [{ id: 'off', wordings: ['fuelling disabled'] }] };
    expect(typed(line, asked)).toMatchObject([{ kind: 'reply', id: 'off' }]);
  });

  it.each(['correct', 'Correct', ' CORRECT! '])('"%s" is a reply', line => {
    expect(typed(line)).toEqual([{ kind: 'reply', id: 'yes', text: line.trim(), confidence: 1 }]);
  });

  it.each(['correct?', 'not correct', 'correct correct', '- correct', 'c'])('"%s" is no reply', line => {
    expect(typed(line)).toMatchObject([{ kind: 'unclear' }]);
  });

  it.each(['STOP', 'stop!', 'stop at 42', 'wait - stop', '42 43 stop', 'is it 5? stop'])(
    '"%s" is stop',
    line => {
      expect(typed(line)).toEqual([{ kind: 'stop', text: line }]);
    },
  );

  it.each(['', '   ', '\t'])('of nothing but blanks ("%s") is nothing', line => {
    expect(typed(line)).toEqual([]);
  });

  it('may be figures where only digits are understood', () => {
    expect(typed('42', withSlot({ digitsOnly: true }))).toMatchObject([{ kind: 'number', value: 42 }]);
    expect(typed('forty two', withSlot({ digitsOnly: true }))).toMatchObject([{ kind: 'unclear' }]);
  });

  it('may be a code, in figures or digit by digit', () => {
    const codes = withSlot({ min: 1, max: 524_286, step: 1, digitsOnly: true });
    for (const line of ['520192', 'five two zero one nine two']) {
      expect(typed(line, codes)).toMatchObject([{ kind: 'number', value: 520_192 }]);
    }
    expect(typed('524287', codes)).toMatchObject([{ kind: 'unclear' }]);
  });

  it('never throws, and is reported at most once, whatever it holds', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), line => {
        expect(typed(line).length).toBe(line.trim() === '' ? 0 : 1);
      }),
    );
  });
});
