import { describe, expect, it } from 'vitest';
import { firstLoaded } from '../../machines/controls.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { languageCodes, languages } from '../../prompts/index.ts';
import type { LanguageCode, StepId } from '../../prompts/types.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { wordSaid } from '../../src/session/wording.ts';
import { Driver } from './helpers/driver.ts';
import { changed, demoBoat, demoFour, demoGenset, demoSix } from './helpers/profiles.ts';
import { isDone, sessionAt } from './limits/sessions.ts';

const ids = (profile: Profile) => procedureFor(profile).map(({ id }) => id);

/** All that is said in a good start and in stops on the way, in words. */
function told(profile: Profile, code: LanguageCode): string[] {
  const run = new Driver(profile).goodToTheEnd();
  const stops = ['noFuelCrank.untilPressure.cranking', 'firstFire.eyes.item1'].flatMap(state => {
    const driver = sessionAt(profile, state)
      .stop()
      .stop({ afterMs: 4000 })
      .reply('notYet')
      .reply('stillRunning');
    driver.reply('allOff').reply('yes').reply('causeFuelLeak').reply('yes');
    return driver.history;
  });
  const rests = sessionAt(profile, 'firstFire.crank.cranking').reply('nothingYet').reply('nothingYet').ring();
  return [...run.history, ...stops, ...rests.history].flatMap(({ said }) =>
    said.map(line => wordSaid(line, languages[code], 'metric').spoken),
  );
}

const withoutControl = ({ stopControl: _, ...profile }: Profile): Profile => changed(profile as Profile, {});

/** Words of what has a key, a pedal and a road. */
const ofTrucks: Readonly<Record<LanguageCode, RegExp>> = {
  en: /\bkey\b(?! off at the helm)|\bfoot\b|\bdrive\b/i,
  fr: /\bclé\b|\bcontact\b|\bpied\b|\btrajet\b/i,
  es: /\bllave\b(?! de la calefacción)|\bcontacto\b|\bpie\b|\bviaje\b/i,
};

describe.each(languageCodes)('in the language %s', code => {
  it.each([
    ['a generating set', demoGenset],
    ['a boat', demoBoat],
    ['a set whose profile names no control', withoutControl(demoGenset)],
    ['a boat whose profile names no control', withoutControl(demoBoat)],
  ] as const)('%s hears nothing of a key, a pedal or a road', (_, profile) => {
    const wrong = told(profile, code).filter(text =>
      ofTrucks[code].test(text.replaceAll(languages[code].replies.allOff[1] ?? '', '')),
    );
    expect([...new Set(wrong)]).toEqual([]);
  });

  it('a truck hears of its key', () => {
    expect(told(demoFour, code).filter(text => ofTrucks[code].test(text)).length).toBeGreaterThan(3);
  });
});

const firstSaid = (driver: Driver) => {
  const [said] = driver.last.said;
  return said ? wordSaid(said, languages.en, 'metric').spoken : '';
};

describe('what stops it every day is called out as the profile names it', () => {
  const stopped = (profile: Profile) => firstSaid(sessionAt(profile, 'firstFire.eyes.item1').stop());
  const { use, ...rest } = demoGenset;

  it.each([
    ['a vehicle', demoFour, 'Stop! Key off. Stop!'],
    ['a vehicle that names it', changed(demoFour, { stopControl: 'red button' }), 'Stop! Red button. Stop!'],
    ['a set', demoGenset, 'Stop! Mode switch to off. Stop!'],
    [
      'a set that names only its mode switch',
      withoutControl(demoGenset),
      'Stop! Mode switch of the control panel to off. Stop!',
    ],
    [
      'a set without a mode switch',
      changed(withoutControl({ ...rest, use }), {
        use: { ...use, kind: 'generator', autoStart: 'a', breaker: 'b', modeSwitch: null },
      }),
      'Stop! Off at its control. Stop!',
    ],
    ['a boat', demoBoat, 'Stop! Key off at the helm. Stop!'],
    ['a boat that names none', withoutControl(demoBoat), 'Stop! Off at its control. Stop!'],
  ] as const)('%s', (_, profile, said) => {
    expect(stopped(profile)).toBe(said);
  });

  it('where it is switched off for good, and before hands go in', () => {
    const ask = sessionAt(demoGenset, 'shutdown.keyOff.asking');
    const said = ask.context.lastSaid;
    expect(said && wordSaid(said, languages.en, 'metric').spoken).toBe(
      'Mode switch to off. Engine is off, standing still?',
    );
    const isolated = sessionAt(demoGenset, 'barOver.isolated.asking').context.lastSaid;
    expect(isolated && wordSaid(isolated, languages.en, 'metric').spoken).toContain(
      'its control at off and tagged',
    );
  });
});

