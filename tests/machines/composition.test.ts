import { describe, expect, it } from 'vitest';
import { CompositionError, stepFaults, waysOutFaults } from '../../machines/composition.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { confirm, crank } from '../../machines/step-makers.ts';
import type { Step } from '../../machines/steps.ts';
import { kit, type Nodes } from '../../machines/toolkit.ts';
import { demoSix } from './helpers/profiles.ts';

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

  it('does not stand with a gate that is set only later, or by the very step that needs it', () => {
    const more = confirm('fill.oilGrade', 'gradeRight', { gate: 'oilReady' });
    expect(stepFaults([cranks(), sets, more], [])).toEqual([
      'firstFire.crank needs the gate oilReady, which fill.oilLevel, fill.oilGrade sets only then or later.',
    ]);
    expect(stepFaults([{ ...cranks(), gate: 'oilReady' }], [])).toEqual([
      'firstFire.crank needs the gate oilReady, which firstFire.crank sets only then or later.',
    ]);
  });

  it('stands where one of those who set a gate always applies', () => {
    const sometimes = confirm('fill.oilGrade', 'gradeRight', { gate: 'oilReady', when: () => true });
    expect(stepFaults([sets, sometimes, cranks()], [])).toEqual([]);
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

  it('that does not stand is told with all that is wrong', () => {
    const error = new CompositionError(['One thing.', 'Another.']);
    expect(error).toMatchObject({
      name: 'CompositionError',
      message: 'The steps do not make a procedure. One thing. Another.',
      faults: ['One thing.', 'Another.'],
    });
  });
});

describe('a way out', () => {
  const faultsOf = (states: Nodes, on = {}, around = {}) => {
    const machine = kit.createMachine({
      id: 'm',
      initial: 'step',
      context: { profile: demoSix } as never,
      on: { stop: { target: '#next' }, ...around },
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

  it.each(['stop', 'hold', 'goBack', 'skip'] as const)('is missing where only %s leads away', type => {
    expect(faultsOf({ asking: { on: { [type]: { target: '#next' } } } })).toEqual([
      'm.step.asking has no way out but a stop: give it an answer or a time that leads on.',
    ]);
  });

  it('is missing where an answer or a time leads nowhere', () => {
    expect(faultsOf({ asking: { on: { reply: { actions: [] }, clock: { actions: [] } } } })).toHaveLength(1);
  });

  it('is one that a state inside another has, or begins with', () => {
    const within = (inner: Nodes): Nodes => ({ asking: { initial: 'one', states: inner } });
    expect(faultsOf(within({ one: out, two: out }))).toEqual([]);
    expect(faultsOf(within({ one: {}, two: out }))).toEqual([
      expect.stringMatching(/^m\.step\.asking has no way out/),
      expect.stringMatching(/^m\.step\.asking\.one has no way out/),
    ]);
  });

  it('is none where it is a way of what is around the step', () => {
    expect(faultsOf({ asking: {} }, {}, { reply: { target: '#next' } })).toHaveLength(1);
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
