import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stepFaults } from '../../machines/composition.ts';
import { buildFirstStart, procedureFor } from '../../machines/first-start.ts';
import { isKind } from '../../src/record/vocabulary/index.ts';
import { changed, demoFour, demoSix, shortest } from './helpers/profiles.ts';

it.each([
  ['demo-six', demoSix],
  ['demo-four', demoFour],
  ['the shortest', shortest],
  ['one without a heater', changed(demoSix, { heater: null })],
])('%s makes a machine', (_, profile) => {
  expect(() => buildFirstStart(profile)).not.toThrow();
  expect(stepFaults(procedureFor(profile), ['signature'])).toEqual([]);
});

describe('what a state offers, needs and measures stands in its meta', () => {
  const sources = (folder: string): string[] =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter(path => /\.tsx?$/.test(path))
      .map(path => join(folder, path));

  /** The names of the states inside steps and inside the stop. */
  const innerNames = () => {
    const machine = buildFirstStart(demoSix);
    const leaves = Object.values(machine.root.states.procedure?.states ?? {})
      .flatMap(phase => Object.values(phase.states))
      .flatMap(step => Object.keys(step.states));
    return new Set([...leaves, ...Object.keys(machine.root.states.stopped?.states ?? {})]);
  };
  it('so nobody outside the machine goes by the name of an inner state', () => {
    // Kinds of entry, and what the engine does, have words of their own that are the same.
    const names = [...innerNames()].filter(name => !isKind(name) && name !== 'cranking');
    expect(names).toContain('readingBack');
    // A name is a key there, the same or another one, and is neither taken apart nor held against a word.
    const named = new RegExp(`['"\`.](${names.join('|')})['"\`]`);
    const takenApart = /stateName\([^)]*\)\s*(\.|===? *')/;
    const guilty = sources('src').filter(path => {
      const text = readFileSync(path, 'utf8');
      return text.includes('stateName(') && (named.test(text) || takenApart.test(text));
    });
    expect(guilty).toEqual([]);
  });
});