describe('the mode switch of a set', () => {
  const inManual = () => sessionAt(demoGenset, 'noFuelCrank.manual.asking');

  it('locked out at the start, is put to manual before the first crank, never to automatic', () => {
    const order: readonly StepId[] = [
      'job.autoStart',
      'barOver.toolOut',
      'noFuelCrank.proved',
      'noFuelCrank.manual',
      'noFuelCrank.untilPressure',
      'signOff.handBack',
    ];
    expect(ids(demoGenset).filter(id => order.includes(id))).toEqual(order);
    const said = inManual().context.lastSaid;
    expect(said && wordSaid(said, languages.en, 'metric').spoken).toMatch(
      /Mode in manual\? The mode switch of the control panel.*never automatic/,
    );
  });

  it('is told again where current comes on to it', () => {
    const ask = sessionAt(demoGenset, 'noFuelCrank.restored.readingBack')
      .reply('yes')
      .last.said.find(({ line }) => line === 'ask');
    expect(ask?.values.on).toEqual({
      line: 'switchToManual',
      values: { at: 'mode switch of the control panel' },
    });
  });

  it('is asked for again after each stop: all that is off is not in manual', () => {
    const driver = sessionAt(demoGenset, 'firstFire.eyes.item1').stop({ by: 'technician' });
    driver.reply('allOff').reply('yes').reply('causeFalseAlarm').reply('yes').reply('ready').reply('yes');
    expect(driver.context.step).toBe('noFuelCrank.manual');
    expect(driver.goodToTheEnd().name).toBe('signedOff');
  });

  it('is not asked for where there is none, nor of what is no set', () => {
    const use = { kind: 'generator', autoStart: 'a', breaker: 'b', modeSwitch: null } as const;
    for (const profile of [changed(demoGenset, { use }), demoSix, demoBoat])
      expect(ids(profile)).not.toContain('noFuelCrank.manual');
    // An older profile names none, and has one all the same.
    const older = { ...demoGenset, use: { kind: 'generator', autoStart: 'a', breaker: 'b' } } as Profile;
    expect(ids(changed(older, {}))).toContain('noFuelCrank.manual');
  });
});

describe('a jacket heater', () => {
  it('is off before coolant is filled in, and opens the gate with it', () => {
    expect(ids(demoGenset).indexOf('fill.jacketHeater')).toBeLessThan(
      ids(demoGenset).indexOf('fill.coolantMix'),
    );
    expect(ids(demoSix)).not.toContain('fill.jacketHeater');
  });

  it('is looked at again where coolant has been let out', () => {
    const driver = sessionAt(demoGenset, 'checks.leaks.item1').stop();
    driver.reply('allOff').reply('yes').reply('causeCoolantLeak').reply('yes');
    expect(driver.context.reopened).toContain('fill.jacketHeater');
  });
});

