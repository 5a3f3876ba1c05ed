import { describe, expect, it } from 'vitest';
import { sweepPressure } from '../../../machines/limits/oil.ts';
import type { StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { changed, demoFour, demoSix } from '../helpers/profiles.ts';
import { knowing, readAt } from './known.ts';
import { isDone, sessionAt } from './sessions.ts';

/* Demo-six: five speeds from 1000 to 1800 rpm, a gauge that may miss 35 kPa, a relief valve at 480 kPa. */
const before: readonly StepId[] = ['sweeps.first', 'sweeps.second', 'sweeps.third', 'sweeps.fourth'];
const fifth = sweepPressure(4, before);
const begun = (fromKpa: number, profile = demoSix) =>
  knowing(
    profile,
    { coolantTemperature: 80 },
    {
      readings: [
        ...readAt('warmUp.watch', [[0, 80]]),
        ...readAt('sweeps.first', [[10, fromKpa]], 'oilPressure'),
      ],
    },
  );

describe('a sweep of which only the ends were read', () => {
  it('rises by what the gauge may miss at the least', () => {
    expect(fifth(begun(300), 335)).toMatchObject({ ok: true, value: { met: true } });
    expect(fifth(begun(300), 334)).toMatchObject({
      ok: false,
      line: 'pressureDoesNotFollow',
      verdict: {
        met: false,
        value: 34,
        min: 35,
        unit: 'kPa',
        rule: {
          id: 'oil-pressure-rises',
          source: 'a gear pump delivers in proportion to speed until the relief valve opens (closed form)',
          validity: 'both ends of a sweep, on one gauge',
        },
      },
    });
  });

  it('may be held by the relief valve, which begins to open at 95 % of its rating', () => {
    expect(fifth(begun(456), 456)).toMatchObject({ ok: true });
    expect(fifth(begun(455), 455)).toMatchObject({ ok: false, line: 'pressureDoesNotFollow' });
  });

  it('may be held at what a bus shows at the most, where the bus tells it', () => {
    const withRelief = (profile: Profile) =>
      changed(profile, { oilPressure: { ...profile.oilPressure, reliefKpa: 1500 } });
    expect(fifth(begun(1000, withRelief(demoSix)), 1000)).toMatchObject({ ok: true, value: { met: true } });
    const byVoice = { ...withRelief(demoSix), bus: undefined };
    expect(fifth(begun(1000, byVoice), 1000)).toMatchObject({ ok: false, line: 'pressureDoesNotFollow' });
  });

  it('is not excused by a relief valve that the profile does not name', () => {
    const { reliefKpa: _, ...oilPressure } = demoSix.oilPressure;
    const unnamed = { ...changed(demoSix, {}), oilPressure: { ...oilPressure, reliefKpa: undefined } };
    // @ts-expect-error A profile read by an earlier version may lack it.
    expect(fifth(begun(470, unnamed), 470)).toMatchObject({ ok: false });
  });

  it('has to be above the floor of its speed first', () => {
    expect(fifth(begun(50), 100)).toMatchObject({ ok: true, value: { met: false } });
  });

  it('is not judged where its beginning was not read', () => {
    const unread = knowing(demoSix, {}, { readings: readAt('warmUp.watch', [[0, 80]]) });
    expect(fifth(unread, 400)).toMatchObject({ ok: false, issue: { code: 'missing', input: 'oilPressure' } });
  });
});

describe('a sweep of which all was read', () => {
  it('is not judged where its speeds are too close to one another to tell', () => {
    const sweeps = demoSix.sweeps.map((sweep, nth) => ({ ...sweep, rpm: 1000 + 10 * nth }));
    const close = { ...demoSix, sweeps };
    const readings = [
      ...readAt('warmUp.watch', [[0, 80]]),
      ...before.flatMap((step, nth) => readAt(step, [[10 + nth, 300 + 10 * nth]], 'oilPressure')),
    ];
    expect(fifth(knowing(close, {}, { readings }), 400)).toMatchObject({
      ok: false,
      issue: { code: 'tooLittleData', input: 'points' },
    });
  });
});

/* Demo-four, warm: a floor of 244 kPa at 2100 rpm, its highest speed. */
describe('the highest speed of a sweep', () => {
  const at = () => sessionAt(demoFour, 'sweeps.fifth.asking');

  it.each([40, 243])(
    'with %d kPa, below its floor, stops for no oil pressure, by whatever way it is read',
    kpa => {
      const byVoice = at().value('oilPressure', kpa).reply('yes');
      const byKeys = at().value('oilPressure', kpa, { via: 'keys' }).reply('yes');
      for (const driver of [byVoice, byKeys]) {
        expect(driver.name).toBe('stopped.makingSafe');
        expect(driver.context.stop).toMatchObject({ cause: 'noOilPressure', found: 'noOilPressure' });
      }
    },
  );

  it('below its floor stops too where nobody denies it in time', () => {
    const driver = at().value('oilPressure', 243);
    expect(driver.clock(7999).name).toBe('sweeps.fifth.readingBack');
    expect(driver.clock(1).name).toBe('stopped.makingSafe');
  });

  it('at its floor but no higher than at the lowest speed does not stop: back to idle, and once more', () => {
    const driver = at().value('oilPressure', 244).reply('yes');
    expect(driver.name).toBe('sweeps.fifth.asking');
    expect(driver.lines).toContain('pressureDoesNotFollow');
    expect(isDone(driver, 'sweeps.fifth')).toBe(false);
  });
});
