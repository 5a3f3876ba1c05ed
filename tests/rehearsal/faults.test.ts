import { describe, expect, it } from 'vitest';
import { parseFault, RehearsalError } from '../../src/rehearsal/faults.ts';
import { rehearseFast } from './run.ts';

describe('a whole rehearsal without a human', () => {
  it('comes to sign-off on an engine in good order', async () => {
    const { debrief } = await rehearseFast([], { profileName: 'demo-four', ambientC: 20, withBus: false });
    expect(debrief.outcome).toBe('signedOff');
    expect(debrief.faults).toEqual([]);
    // The two drills, and nothing else.
    expect(debrief.stops.map(({ step }) => step)).toEqual(['job.stopTechnician', 'job.stopSecond']);
    expect(debrief.unclear).toBe(0);
  });

  it.each([
    ['lampDriverOpen', 'lampWrong'],
    ['sensorUnplugged', '110'],
    ['injectorLineLeak', 'fuelLeak'],
    ['slowOilPressure@firstFire', 'noOilPressure'],
    ['noOilPressure@checks', 'noOilPressure'],
  ])('catches %s', async (fault, what) => {
    const { debrief } = await rehearseFast([fault]);
    expect(debrief.faults[0]?.noticed?.what).toBe(what);
    expect(debrief.outcome).toBe('ended');
  });

  it('catches an alternator that charges nothing by the meter, as an open item: its lamp alone may want more speed', async () => {
    const { debrief } = await rehearseFast(['alternatorDead']);
    expect(debrief.faults[0]?.noticed).toMatchObject({ what: 'checks.charging' });
    expect(debrief.outcome).toBe('signedOff');
  });

  it('stops by the bus alone where oil pressure is lost and nobody says a word', async () => {
    const { debrief } = await rehearseFast(['noOilPressure@warmUp'], { silentFrom: 'warmUp' });
    expect(debrief.faults[0]?.noticed).toMatchObject({ by: 'stop', what: 'noOilPressure' });
    expect(debrief.outcome).toBe('left');
  });
});

describe('a fault on the command line', () => {
  it('comes in its own phase, or in the one that is named', () => {
    expect(parseFault('hoseLetGo')).toEqual({ name: 'hoseLetGo', phase: 'shutdown' });
    expect(parseFault('noOilPressure@warmUp')).toEqual({ name: 'noOilPressure', phase: 'warmUp' });
  });

  it.each(['', 'oil', 'noOilPressure@', 'noOilPressure@lunch', 'noOilPressure@checks@checks', 'toString'])(
    'that is not known ("%s") is refused with one sentence that says what to choose from',
    text => {
      expect(() => parseFault(text)).toThrow(RehearsalError);
      expect(() => parseFault(text)).toThrow(/choose from/);
    },
  );
});
