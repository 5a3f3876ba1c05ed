import { describe, expect, it } from 'vitest';
import { goUntil, rig } from '../helpers/session-rig.ts';

describe('a fault code read digit by digit', () => {
  it.each([
    ['in figures', '157', '18'],
    ['in words', 'one five seven', 'one eight'],
  ])('%s is read back, judged by the profile and watched', async (_, spn, fmi) => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run, 'keyOn.faults.asking');
    for (const reply of ['read a code', spn, fmi]) await run.type(reply);
    expect(run.said.at(-1)).toBe('S P N 157, F M I 18. Correct?');
    for (const reply of ['correct', 'no more codes', 'correct']) await run.type(reply);
    expect(run.key()).toMatch(/^keyOn\.heaterHold/);
    expect(run.session.moment.context.faults).toMatchObject([{ spn: 157, fmi: 18 }]);
  });

  it('that no parameter can have does not count', async () => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run, 'keyOn.faults.asking');
    for (const reply of ['read a code', '524287', '0', 'fifty two']) {
      await run.type(reply);
      expect(run.key()).toBe('keyOn.faults.spn');
    }
  });
});
