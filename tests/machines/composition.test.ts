import { describe, expect, it } from 'vitest';
import { initialTransition } from 'xstate';
import { CompositionError, stepFaults, stuckStates, waysOutFaults } from '../../machines/composition.ts';
import { checkedMachine, procedureFor } from '../../machines/first-start.ts';
import { stateName } from '../../machines/moment.ts';
import { confirm, crank } from '../../machines/step-makers.ts';
import type { Step } from '../../machines/steps.ts';
import { kit, type Node, type Nodes } from '../../machines/toolkit.ts';
import { job } from './helpers/driver.ts';
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

describe('a machine', () => {
  const signs = confirm('signOff.sign', 'iSign', { gate: 'signature' });

  it('is made of steps that are a procedure, and of no others', () => {
    expect(() => checkedMachine([signs])).not.toThrow();
    expect(() => checkedMachine([signs, signs])).toThrow(CompositionError);
    expect(() => checkedMachine([sets])).toThrow(/needs the gate signature, which no step sets/);
    expect(() => checkedMachine([])).toThrow(CompositionError);
  });

  it('stops where nothing is left to do and nobody has signed', () => {
    const machine = checkedMachine([{ ...signs, when: () => false }]);
    const [moment] = initialTransition(machine, { profile: demoSix, job });
    expect(stateName(moment)).toBe('stopped.makingSafe');
    expect(moment.context.stop?.cause).toBe('other');
  });

  it('is stuck where a step or the stop has no way out: to the next step, or to an end', () => {
    const stuckWith = (asking: Node, stop: Node) => {
      const { root } = kit.createMachine({
        id: 'm',
        initial: 'procedure',
        context: { profile: demoSix } as never,
        states: {
          procedure: {
            initial: 'job',
            states: {
              job: { initial: 'card', states: { card: { initial: 'asking', states: { asking } } } },
              next: { id: 'next' },
            },
          },
          held: { id: 'held' },
          stopped: { initial: 'calling', states: { calling: stop } },
          signedOff: { id: 'signedOff', type: 'final' },
          ended: { id: 'ended', type: 'final' },
        },
      });
      return stuckStates(root);
    };
    const to = (target: string): Node => ({ on: { reply: { target } } });
    expect(stuckWith(to('#next'), to('#ended'))).toEqual([]);
    expect(stuckWith(to('#signedOff'), to('#next'))).toEqual([]);
    expect(stuckWith({}, to('#next'))).toEqual([expect.stringMatching(/^m\.procedure\.job\.card\.asking /)]);
    expect(stuckWith(to('#next'), {})).toEqual([expect.stringMatching(/^m\.stopped\.calling /)]);
    // On hold nobody goes on.
    expect(stuckWith(to('#held'), to('#next'))).toHaveLength(1);
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
