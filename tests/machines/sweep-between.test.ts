import { describe, expect, it } from 'vitest';
import { demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const between = () => sessionAt(demoSix, 'sweeps.second.asking');

describe('a speed between the ends of a sweep', () => {
  it('is held for fifteen seconds while the needle is followed, and not a second less', () => {
    expect(between().clock(14_000).context.step).toBe('sweeps.second');
    expect(between().clock(14_000).clock(1000).context.step).toBe('sweeps.third');
  });

  it('does not pass by time once something was said that was not understood: it may have been the pressure', () => {
    const unclear = between().send({ type: 'unclear' });
    expect(unclear.clock(59_000).name).toBe('sweeps.second.asking');
    unclear.value('oilPressure', 320, { via: 'keys' });
    expect(unclear.context.step).toBe('sweeps.third');
  });

  it('does not pass by time once somebody said "not yet": that is waited for', () => {
    const waited = between().reply('notYet');
    expect(waited.lines).toEqual(['notYet']);
    expect(waited.clock(15_000).name).toBe('sweeps.second.asking');
    expect(waited.fork().value('oilPressure', 320, { via: 'keys' }).context.step).toBe('sweeps.third');
    expect(waited.clock(45_000).name).toBe('stopped.makingSafe');
  });

  it('does not stay there for ever either: nobody answers for a minute, and everything is off', () => {
    const unclear = between().send({ type: 'unclear' }).clock(30_000).send({ type: 'unclear' });
    expect(unclear.clock(29_000 - 1).name).toBe('sweeps.second.asking');
    expect(unclear.clock(1).name).toBe('stopped.makingSafe');
  });

  it('does not pass by time beside a pressure that is too low, nor with it', () => {
    const low = between().value('oilPressure', 20, { via: 'keys' });
    expect(low.context.step).not.toBe('sweeps.third');
    low.clock(20_000);
    expect(low.context.step).not.toBe('sweeps.third');
  });
});