describe('what was locked out for the start', () => {
  const handBack = () => sessionAt(demoGenset, 'signOff.handBack.asking');

  it('is given back last, by name, with everybody clear of a set that may start', () => {
    const said = handBack().context.lastSaid;
    expect(said && wordSaid(said, languages.en, 'metric').spoken).toBe(
      'Warning. Everybody clear: from now on it may start by itself. By whoever locked it: output breaker of the set unlocked, mode switch of the control panel back to automatic, tag off, plug of the jacket heater on, regeneration allowed again. All handed back?',
    );
    expect(ids(demoGenset).indexOf('signOff.handBack')).toBeGreaterThan(
      ids(demoGenset).indexOf('signOff.retorque'),
    );
  });

  it('is given back before anybody signs', () => {
    const driver = sessionAt(demoGenset, 'signOff.sign.asking');
    const lacking = driver.fork();
    lacking.moment = lacking.machine.resolveState({
      value: { procedure: { signOff: { sign: 'entering' } } },
      context: { ...driver.context, done: driver.context.done.filter(id => id !== 'signOff.handBack') },
    });
    lacking.moment = lacking.machine.resolveState({
      value: { procedure: { signOff: { sign: 'refused' } } },
      context: lacking.context,
    });
    lacking.reply('ready');
    expect(lacking.name).toBe('signOff.sign.refused');
    expect(lacking.notes.findLast(({ kind }) => kind === 'refused')?.data).toEqual({
      step: 'signOff.sign',
      unmet: ['handedBack'],
    });
    expect(driver.reply('iSign').reply('yes').name).toBe('signedOff');
  });

  it('stays on the record by name', () => {
    const run = new Driver(demoGenset).goodToTheEnd();
    const passed = run.notes.find(({ kind, data }) => kind === 'passed' && data.step === 'signOff.handBack');
    expect(JSON.stringify(passed?.data)).toContain('output breaker of the set');
  });

  it('is only what was: regeneration of a truck that has a filter, and of one without nothing', () => {
    const filtered = changed(demoFour, { afterTreatment: 'particulateFilter' });
    const said = sessionAt(filtered, 'signOff.handBack.asking').context.lastSaid;
    expect(said && wordSaid(said, languages.en, 'metric').spoken).toBe(
      'By whoever locked it: regeneration allowed again. All handed back?',
    );
    for (const profile of [demoFour, demoSix, demoBoat])
      expect(ids(profile)).not.toContain('signOff.handBack');
  });

  it('is not given back where the shop says so: it leaves locked out', () => {
    const kept = changed(demoGenset, { handsBack: false });
    expect(ids(kept)).not.toContain('signOff.handBack');
    expect(new Driver(kept).goodToTheEnd().name).toBe('signedOff');
  });

  it('is locked out again where it is started once more after that, and only there', () => {
    const stopAt = (driver: Driver, cause: 'causeCoolantLeak' | 'causeFalseAlarm') =>
      driver.stop({ by: 'technician' }).reply('allOff').reply('yes').reply(cause).reply('yes');
    const again = stopAt(sessionAt(demoGenset, 'signOff.sign.asking'), 'causeCoolantLeak');
    for (const step of ['job.autoStart', 'job.breaker', 'fill.jacketHeater', 'noFuelCrank.manual'])
      expect(again.context.reopened).toContain(step);
    again.reply('ready').reply('yes');
    expect(again.context.step).toBe('job.autoStart');
    expect(again.goodToTheEnd().name).toBe('signedOff');
    expect(
      again.notes.filter(({ kind, data }) => kind === 'passed' && data.step === 'signOff.handBack'),
    ).toHaveLength(1);
    const stays = stopAt(sessionAt(demoGenset, 'signOff.sign.asking'), 'causeFalseAlarm');
    expect(stays.context.reopened).toEqual([]);
    // Gone back over, it is given back all the same.
    const back = stopAt(
      sessionAt(demoGenset, 'signOff.sign.asking').send({ type: 'goBack' }),
      'causeCoolantLeak',
    );
    expect(isDone(back, 'job.autoStart')).toBe(false);
    const before = stopAt(sessionAt(demoGenset, 'signOff.oilLevel.dipstick'), 'causeCoolantLeak');
    expect(isDone(before, 'job.autoStart')).toBe(true);
  });
});

it('what was not seen to open is seen later: on the first drive, at the first load, under way', () => {
  const of = (profile: Profile) => firstLoaded(profile);
  expect(of(demoFour)).toMatchObject({ line: 'firstDrive' });
  expect(of(demoGenset)).toMatchObject({ line: 'firstLoad' });
  expect(of(demoBoat)).toMatchObject({ line: 'underWay' });
  for (const code of languageCodes) expect(languages[code].lines.notOpenedInTime).toContain('{load}');
});
