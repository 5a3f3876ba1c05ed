import { describe, expect, it } from 'vitest';
import type { PromptValue } from '../../machines/vocabulary.ts';
import { languages } from '../../prompts/index.ts';
import type { Language, LanguageCode } from '../../prompts/types.ts';
import type { UnitSystem } from '../../src/session/units.ts';
import {
  fill,
  showFailureMode,
  showMeasure,
  showNumber,
  stepTitle,
  unparted,
  wordSaid,
} from '../../src/session/wording.ts';

/** A value by itself, for the ear and for the eye. */
function worded(value: PromptValue, units: UnitSystem = 'metric', language: Language = languages.en) {
  const bare: Language = { ...language, lines: { ...language.lines, echo: '({value})' } };
  const { spoken, shown } = wordSaid(
    { line: 'echo', step: 'job.card', values: { value }, priority: 'notice' },
    bare,
    units,
  );
  return [spoken, shown].map(each => each.slice(1, -1));
}

describe('a value is put into words for the ear and into figures for the eye:', () => {
  const { en } = languages;
  it.each<[string, PromptValue, string, string]>([
    ['a text', 'as it is', 'as it is', 'as it is'],
    ['a number', 41, 'forty one', '41'],
    ['a number with a part', 2.5, 'two point five', '2.5'],
    ['a quantity', { quantity: 'coolantTemperature', si: 82 }, 'eighty two degrees Celsius', '82 °C'],
    ['below zero', { quantity: 'coldestNight', si: -5 }, 'minus five degrees Celsius', '−5 °C'],
    ['a pressure', { quantity: 'oilPressure', si: 350 }, 'three point five bar', '3.5 bar'],
    ['a whole one of it', { quantity: 'oilPressure', si: 300 }, 'three bar', '3.0 bar'],
    ['a brief one', { brief: 'oilPressure', si: 300 }, 'three', '3.0 bar'],
    ['a bare one', { number: { quantity: 'oilPressure', si: 300 } }, 'three', '3.0'],
    ['a measure', { unit: 'V', si: 12.6 }, 'twelve point six volts', '12.6 V'],
    ['its name', { quantityName: 'oilPressure' }, 'oil pressure', 'oil pressure'],
    ['its unit', { unitOf: 'coolantTemperature' }, 'degrees Celsius', '°C'],
    ['digits', { digits: 157 }, 'one five seven', '157'],
    ['a code', { code: { spn: 157, fmi: 18 } }, 'one five seven, eighteen', 'SPN 157 FMI 18'],
    ['an oil', { oilGrade: '15W-40' }, 'fifteen W forty', '15W-40'],
    ['an oil of one grade', { oilGrade: 'SAE 30' }, 'SAE 30', 'SAE 30'],
    ['gelling', { gelling: 'nearCloud' }, 'near its cloud point', 'near its cloud point'],
    ['a glycol', { glycol: 'ethylene' }, 'ethylene glycol', 'ethylene glycol'],
    ['a fuel', { fuel: 'no1' }, en.fuels.no1, en.fuels.no1],
    ['a reply', { reply: 'yes' }, en.replies.yes[0] ?? '', en.replies.yes[0] ?? ''],
    ['a reply that is none', { reply: 'nowhere' }, 'nowhere', 'nowhere'],
    ['a cause', { cause: 'oilLeak' }, en.causes.oilLeak, en.causes.oilLeak],
    ['a gate', { gate: 'coolantReady' }, en.gates.coolantReady, en.gates.coolantReady],
    ['a person', { person: 'second' }, en.people.second, en.people.second],
    ['a step', { step: 'job.card' }, en.steps['job.card'].title, en.steps['job.card'].title],
    ['a step that is none', { step: 'no.step' }, 'no.step', 'no.step'],
    ['a phase', { phase: 'fill' }, en.phases.fill, en.phases.fill],
    ['a phase that is none', { phase: 'none' }, 'none', 'none'],
    ['a failure mode', { failureMode: 1 }, showFailureMode(1, en), showFailureMode(1, en)],
    ['a value of the profile by no known name', { valueName: 'what.ever' }, 'what.ever', 'what.ever'],
    ['a part of the engine by no known name', { valueGroup: 'whatever' }, 'whatever', 'whatever'],
    ['an item by no known name', { item: 'whatever' }, 'whatever', 'whatever'],
    [
      'a line within another',
      { line: 'forTenDegrees', values: { time: { unit: 's', si: 109 } } },
      'one minute forty nine seconds for ten degrees Celsius',
      '1:49 for ten degrees Celsius',
    ],
    ['a list', { list: ['a', 'b', 'c'] }, 'a, b, c', 'a, b, c'],
    ['a list of plain words', { list: ['a', 'b'], joined: 'plain' }, 'a b', 'a b'],
    ['a list with nothing in one of its places', { list: ['a', '', 'c'] }, 'a, c', 'a, c'],
    ['an empty list', { list: [] }, 'none', 'none'],
  ])('%s', (_, value, spoken, shown) => {
    expect(worded(value)).toEqual([spoken, shown]);
  });

  it.each<[number, string, string]>([
    [0, 'zero seconds', '0:00'],
    [1, 'one second', '0:01'],
    [9.6, 'ten seconds', '0:10'],
    [59, 'fifty nine seconds', '0:59'],
    [60, 'one minute', '1:00'],
    [61, 'one minute one second', '1:01'],
    [120, 'two minutes', '2:00'],
    [3725, 'sixty two minutes five seconds', '62:05'],
    [-4, 'zero seconds', '0:00'],
  ])('a time of %d s', (si, spoken, shown) => {
    expect(worded({ unit: 's', si })).toEqual([spoken, shown]);
  });

  it('in the units of the United States', () => {
    expect(worded({ quantity: 'oilPressure', si: 6.894757 * 42 }, 'us')).toEqual([
      'forty two P S I',
      '42 psi',
    ]);
    expect(worded({ unitOf: 'coolantTemperature' }, 'us')[1]).toBe('°F');
  });

  it('limits, by both of them or by the one there is, and with two decimals where they are pure numbers', () => {
    const shown = (limits: { readonly unit: string; readonly min?: number; readonly max?: number }) =>
      worded({ limits })[1];
    expect(shown({ unit: 'degC', min: 10, max: 20 })).toBe('10 °C to 20 °C');
    expect(shown({ unit: 'degC', min: 0 })).toBe('at least 0 °C');
    expect(shown({ unit: 'degC', max: 0 })).toBe('at most 0 °C');
    expect(shown({ unit: '', min: 0.345 })).toBe('at least 0.34');
    expect(shown({ unit: 'degC' })).toBe('');
  });

  it('why something cannot be worked out, with what was given and what is allowed', () => {
    const shown = (given: object, language: Language = languages.en) =>
      worded({ issue: { code: 'outOfRange', input: 'nightLowC', ...given } }, 'metric', language)[1];
    const all = { given: 99, allowed: 'up to 50' };
    expect(shown({})).toBe('nightLowC is outside the range of the rule.');
    expect(shown(all)).toBe('nightLowC (99) is outside the range of the rule; allowed: up to 50.');
    const { outOfRange } = languages.fr.issues;
    expect(shown({}, languages.fr)).toBe(`nightLowC ${outOfRange}.`);
    expect(shown(all, languages.fr)).toBe(`nightLowC (99) ${outOfRange} (up to 50).`);
  });

  it('the emergency words for the eye alone: three, the shortest, none of which another begins with', () => {
    const [spoken, shown] = worded({ emergencyWords: 'shown' });
    expect(spoken).toBe('');
    expect(shown).toMatch(/^Emergency words: (“[^”]+”|"[^"]+"|‘[^’]+’)(, .+){2}\.$/);
    expect(shown).toContain('stop');
    expect(shown).not.toContain('stop now');
  });

  it('with the decimal mark of the language', () => {
    expect(worded({ unit: 'V', si: 12.6 }, 'metric', languages.fr)[1]).toMatch(/^12,6/);
    expect(worded({ unit: 'V', si: 12.6 }, 'metric', languages.es)[1]).toMatch(/^12,6/);
  });

  it('in French, where one minute is of another gender than the number one', () => {
    expect(worded({ unit: 's', si: 21 * 60 }, 'metric', languages.fr)[0]).toBe('vingt et une minutes');
  });
});

describe('a sentence', () => {
  const said = (template: string, more: object = {}) => {
    const language = { ...languages.en, lines: { ...languages.en.lines, echo: template } };
    return wordSaid(
      { line: 'echo', step: 'job.card', values: {}, priority: 'notice', ...more },
      language,
      'us',
    );
  };

  it('has parts for the eye only, and no gap where they are left out', () => {
    expect(said('Read it <in °F>  now<, please>.')).toEqual({
      spoken: 'Read it now.',
      shown: 'Read it in °F now, please.',
    });
  });

  it('has its blanks filled, and nothing in those that nothing is known for', () => {
    expect(fill('{a} and {b} and {a}', { a: 'x', c: 'y' })).toBe('x and  and x');
    expect(said('{known} {unknown}end', { values: { known: 'a' } }).shown).toBe('A end');
  });

  it("keeps a person's own words as they were written, and raises no letter within them", () => {
    const values = { value: 'cylinder no. three, approx. 40? or more' };
    for (const each of Object.values(said('reason: {value}. {value}.', { values })))
      expect(each).toBe(
        'Reason: cylinder no. three, approx. 40? or more. Cylinder no. three, approx. 40? or more.',
      );
    for (const each of Object.values(said('{value} is right', { values: { value: 'unit no.' } })))
      expect(each).toBe('Unit no. is right');
  });

  it('begins as sentences do, for the ear and for the eye, whatever its blanks begin with', () => {
    const together = (code: LanguageCode) =>
      wordSaid(
        {
          line: 'together',
          step: 'job.card',
          values: { items: 'öl, 2.5 bar', reply: 'alles gut' },
          priority: 'prompt',
        },
        languages[code],
        'metric',
      );
    expect(together('en').spoken).toBe('Alles gut? Öl, 2.5 bar.');
    expect(together('fr').shown).toBe('Alles gut\u00A0? Öl, 2.5 bar.');
    expect(together('es').shown).toBe('¿Alles gut? Öl, 2.5 bar.');
  });

  it('may have another before it', () => {
    const prefix = 'takenBack' as const;
    expect(said('Again.', { prefix }).spoken).toBe(`${languages.en.lines.takenBack} Again.`);
  });

  it('that asks is the question of its step', () => {
    const { spoken } = wordSaid(
      { line: 'ask', step: 'job.protection', values: {}, priority: 'prompt' },
      languages.en,
      'us',
    );
    expect(languages.en.steps['job.protection'].ask.replace(/<[^>]*>/g, '')).toBe(spoken);
  });

  it('is not parted from a mark that stands apart, as in French', () => {
    expect(unparted('Prêt ? « oui » : non ; si !')).toBe(
      'Prêt\u00A0? «\u00A0oui\u00A0»\u00A0: non\u00A0; si\u00A0!',
    );
    expect(unparted('a b, c')).toBe('a b, c');
  });
});

describe('a figure for the eye', () => {
  it('is bare, or with its unit', () => {
    expect(showNumber(-0.04, 'V', languages.en, 'metric')).toBe('0.0');
    expect(showNumber(-5, 'degC', languages.en, 'metric')).toBe('−5');
    expect(showNumber(12.64, 'V', languages.fr, 'metric')).toBe('12,6');
    expect(showMeasure(0, 'degC', languages.en, 'us')).toBe('32 °F');
  });

  it('of a failure mode is its meaning in the language, and nothing for a number that means none', () => {
    expect(showFailureMode(3, languages.en)).not.toBe('');
    expect(showFailureMode(3, languages.fr)).not.toBe(showFailureMode(3, languages.en));
    expect(showFailureMode(99, languages.en)).toBe('');
  });

  it('of a step is its title', () => {
    expect(stepTitle(languages.en, 'job.card')).toBe(languages.en.steps['job.card'].title);
    expect(stepTitle(languages.en, 'no.step')).toBe('no.step');
  });
});
