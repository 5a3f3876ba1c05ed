import { describe, expect, it } from 'vitest';
import { firstLoaded, keptOff, modeSwitchOf, switchedOff, switchedOn } from '../../machines/controls.ts';
import { controlsOf, isOver, offerOf, outcomeOf, stateName } from '../../machines/moment.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { Driver, machineFor } from './helpers/driver.ts';
import { changed, demoBoat, demoFour, demoGenset, demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';

const plain = (line: string) => ({ line, values: {} });

describe('by what an engine is started and stopped', () => {
  const { use } = demoGenset;
  if (use.kind !== 'generator') throw new Error('It is a generating set.');
  const { stopControl: _, ...unnamedSet } = demoGenset;
  const { stopControl: __, ...unnamedBoat } = demoBoat;
  const bare: Profile = { ...unnamedSet, use: { ...use, modeSwitch: null } };
  const pump = changed(demoFour, { use: { kind: 'stationary', coupling: 'clutch' } });
  const at = { at: 'mode switch of the control panel' };

  it.each<[string, Profile, object, object, string | null]>([
    ['a vehicle', demoFour, plain('keyOff'), plain('keyOn'), null],
    [
      'a set with a mode switch',
      unnamedSet,
      { line: 'switchToZero', values: at },
      { line: 'switchToManual', values: at },
      at.at,
    ],
    ['a set without one', bare, plain('offAtControl'), plain('switchedOn'), null],
    ['a boat', unnamedBoat, plain('offAtControl'), plain('switchedOn'), null],
    ['a pump', pump, plain('offAtControl'), plain('switchedOn'), null],
  ])('%s is told in its own words', (_, profile, off, on, modeSwitch) => {
    expect(switchedOff(profile)).toEqual(off);
    expect(switchedOn(profile)).toEqual(on);
    expect(modeSwitchOf(profile)).toBe(modeSwitch);
  });

  it.each([demoGenset, demoBoat, changed(demoFour, { stopControl: 'red handle down' })])(
    'what the profile itself names goes ahead of that: $name',
    profile => {
      expect(switchedOff(profile)).toBe(profile.stopControl);
    },
  );

  it('nobody starts a vehicle whose key is out, or in the pocket of who turns it; another has its control tagged', () => {
    expect(keptOff(demoFour, 'hands')).toEqual(plain('keyOut'));
    expect(keptOff(demoFour, 'bar')).toEqual(plain('keyInPocket'));
    expect([demoGenset, demoBoat, pump].map(profile => keptOff(profile, 'hands'))).toEqual(
      Array.from({ length: 3 }, () => plain('controlTagged')),
    );
  });

  it('it is first asked for load on the drive, under way, or by what it drives', () => {
    expect([demoFour, demoBoat, demoGenset, pump].map(firstLoaded)).toEqual(
      ['firstDrive', 'underWay', 'firstLoad', 'firstLoad'].map(plain),
    );
  });
});

describe('a moment', () => {
  const machine = machineFor(demoSix);
  const at = (value: Parameters<typeof machine.resolveState>[0]['value'], known = {}) =>
    machine.resolveState({ value, context: knowing(demoSix, {}, known) });
  const asking = { procedure: { job: { protection: 'asking' } } } as const;

  it('is called by its phase, its step and what is done in it', () => {
    expect(stateName(at(asking))).toBe('job.protection.asking');
    expect(stateName(at({ stopped: 'askingCause' }))).toBe('stopped.askingCause');
    expect(stateName(at('signedOff'))).toBe('signedOff');
    expect(stateName(new Driver(demoSix).moment)).toBe('job.card.asking');
  });

  it('offers what its state offers, and nothing once it is over', () => {
    expect(offerOf(at(asking))).toMatchObject({ replies: ['protectionOn', 'notYet'], by: 'technician' });
    expect(offerOf(at('signedOff'))).toStrictEqual({ replies: [], by: 'technician' });
    expect(offerOf(at('ended'))).toStrictEqual({ replies: [], by: 'technician' });
  });

  it('is over where it was signed off or ended, and says which', () => {
    expect([at(asking), at('signedOff'), at('ended')].map(isOver)).toEqual([false, true, true]);
    expect([at('signedOff'), at('ended')].map(outcomeOf)).toEqual(['signedOff', 'ended']);
  });

  describe('understands, besides what is awaited,', () => {
    const always = ['sayAgain', 'status', 'help'];
    const timer = { startedMs: 0, totalMs: 60_000, announced: 0 };

    it('hold and going back, and how much time is left where something is timed', () => {
      expect(controlsOf(at(asking))).toEqual(['hold', 'goBack', ...always]);
      expect(controlsOf(at(asking, { timer }))).toEqual(['hold', 'goBack', 'timeLeft', ...always]);
    });

    it('a skip where the profile allows it', () => {
      const [step = 'prime.strokes'] = demoSix.allowedSkips;
      expect(controlsOf(at(asking, { step }))).toEqual(['hold', 'goBack', 'skip', ...always]);
    });

    it('that a number is taken back, while the engine is as it was then and "wrong" denies nothing else', () => {
      const echoed = (engine: string) => ({
        echoed: [{ step: 'job.ambient', quantity: 'ambientTemperature', si: 5, engine }],
      });
      const may = (value: Parameters<typeof at>[0], engine: string) =>
        controlsOf(at(value, echoed(engine))).includes('takeBack');
      const running = { procedure: { warmUp: { hose: 'asking' } } } as const;
      expect(may(asking, 'off')).toBe(true);
      expect(may(asking, 'cranking')).toBe(true);
      expect(may(asking, 'running')).toBe(false);
      expect(may(running, 'running')).toBe(true);
      expect(may(running, 'off')).toBe(false);
      expect(may({ procedure: { job: { figures: 'asking' } } }, 'off')).toBe(false);
    });

    it('only to go on while on hold', () => {
      expect(controlsOf(at('held'))).toEqual(['continue', ...always]);
      expect(controlsOf(at('held', { timer }))).toEqual(['continue', 'timeLeft', ...always]);
    });

    it('neither hold nor going back in a stop, and where the limits are tight', () => {
      expect(controlsOf(at({ stopped: 'askingCause' }))).toEqual(always);
      const tight = at({ procedure: { firstFire: { oilPressure: 'asking' } } }, { timer });
      expect(controlsOf(tight)).toEqual(['timeLeft', ...always]);
    });
  });
});
