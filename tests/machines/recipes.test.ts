import { describe, expect, it } from 'vitest';
import { stepFaults } from '../../machines/composition.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { confirm } from '../../machines/step-makers.ts';
import type { Step } from '../../machines/steps.ts';
import { languageCodes, languages } from '../../prompts/index.ts';
import { quantities as quantityTable } from '../../src/engineering/quantities/table.ts';
import { faceWords } from '../../src/terminal/face/words/index.ts';
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

it('the recipe for a language: each that is listed has all its words', () => {
  const shape = (value: unknown): unknown =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, shape(inner)]))
      : typeof value;
  for (const code of languageCodes) {
    expect(shape(languages[code].steps)).toEqual(shape(languages.en.steps));
    expect(shape(languages[code].lines)).toEqual(shape(languages.en.lines));
    expect(shape(faceWords[code].debrief)).toEqual(shape(faceWords.en.debrief));
  }
});
