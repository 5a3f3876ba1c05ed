import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toJsgf } from '../../../../bench/hearing/peers/jsgf.ts';
import { VoiceError } from '../../../../src/voice/errors.ts';
import { phrasesOf } from '../../../../src/voice/number-words/forms.ts';
import { formsOf } from '../../../../src/voice/number-words/slot.ts';
import type { Grammar, NumberSlot } from '../../../../src/voice/ports.ts';
import { phrasesOfJsgf } from './jsgf-phrases.ts';

const pressure: NumberSlot = {
  id: 'oilPressure',
  leads: ['Oil pressure'],
  units: ['psi'],
  min: 8,
  max: 12,
  step: 1,
};
const grammar: Grammar = {
  key: 'oil.asking',
  stop: ['stop', 'shut it down'],
  replies: [
    { id: 'full', wordings: ['Coolant full', "It's full"] },
    { id: 'low', wordings: ['coolant low', 'coolant'] },
  ],
};
const asking = (number: NumberSlot): Grammar => ({ key: 'n', stop: [], replies: [], number });
const said = (g: Grammar) => [...phrasesOfJsgf(toJsgf(g), 'asked').keys()].sort();

const anySlot = fc.record({
  id: fc.constant('n'),
  leads: fc.uniqueArray(fc.constantFrom('pressure', 'oil pressure', 'reading', ''), { maxLength: 3 }),
  units: fc.uniqueArray(fc.constantFrom('psi', 'pounds', 'pounds square', ''), { maxLength: 3 }),
  min: fc.integer({ min: -20, max: 300 }),
  max: fc.integer({ min: 300, max: 320 }),
  step: fc.constantFrom(1, 0.5, 10),
  digitsOnly: fc.boolean(),
});

describe('the grammar that the decoder is given', () => {
  it('is a stable text, beginnings shared, words that may be left out in brackets', () => {
    expect(toJsgf({ ...grammar, number: pressure })).toMatchInlineSnapshot(`
      "#JSGF V1.0 UTF-8;
      grammar now;
      <t0> = [ full | low ];
      <t1> = ( ( zero | oh ) | one | two );
      <asked> = ( coolant <t0> | it's ( full ) ) | [ oil pressure ] ( eight | ( nine | niner ) | ten | one <t1> | eleven | twelve ) [ psi ] | ( stop | shut ( it ( down ) ) );
      public <now> = <asked>;
      "
    `);
  });

  it('is the same text each time', () => {
    expect(toJsgf(structuredClone(grammar))).toBe(toJsgf(grammar));
  });

  it('holds exactly the wordings of its replies and of stop', () => {
    expect(said(grammar)).toEqual(
      ['coolant', 'coolant full', 'coolant low', "it's full", 'shut it down', 'stop'].sort(),
    );
  });

  it('holds exactly the spoken numbers of its slot, with and without a lead and a unit', () => {
    fc.assert(
      fc.property(anySlot, slot => {
        const numbers = [...new Set(formsOf(slot).flatMap(phrasesOf))];
        const leads = new Set(['', ...slot.leads]);
        const units = new Set(['', ...slot.units]);
        const all = [...leads].flatMap(lead =>
          numbers.flatMap(n => [...units].map(unit => `${lead} ${n} ${unit}`.trim())),
        );
        expect(said(asking(slot))).toEqual(all.sort());
      }),
      { numRuns: 20 },
    );
  });

  it('holds no phrase twice, which would make it likelier than others', () => {
    const derived = phrasesOfJsgf(toJsgf({ ...grammar, number: { ...pressure, max: 3000 } }), 'asked');
    expect([...derived].filter(([, times]) => times > 1)).toEqual([]);
  });

  it('writes thousands of numbers in a few hundred lines, since equal endings are kept once', () => {
    const text = toJsgf(asking({ ...pressure, min: 0, max: 3000 }));
    expect(text.split('\n').length).toBeLessThan(300);
    expect(text.length).toBeLessThan(30_000);
  });

  it('holds no number without a lead, where one is needed', () => {
    const phrases = said(asking({ ...pressure, leads: ['second', 'second pressure'], leadNeeded: true }));
    expect(phrases).toContain('second nine psi');
    expect(phrases).toContain('second pressure ten');
    expect(phrases.filter(phrase => !phrase.startsWith('second '))).toEqual([]);
  });

  it.each([[[]], [['']], [[' - ']]])('holds no number where a lead is needed and the leads are %j', leads => {
    expect(said({ ...grammar, number: { ...pressure, leads, leadNeeded: true } })).toEqual(said(grammar));
  });

  it.each(['', '  ', '…', '-'])('cannot have the wording "%s", which has no words', wording => {
    for (const bad of [
      { ...grammar, stop: [wording] },
      { ...grammar, replies: [{ id: 'yes', wordings: ['correct', wording] }] },
    ]) {
      expect(() => toJsgf(bad)).toThrow(VoiceError);
      expect(() => toJsgf(bad)).toThrow(
        `Grammar "oil.asking" has a wording without words ("${wording}"); write it as it is spoken.`,
      );
    }
  });

  it('cannot be empty', () => {
    expect(() => toJsgf({ key: 'k', stop: [], replies: [] })).toThrow(
      'Grammar "k" has nothing that may be said; give it a reply, a number or a stop wording.',
    );
  });

  it('cannot have a number slot that nobody can listen for', () => {
    expect(() => toJsgf(asking({ ...pressure, max: Number.NaN }))).toThrow(VoiceError);
  });
});
