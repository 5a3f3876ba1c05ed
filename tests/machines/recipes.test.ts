import { describe, expect, it } from 'vitest';
import { stepFaults } from '../../machines/composition.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { confirm } from '../../machines/step-makers.ts';
import type { Step } from '../../machines/steps.ts';
import { languageCodes, languages } from '../../prompts/index.ts';
import { quantities as quantityTable } from '../../src/engineering/quantities/table.ts';
import { reportWords } from '../../src/report/words/index.ts';
import { trustWords } from '../../src/server/trust/words.ts';
import { languageNames, pageWords } from '../../src/tablet/words/index.ts';
import { faceWords } from '../../src/terminal/face/words/index.ts';
import { hearingOf, isHeard, voiceLanguage } from '../../src/voice/languages/index.ts';
import { numberReader } from '../../src/voice/number-words/slot.ts';
import { demoSix } from './helpers/profiles.ts';

const AT_THE_END = ['signature'] as const;

/** The procedure with a step put in before the one of this id. */
function withStep(step: Step, before: string): Step[] {
  const steps = procedureFor(demoSix);
  const place = steps.findIndex(({ id }) => id === before);
  return [...steps.slice(0, place), step, ...steps.slice(place)];
}

describe('the recipe for a step', () => {
  // Its prompt stands for a new one: in this engine's procedure the step does not occur.
  const id = 'fill.oilFilterDry';

  it('followed, makes a procedure', () => {
    expect(
      stepFaults(withStep(confirm(id, 'filterFitted', { gate: 'oilReady' }), 'fill.oilLevel'), AT_THE_END),
    ).toEqual([]);
  });

  it('names the gate that nothing needs, and the needs that were left out', () => {
    const unneeded = confirm(id, 'filterFitted', { gate: 'secondPersonClear' });
    expect(stepFaults(withStep(unneeded, 'fill.oilLevel'), AT_THE_END)).toEqual([
      expect.stringContaining('which nothing needs'),
    ]);
    const bare = confirm(id, 'filterFitted', { engine: 'running' });
    expect(stepFaults(withStep(bare, 'checks.idle'), AT_THE_END)).toEqual([
      expect.stringContaining('its place in the list'),
    ]);
  });

  it('has a title and a question in each language', () => {
    for (const code of languageCodes)
      for (const step of procedureFor(demoSix))
        expect(Object.keys(languages[code].steps[step.id])).toEqual(expect.arrayContaining(['title', 'ask']));
  });
});

it('the recipe for a quantity: what is in the table has its name in each language, and nothing else has', () => {
  for (const code of languageCodes)
    expect(Object.keys(languages[code].quantities).sort()).toEqual(Object.keys(quantityTable).sort());
});

describe.each(languageCodes)('the recipe for a language, as it was followed for %s', code => {
  const shape = (value: unknown): unknown =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, shape(inner)]))
      : typeof value;

  it('has all its words, in what is said and in every frame', () => {
    expect(languages[code].code).toBe(code);
    expect(shape(languages[code].steps)).toEqual(shape(languages.en.steps));
    expect(shape(languages[code].lines)).toEqual(shape(languages.en.lines));
    expect(shape(faceWords[code])).toEqual(shape(faceWords.en));
    expect(Object.keys(reportWords[code]).toSorted()).toEqual(Object.keys(reportWords.en).toSorted());
    expect(shape(pageWords[code])).toEqual(shape(pageWords.en));
    expect(shape(trustWords[code])).toEqual(shape(trustWords.en));
    expect(languageNames[code]).not.toBe('');
  });

  it('has a voice of somebody, and numbers that are read as they are said', () => {
    const { tag, voice, numbers } = voiceLanguage(code);
    expect(tag.startsWith(`${code}-`)).toBe(true);
    expect(voice === 'embedded' || voice.length > 0).toBe(true);
    const slot = { id: 'n', leads: [], units: [], min: 0, max: 9999, step: 1, language: code };
    const reader = numberReader(slot);
    for (const n of [0, 1, 16, 21, 22, 31, 71, 80, 100, 101, 200, 555, 850, 1000, 1850, 9999])
      expect([n, reader.read(numbers.cardinal(n))]).toEqual([n, [n]]);
  });

  it('is heard, or says that it is not', () => {
    if (!isHeard(code)) expect(voiceLanguage(code).caution).toMatch(/Escape/);
    else
      for (const word of languages[code].stopWordings)
        expect(hearingOf(code).pronounce(word.split(' ')[0] ?? '').length).toBeGreaterThan(0);
  });
});
