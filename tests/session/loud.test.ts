import { describe, expect, it } from 'vitest';
import { languageCodes, languages } from '../../prompts/index.ts';
import { figureByFigure, spokenInNoise } from '../../src/session/in-noise.ts';
import type { Grammar } from '../../src/voice/ports.ts';

describe.each(languageCodes)('what is asked for in a loud bay, in %s', code => {
  const language = languages[code];
  const loud = spokenInNoise(language);
  const far = language.farthest as Readonly<Record<string, string>>;

  it('is the wording that is farthest from everything else, and each other one counts as ever', () => {
    for (const part of ['replies', 'controls'] as const)
      for (const [id, wordings] of Object.entries<readonly string[]>(language[part])) {
        const asked: readonly string[] = Reflect.get(loud[part], id);
        expect(asked[0], id).toBe(far[id] ?? wordings[0]);
        expect(asked.slice(1), id).toEqual(wordings.filter(each => each !== asked[0]));
      }
    expect(loud.stopWordings).toBe(language.stopWordings);
    expect(loud.code).toBe(code);
  });

  it('is worked out once for a language', () => {
    expect(spokenInNoise(language)).toBe(loud);
  });
});

describe('a number in a loud bay', () => {
  const grammar: Grammar = { key: 'here', language: 'en', stop: ['stop'], replies: [] };
  it('is said figure by figure', () => {
    const number = {
      id: 'altitude',
      leads: [],
      units: [],
      writtenUnits: [],
      min: 0,
      max: 9,
      step: 1,
      language: 'en' as const,
      digitsOnly: false,
    };
    expect(figureByFigure({ ...grammar, number })).toEqual({
      ...grammar,
      number: { ...number, digitsOnly: true },
    });
  });
  it('that is not asked for changes nothing', () => {
    expect(figureByFigure(grammar)).toBe(grammar);
  });
});
