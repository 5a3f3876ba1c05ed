import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stepFaults, waysOutFaults } from '../../machines/composition.ts';
import { buildFirstStart, procedureFor } from '../../machines/first-start.ts';
import { confirm, crank } from '../../machines/step-makers.ts';
import type { Step } from '../../machines/steps.ts';
import { kit, type Nodes } from '../../machines/toolkit.ts';
import { isKind } from '../../src/record/vocabulary/index.ts';
import { changed, demoFour, demoSix, shortest } from './helpers/profiles.ts';

const sets = confirm('fill.oilLevel', 'levelGood', { gate: 'oilReady' });
const cranks = (needs: Step['needs'] = ['oilReady']): Step =>
  crank('firstFire.crank', {
    needs: needs ?? [],
    until: 'fired',
    readBack: false,
    burst: () => 10,
    giveUp: { seconds: () => 30, cause: 'noStart' },
  });

describe('the steps as a procedure', () => {
  it('stands where each gate is set before it is needed', () => {
    expect(stepFaults([sets, cranks()], [])).toEqual([]);
  });

  it('does not stand with a gate that no step sets', () => {
    expect(stepFaults([sets, cranks(['oilReady', 'fuelReady'])], [])).toEqual([
      expect.stringMatching(/firstFire\.crank needs the gate fuelReady, which no step sets/),
    ]);
    expect(stepFaults([sets, cranks()], ['signature'])).toEqual([
      expect.stringMatching(/The end needs the gate signature/),
    ]);
  });

  it('does not stand with a gate that is set only later', () => {
    expect(stepFaults([cranks(), sets], [])).toEqual([expect.stringMatching(/only then or later/)]);
  });

  it('does not stand with a gate that nobody may have to set', () => {
    expect(stepFaults([{ ...sets, when: () => true }, cranks()], [])).toEqual([
      expect.stringMatching(/nobody sets where fill\.oilLevel does not apply/),
    ]);
  });

  it.each(['cranking', 'running'] as const)(
    'does not stand where order alone keeps a step in its place, the engine %s',
    engine => {
      const bare = confirm('warmUp.bottle', 'levelsGood', { engine });
      expect(stepFaults([sets, cranks(), bare], [])).toEqual([
        expect.stringMatching(/warmUp\.bottle .* its place in the list is all that keeps it there/),
      ]);
    },
  );

  it('does not stand with a gate that nothing needs', () => {
    expect(stepFaults([sets], [])).toEqual([expect.stringMatching(/oilReady, which nothing needs/)]);
  });

  it('does not stand with a gate that a skip would open', () => {
    const skippable = confirm('fill.steeringFull', 'steeringFull', { gate: 'oilReady' });
    expect(stepFaults([skippable, cranks()], [])).toEqual([expect.stringMatching(/a skip would open it/)]);
  });

  it('does not stand with a number that a later step reads back, and that a skip would leave out', () => {
    const [skippable] = procedureFor(demoSix).filter(({ id }) => id === 'fill.coolantFreezePoint');
    if (skippable?.kind !== 'reading') throw new Error('The freezing point is read.');
    const { gate: _, ...open } = skippable;
    const faults = stepFaults([{ ...open, readBackIn: 'fill.fuelGrade' }, sets, cranks()], []);
    expect(faults).toEqual([expect.stringMatching(/nothing would be read back/)]);
  });

  it('does not stand with a step twice', () => {
    expect(stepFaults([sets, sets, cranks()], [])).toEqual(['fill.oilLevel is in the list twice.']);
  });
});

describe('a way out', () => {
  const faultsOf = (states: Nodes, on = {}) => {
    const machine = kit.createMachine({
      id: 'm',
      initial: 'step',
      context: { profile: demoSix } as never,
      on: { stop: { target: '#next' } },
      states: { step: { initial: 'asking', states, on }, next: { id: 'next', type: 'final' } },
    });
    const { step, next } = machine.root.states;
    if (!step || !next) throw new Error('no such states');
    return waysOutFaults(step, [next]);
  };
  const out = { on: { reply: { target: '#next' } } };

  it('is an answer or a time that leads on, also by other states', () => {
    expect(faultsOf({ asking: { always: { target: 'waiting' } }, waiting: out })).toEqual([]);
    expect(faultsOf({ asking: {} }, { reply: { target: '#next' } })).toEqual([]);
  });

  it('is missing where only a stop, a hold or going back leads away', () => {
    expect(faultsOf({ asking: { on: { goBack: { target: '#next' } } } })).toEqual([
      expect.stringMatching(/^m\.step\.asking has no way out but a stop/),
    ]);
  });

  it('is missing where states only lead to one another', () => {
    const ring: Nodes = {
      asking: { on: { reply: { target: 'again' } } },
      again: { on: { reply: { target: 'asking' } } },
    };
    expect(faultsOf(ring)).toHaveLength(2);
  });

  it('is the stop itself where a stop word is practised', () => {
    expect(faultsOf({ asking: { meta: { replies: [], by: 'second', awaits: 'drill' } } })).toEqual([]);
  });
});

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
