import { describe, expect, it } from 'vitest';
import { languageCodes, languages } from '../../prompts/index.ts';
import { valueFields } from '../../src/profile/fields.ts';
import { loadProfile } from '../../src/profile/load.ts';
import type { Provenance } from '../../src/profile/provenance.ts';
import { assumedSaid } from '../../src/session/assumed.ts';
import { wordSaid } from '../../src/session/wording.ts';

const six = await loadProfile('demo-six');
const told = (provenance: Provenance, code: 'en' | 'fr' = 'en') =>
  assumedSaid({ ...six, provenance }, { step: 'job.card', values: {}, priority: 'prompt' }).map(
    said => wordSaid(said, languages[code], 'metric').shown,
  );
const assumed = (...paths: readonly string[]): Provenance =>
  Object.fromEntries(paths.map(path => [path, { from: 'assumed' as const }]));

describe('before a start, what is only assumed', () => {
  it('is not spoken of where nothing is', () => {
    expect(told({})).toEqual([]);
    expect(told({ turbo: { from: 'plate' } })).toEqual([]);
  });

  it('is read out by name where it is little', () => {
    expect(told(assumed('starter.limitC'))).toEqual([
      'One value is only assumed: temperature limit of the starter.',
    ]);
    expect(told(assumed('warmUp.maxS', 'idle.cold', 'sweeps'))).toEqual([
      '3 values are only assumed: cold idle, longest warm-up, speeds of the sweeps.',
    ]);
  });

  it('is read out by part of the engine where it is much, but what was accepted by name always by its own', () => {
    const many = valueFields.filter(path => !path.startsWith('oilPressure'));
    const [sentence = ''] = told(assumed(...many));
    expect(sentence).toMatch(/^\d+ values are only assumed, among them: /);
    for (const named of [
      'longest crank',
      'heater or glow plugs',
      'cold idle',
      'warm idle',
      'shutdown',
      'the rest',
    ])
      expect(sentence).toContain(named);
    expect(sentence).toMatch(/The report lists them\.$/);
    expect(sentence).not.toContain('oil pressure');
  });

  it('is said in French too', () => {
    expect(told(assumed('idle.cold', 'turbo'), 'fr')).toEqual(
      ['2 valeurs ne sont que supposées : turbocompresseur, ralenti à froid.'].map(text =>
        text.replace(' :', '\u00a0:'),
      ),
    );
  });
});

it('every value of a profile has its name in each language', () => {
  for (const code of languageCodes)
    expect(Object.keys(languages[code].values).sort()).toEqual([...valueFields].sort());
});
