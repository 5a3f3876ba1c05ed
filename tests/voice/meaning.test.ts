import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createMatcher } from '../../src/voice/meaning.ts';
import { sayNumber } from '../../src/voice/number-words/say.ts';
import type { Grammar, NumberSlot } from '../../src/voice/ports.ts';

const pressure: NumberSlot = {
  id: 'oilPressure',
  leads: ['oil pressure', 'Pressure'],
  units: ['P.S.I.', 'pounds'],
  min: 0,
  max: 120,
  step: 1,
};

const grammar: Grammar = {
  key: 'oil.asking',
  stop: ['stop', 'shut it down'],
  replies: [
    { id: 'yes', wordings: ['correct', "that's right"] },
    { id: 'full', wordings: ['coolant full', 'full'] },
  ],
  number: pressure,
};

const { meaningOf } = createMatcher(grammar);
const number = (value: number) => ({ kind: 'number', id: 'oilPressure', value });
const withSlot = (changes: Partial<NumberSlot>) =>
  createMatcher({ ...grammar, number: { ...pressure, ...changes } });

describe('the meaning of a text', () => {
  it.each([
    ['correct', 'yes'],
    ["That's right!", 'yes'],
    ['coolant full', 'full'],
    ['FULL', 'full'],
  ])('"%s" is the reply %s', (text, id) => {
    expect(meaningOf(text)).toEqual({ kind: 'reply', id });
  });

  it.each([
    '',
    '...',
    'coolant',
    'coolant full correct',
    'not correct',
    'incorrect',
    'psi',
    'oil pressure',
    'hundred',
  ])('"%s" is none', text => {
    expect(meaningOf(text)).toBeUndefined();
  });

  it('is stop wherever a stop wording stands, whatever else is said', () => {
    const someWords = fc.array(
      fc.constantFrom('correct', 'full', 'forty', 'two', 'oil', 'pressure', 'not', 'never'),
    );
    fc.assert(
      fc.property(someWords, fc.constantFrom(...grammar.stop), someWords, (before, stop, after) => {
        expect(meaningOf([...before, stop, ...after].join(' '))).toEqual({ kind: 'stop' });
      }),
    );
  });

  it('is not stop where a stop word is only a part of another', () => {
    expect(meaningOf('stopper')).toBeUndefined();
  });

  it('is stop even where a reply is worded the same', () => {
    const both = createMatcher({ ...grammar, replies: [{ id: 'off', wordings: ['stop', 'stop it'] }] });
    expect(both.meaningOf('stop')).toEqual({ kind: 'stop' });
    expect(both.meaningOf('stop it')).toEqual({ kind: 'stop' });
  });

  it('is none where two replies share a wording', () => {
    const shared = createMatcher({
      ...grammar,
      replies: [...grammar.replies, { id: 'no', wordings: ['Correct'] }],
    });
    expect(shared.meaningOf('correct')).toBeUndefined();
    expect(shared.meaningOf("that's right")).toEqual({ kind: 'reply', id: 'yes' });
  });

  it('is none where a reply is worded like a number', () => {
    const shared = createMatcher({ ...grammar, replies: [{ id: 'both', wordings: ['two'] }] });
    expect(shared.meaningOf('two')).toBeUndefined();
    expect(shared.meaningOf('pressure two')).toEqual(number(2));
  });

  it('is none where a lead and a number could be cut in two ways', () => {
    const twoWays = withSlot({ leads: ['one'], min: 1, max: 200 });
    expect(twoWays.meaningOf('one eighty')).toBeUndefined();
    expect(twoWays.meaningOf('one hundred eighty')).toEqual(number(180));
  });

  it('is never a wording without words', () => {
    const blank = createMatcher({ ...grammar, stop: ['!'], replies: [{ id: 'yes', wordings: ['...'] }] });
    for (const text of ['', '...', '!']) expect(blank.meaningOf(text)).toBeUndefined();
  });
});

describe('the meaning of a number', () => {
  it('is its value, with any lead and any unit, or none', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 120 }),
        fc.constantFrom('', 'oil pressure ', 'pressure '),
        fc.constantFrom('', ' p s i', ' pounds'),
        fc.constantFrom('grouped', 'digitByDigit'),
        (value, lead, unit, style) => {
          expect(meaningOf(`${lead}${sayNumber(value, style)}${unit}`)).toEqual(number(value));
        },
      ),
    );
  });

  it.each([
    'one hundred twenty one',
    'minus five',
    'forty two point five',
    'psi forty',
    'forty two oil pressure',
  ])('is none for "%s", which the gauge cannot show or nobody says', text => {
    expect(meaningOf(text)).toBeUndefined();
  });

  it('is none where no number is asked for', () => {
    expect(createMatcher({ key: 'k', stop: [], replies: [] }).meaningOf('forty two')).toBeUndefined();
  });

  it('is none without a lead, where one is needed', () => {
    const second = withSlot({ leads: ['second'], leadNeeded: true });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 120 }), fc.constantFrom('', ' pounds'), (value, unit) => {
        const said = `${sayNumber(value, 'grouped')}${unit}`;
        expect(second.meaningOf(said)).toBeUndefined();
        expect(second.meaningOf(`second ${said}`)).toEqual(number(value));
      }),
    );
  });

  it.each([[[]], [['']], [['...']]])('is never any where a lead is needed and the leads are %j', leads => {
    const mute = withSlot({ leads, leadNeeded: true });
    for (const text of ['forty two', ' forty two', '... forty two', 'pressure forty two']) {
      expect(mute.meaningOf(text)).toBeUndefined();
    }
  });

  it('is not changed by leads and units without words', () => {
    const blank = withSlot({ leads: [''], units: [' '] });
    expect(blank.meaningOf('forty two')).toEqual(number(42));
  });
});
