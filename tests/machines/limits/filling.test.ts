import { describe, expect, it } from 'vitest';
import { glycolShare } from '../../../machines/limits/coolant.ts';
import type { ReplyId, StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { changed, demoSix } from '../helpers/profiles.ts';
import { knowing } from './known.ts';
import { isDone, type Shown, sessionAt } from './sessions.ts';

/** Somebody says that it is done; whether that counts. */
function counts(profile: Profile, step: StepId, reply: ReplyId, shown: Shown): boolean {
  const driver = sessionAt(profile, `${step}.asking`, shown).reply(reply);
  if (driver.name !== `${step}.readingBack`) expect(driver.lines).toEqual(['notPossible']);
  return isDone(driver.reply('yes'), step);
}

describe('no reply passes where there is nothing right to fill in', () => {
  const mix = (coolant: Partial<Profile['coolant']>, shown: Shown = {}) =>
    counts(
      changed(demoSix, { coolant: { ...demoSix.coolant, ...coolant } }),
      'fill.coolantMix',
      'mixReady',
      shown,
    );

  it('a concentrate has to be as strong as the mix', () => {
    expect(mix({ minShare: 0.55, concentrateShare: 0.55 })).toBe(true);
    expect(mix({ minShare: 0.55, concentrateShare: 0.549 })).toBe(false);
  });

  it('glycol protects down to -48.3 degC (ASHRAE), margin included', () => {
    expect(mix({ freezeMarginK: 8 }, { coldestNight: -40 })).toBe(true);
    expect(mix({ freezeMarginK: 9 }, { coldestNight: -40 })).toBe(false);
  });

  it('and no further than the strongest mix that the maker allows: 50 % of ethylene to -37.0 degC (ASHRAE)', () => {
    expect(mix({ maxShare: 0.5 }, { coldestNight: -31 })).toBe(true);
    expect(mix({ maxShare: 0.5 }, { coldestNight: -33 })).toBe(false);
  });

  it('and says so before anything is filled in: which night, and what the strongest mix stands', () => {
    const weaker = changed(demoSix, { coolant: { ...demoSix.coolant, maxShare: 0.5 } });
    expect(glycolShare(knowing(weaker, { coldestNight: -33 }))).toEqual({
      ok: false,
      issue: {
        code: 'noSolution',
        input: 'nightLowC',
        given: '-33 degC',
        allowed: 'nights that 50 % of glycol stands, margin included',
      },
    });
    // -37 degC is that of half and half to the tenth: 5 K of margin leave -32.
    expect(glycolShare(knowing(weaker, { coldestNight: -32 }))).toMatchObject({ ok: true, value: 0.5 });
  });

  const oil = (coldestNight: number, parts: Partial<Profile['oil']> = {}) =>
    counts(changed(demoSix, { oil: { ...demoSix.oil, ...parts } }), 'fill.oilGrade', 'gradeRight', {
      coldestNight,
    });

  it('an oil has to be cranked in the coldest night: 5W down to -30 degC, 15W to -20 (SAE J300)', () => {
    expect([oil(-30), oil(-30.1)]).toEqual([true, false]);
    const only15W = { grades: demoSix.oil.grades.slice(0, 1) };
    expect([oil(-20, only15W), oil(-20.1, only15W)]).toEqual([true, false]);
  });

  it('and be thick enough when the engine is hot: 14.5 mm2/s at 100 degC for 15W-40', () => {
    expect(oil(-5, { minRunningViscosityMm2S: 14.5 })).toBe(true);
    expect(oil(-5, { minRunningViscosityMm2S: 14.51 })).toBe(false);
  });

  it('a fuel has to stay clear 3 K below the coldest night: No. 1 of -20 degC down to -17', () => {
    const winter = changed(demoSix, { fuel: { ...demoSix.fuel, no1CloudC: -20 } });
    const fuel = (coldestNight: number) =>
      counts(winter, 'fill.fuelGrade', 'fuelRight', { coldestNight, fuelInTank: 0 });
    expect([fuel(-17), fuel(-17.1)]).toEqual([true, false]);
  });
});
