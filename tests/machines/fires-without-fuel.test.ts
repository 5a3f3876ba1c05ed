import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import { languageCodes, languages } from '../../prompts/index.ts';
import { wordSaid } from '../../src/session/wording.ts';
import type { Driver } from './helpers/driver.ts';
import { demoBoat, demoFour, demoGenset, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const UNTIL = 'noFuelCrank.untilPressure';
const HOLDS = 'noFuelCrank.holds';

const early = (crank: string) =>
  sessionAt(demoSix, `${crank}.cranking`).reply('oilPressureShows', { afterMs: 1000 });
/** Every state in which it may be noticed that it fires. */
const noticed: readonly (readonly [string, () => Driver])[] = [
  ...[UNTIL, HOLDS].flatMap(crank => [
    [`${crank}.cranking`, () => sessionAt(demoSix, `${crank}.cranking`)] as const,
    [`${crank}.outcome`, () => sessionAt(demoSix, `${crank}.cranking`).reply('nothingYet')] as const,
  ]),
  [`${UNTIL}.early`, () => early(UNTIL)],
  [
    `${UNTIL}.released`,
    () => sessionAt(demoSix, `${UNTIL}.cranking`).reply('oilPressureShows', { afterMs: 12_000 }),
  ],
];

describe('an engine that fires while it is cranked without fuel', () => {
  it.each(noticed)('in %s: everything off, whoever says it, and however', (state, at) => {
    expect(at().name).toBe(state);
    expect(offerOf(at().moment).replies).toContain('fired');
    expect(offerOf(at().moment).anybodys).toContain('fired');
    for (const by of ['technician', 'second'] as const)
      for (const via of ['voice', 'keys', 'touch'] as const) {
        const driver = at().reply('fired', { by, via, afterMs: 100 });
        expect(driver.name).toBe('stopped.makingSafe');
        expect(driver.context.stop).toMatchObject({ cause: 'firedUnfuelled', found: 'firedUnfuelled' });
        expect(driver.context.timer).toBeNull();
      }
  });

  it('counts from a voice that was misunderstood as often as you like', () => {
    const driver = sessionAt(demoSix, `${UNTIL}.cranking`).reply('nothingYet', { afterMs: 100 });
    for (let nth = 0; nth < 4; nth += 1) driver.send({ type: 'unclear' }, { afterMs: 100 });
    expect(driver.reply('fired', { via: 'voice', afterMs: 100 }).name).toBe('stopped.makingSafe');
  });

  it.each([
    ['demo-boat', demoBoat, demoBoat.cutOff?.at],
    ['demo-genset', demoGenset, demoGenset.cutOff?.at],
    ['demo-four', demoFour, demoFour.cutOff?.at],
  ] as const)('%s: what cuts it off is in the first sentence, in every language', (_, profile, at) => {
    const driver = sessionAt(profile, `${UNTIL}.cranking`).reply('fired');
    const [first] = driver.last.said;
    expect(first).toMatchObject({ line: 'stopCauseCut', priority: 'hazard' });
    for (const code of languageCodes) {
      const { spoken } = first ? wordSaid(first, languages[code], 'metric') : { spoken: '' };
      if (at !== undefined) expect(spoken.split(/(?<=\.) /)[0]).toContain(at);
      expect(spoken).toContain(languages[code].causes.firedUnfuelled);
    }
  });

  it('and runs on, is no starter that will not let go: what cuts it off is named once more', () => {
    const driver = sessionAt(demoBoat, `${UNTIL}.cranking`).reply('fired').reply('stillRunning');
    expect(driver.last.said.find(({ priority }) => priority === 'hazard')).toMatchObject({
      line: 'stillRunning',
      values: { cut: { line: 'cutAt', values: { at: demoBoat.cutOff?.at } } },
    });
  });

  it('has its burst ended, for the budget of the starter', () => {
    const driver = sessionAt(demoSix, `${UNTIL}.cranking`).reply('fired', { afterMs: 2500 });
    const burst = driver.context.bursts.at(-1);
    expect((burst?.endMs ?? 0) - (burst?.startMs ?? 0)).toBe(2500);
  });

  it('is not cranked again before its cut-off and what disables it were looked at, whatever is named for it', () => {
    for (const cause of ['causeFalseAlarm', 'causeNoStart'] as const) {
      const driver = sessionAt(demoSix, `${HOLDS}.cranking`).reply('fired').reply('allOff').reply('yes');
      expect(driver.name).toBe('stopped.causeReadBack');
      driver.reply('no').reply(cause).reply('yes');
      expect(driver.name).toBe('stopped.reopened');
      const reopened = driver.context.reopened ?? [];
      for (const step of [
        'job.cutOff',
        'noFuelCrank.disabled',
        'noFuelCrank.proved',
        'walkRound.tools',
        'barOver.toolOut',
      ])
        expect(reopened).toContain(step);
    }
  });

  it('comes back through all of that to the starter, and to the end', () => {
    const driver = sessionAt(demoFour, `${UNTIL}.cranking`)
      .reply('fired')
      .reply('allOff')
      .reply('yes')
      .reply('yes');
    driver.reply('ready').reply('yes');
    expect(driver.context.step).toBe('job.cutOff');
    expect(driver.goodToTheEnd().name).toBe('signedOff');
  });
});

describe('before the burst', () => {
  it.each([UNTIL, HOLDS])('%s: it is told in a few words what to say', step => {
    const before = sessionAt(
      demoSix,
      step === UNTIL ? 'noFuelCrank.batteryLoad.readingBack' : `${UNTIL}.released`,
    ).reply('yes');
    const ask = before.last.said.find(({ line }) => line === 'ask');
    expect(ask?.values.before).toMatchObject({
      list: expect.arrayContaining([{ line: 'ifItFires', values: {} }]),
    });
  });

  it.each(languageCodes)('shorter than eight words (%s)', code => {
    expect(languages[code].lines.ifItFires.split(' ').length).toBeLessThanOrEqual(8);
  });

  it('with fuel "fired" is what is hoped for, as ever', () => {
    const driver = sessionAt(demoSix, 'firstFire.crank.cranking').reply('fired');
    expect(driver.context.step).toBe('firstFire.oilPressure');
  });
});
