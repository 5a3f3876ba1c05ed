import { describe, expect, it } from 'vitest';
import type { Context } from '../../machines/context.ts';
import { languages } from '../../prompts/index.ts';
import { Session } from '../../src/session/session.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';
import type { Driver } from '../machines/helpers/driver.ts';
import { demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

const { lines, quantities, controls, gates, phases, replies, units, steps } = languages.en;

/** A session that goes on from where a machine was led to, and what its faces show. */
async function shownAt(driver: Driver) {
  const base = await rig('demo-six', 'metric');
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'), driver.nowMs);
  const session = new Session({ ...base.session.parts, clock }, driver.moment);
  const viewer = new Viewer(session, 'microphone');
  return { session, clock, viewer, view: () => viewer.view() };
}

/** The same machine, knowing something else. */
function knowing(driver: Driver, parts: Partial<Context>): Driver {
  const { machine, moment } = driver;
  driver.moment = machine.resolveState({
    value: moment.value,
    context: { ...moment.context, ...parts },
  });
  return driver;
}

const at = (state: string) => shownAt(sessionAt(demoSix, state));

describe('a session that has just begun', () => {
  it('shows all of itself, and nothing of what there is not', async () => {
    const run = await rig('demo-six', 'metric');
    const viewer = new Viewer(run.session, 'microphone');
    await run.session.begin();
    const view = viewer.view();
    expect(view).toMatchObject({
      profileName: demoSix.name,
      invented: true,
      state: 'working',
      key: 'job.card.asking',
      phase: phases.job,
      phaseNumber: 1,
      title: steps['job.card'].title,
      addressed: 'technician',
      addressedName: 'T',
      engine: 'off',
      number: null,
      timer: null,
      readings: [],
      faults: [],
      openItems: [],
      problems: [],
      outcome: null,
      hearing: { source: 'microphone', levelDbfs: null, clipping: false, speech: false, last: null },
    });
    expect(view.phaseCount).toBeGreaterThan(10);
    expect(view.prompt).not.toBe('');
    for (const part of ['callOuts', 'bus', 'sights']) expect(view).not.toHaveProperty(part);
    expect(view.choices).toContain(replies.cardRight[0]);
    expect(view.controls).toEqual(
      (['hold', 'goBack', 'sayAgain', 'status', 'help'] as const).map(id => controls[id][0]),
    );
    for (const control of view.controls) expect(view.choices).not.toContain(control);
    expect(view.log.map(({ time, who }) => [time, who])).toEqual(view.log.map(() => ['00:00', 'says']));
    expect(view.log.at(-1)?.text).toBe(`${view.remark} ${view.prompt}`);
  });

  it('shows what is asked for before the first fire, and what of it is met', async () => {
    const view = (await at('firstFire.crank.askingClear')).view();
    expect(view.gates.map(({ gate }) => gate)).toContain('oilPrimed');
    for (const { gate, name, met } of view.gates) {
      expect(name).toBe(gates[gate]);
      expect(met, gate).toBe(gate !== 'secondPersonClear');
    }
    const early = (await at('job.card.asking')).view();
    expect(early.gates.every(({ met }) => !met)).toBe(true);
  });
});

describe('where a session is', () => {
  it('is shown as its phase, by name and number, and its step', async () => {
    const filling = (await at('fill.oilQuantity.asking')).view();
    expect(filling).toMatchObject({
      phase: phases.fill,
      phaseNumber: 2,
      title: steps['fill.oilQuantity'].title,
    });
    const end = (await at('signOff.sign.asking')).view();
    expect(end.phaseNumber).toBe(end.phaseCount);
  });

  it('is shown as working, held, stopped or over', async () => {
    const driver = sessionAt(demoSix, 'fill.coolantFilled.asking');
    expect((await shownAt(driver)).view()).toMatchObject({ state: 'working', outcome: null });
    expect((await shownAt(driver.fork([]).send({ type: 'hold' }))).view().state).toBe('held');
    expect((await shownAt(driver.fork([]).stop())).view().state).toBe('stopped');
    const over = (await at('signedOff')).view();
    expect(over).toMatchObject({ state: 'over', outcome: 'signedOff' });
  });

  it('is shown with a word that stops everything only while one is to be tried out', async () => {
    const asked = sessionAt(demoSix, 'job.stopTechnician.asking');
    expect((await shownAt(asked)).view().emergencyWord).toBe('stop');
    const next = asked.fork([]).stop();
    expect(next.name).toBe('stopped.drillGoesOn');
    expect((await shownAt(next)).view().emergencyWord).toBe('stop');
    const both = next.fork([]).stop({ by: 'second', afterMs: 1000 });
    expect(both.name).toBe('stopped.drill');
    expect((await shownAt(both)).view()).not.toHaveProperty('emergencyWord');
    expect((await at('fill.oilQuantity.asking')).view()).not.toHaveProperty('emergencyWord');
  });

  it('is shown with what the engine does', async () => {
    expect((await at('noFuelCrank.untilPressure.askingClear')).view().engine).toBe('off');
    expect((await at('noFuelCrank.untilPressure.cranking')).view().engine).toBe('cranking');
    expect((await at('checks.coolant.asking')).view().engine).toBe('running');
  });

  it('is shown with whoever is asked', async () => {
    expect((await at('noFuelCrank.untilPressure.askingClear')).view()).toMatchObject({
      addressed: 'second',
      addressedName: 'S',
    });
  });
});

describe('a number that is awaited', () => {
  it('is shown by its name, its unit and its range', async () => {
    expect((await at('fill.oilQuantity.asking')).view().number).toEqual({
      name: quantities.oilQuantity.name,
      unit: units.litre.said[0],
      min: 0,
      max: 22.5,
    });
  });
});

describe('what is timed', () => {
  it('is a hold, what is left of it, and whether it rests', async () => {
    const driver = sessionAt(demoSix, 'fill.coolantBleed.counting');
    const { title } = steps['fill.coolantBleed'];
    const { view, clock } = await shownAt(driver);
    expect(view().timer).toEqual({ title, totalMs: 120_000, leftMs: 120_000, held: false });
    clock.advance(50_000);
    expect(view().timer?.leftMs).toBe(70_000);
    const held = await shownAt(driver.fork([]).send({ type: 'hold' }));
    held.clock.advance(30_000);
    expect(held.view().timer).toEqual({ title, totalMs: 120_000, leftMs: 119_000, held: true });
  });

  it('is or else the time for an answer, and never less than none', async () => {
    const { view, clock } = await at('firstFire.oilPressure.asking');
    const before = view().timer;
    expect(before).toMatchObject({ title: steps['firstFire.oilPressure'].title, totalMs: 8000, held: false });
    clock.advance(2000);
    expect((before?.leftMs ?? 0) - (view().timer?.leftMs ?? 0)).toBe(2000);
    clock.advance(60_000);
    expect(view().timer?.leftMs).toBe(0);
  });
});

describe('what was read', () => {
  it('is shown with its limits: from and to, at least, at most; the latest last', async () => {
    const { session, view } = await at('fill.oilQuantity.asking');
    const read = (si: number) => {
      session.receive({ type: 'value', quantity: 'oilQuantity', si }, 'technician', 'keys');
      session.receive({ type: 'reply', id: 'yes' }, 'technician', 'keys');
      return session.settled();
    };
    await read(13);
    const row = { name: quantities.oilQuantity.name, limits: '14.0–16.0' };
    expect(view().readings).toEqual([{ ...row, value: `13.0 ${units.litre.short}`, met: false }]);
    await read(15);
    expect(view().readings).toEqual([{ ...row, value: `15.0 ${units.litre.short}`, met: true }]);
  });

  const judged = async (state: string, quantity: 'crankingVoltage' | 'coolantTemperature', si: number) => {
    const { session, view } = await at(state);
    session.receive({ type: 'value', quantity, si }, 'technician', 'keys');
    session.receive({ type: 'reply', id: 'yes' }, 'technician', 'keys');
    await session.settled();
    return view().readings;
  };

  it('at least', async () => {
    // 9.3 V at 4 degC, 9.6 at 21.
    expect(await judged('noFuelCrank.batteryLoad.asking', 'crankingVoltage', 11)).toEqual([
      { name: quantities.crankingVoltage.name, value: '11.0 V', limits: '≥ 9.3', met: true },
    ]);
  });

  it('at most', async () => {
    expect(await judged('checks.coolant.asking', 'coolantTemperature', 40)).toEqual([
      {
        name: quantities.coolantTemperature.name,
        value: `40 ${units.degC.short}`,
        limits: '≤ 107',
        met: true,
      },
    ]);
  });

  it('again, it goes to the end', async () => {
    const { session, view } = await at('job.ambient.asking');
    const names = () => view().readings.map(({ name }) => name);
    const read = async (quantity: 'ambientTemperature' | 'coldestNight', si: number) => {
      session.receive({ type: 'value', quantity, si }, 'technician', 'keys');
      await session.settled();
    };
    await read('ambientTemperature', 5);
    await read('coldestNight', -5);
    expect(names()).toEqual([quantities.ambientTemperature.name, quantities.coldestNight.name]);
    for (let turn = 0; turn < 3 && view().key !== 'job.ambient.asking'; turn += 1) {
      session.receive({ type: 'goBack' }, 'technician', 'keys');
      await session.settled();
    }
    await read('ambientTemperature', 6);
    expect(names()).toEqual([quantities.coldestNight.name, quantities.ambientTemperature.name]);
  });
});

describe('faults and what was left out', () => {
  it('are shown by number and meaning, and by title', async () => {
    const driver = knowing(sessionAt(demoSix, 'checks.coolant.asking'), {
      faults: [
        { spn: 157, fmi: 18, seenMs: 0 },
        { spn: 524_287, fmi: 18, seenMs: 0 },
      ],
      skips: [{ step: 'fill.coolantFreezePoint', reason: 'no refractometer', by: 'technician' }],
    });
    const view = (await shownAt(driver)).view();
    expect(view.faults[0]).toMatch(/^SPN 157 FMI 18: \w.*low/i);
    expect(view.faults[1]).toBe('SPN 524287 FMI 18: ?');
    expect(view.openItems).toEqual([steps['fill.coolantFreezePoint'].title]);
  });
});

describe('what is said and heard', () => {
  it('stands in the log by time and speaker, and what was not understood with a question mark', async () => {
    const run = await rig('demo-six', 'metric');
    const viewer = new Viewer(run.session, 'microphone');
    await run.session.begin();
    await run.pass(61_000);
    await run.type('the moon is blue');
    const heard = () => viewer.view().log.filter(({ who }) => who === 'heard');
    expect(heard()).toEqual([{ time: '01:01', who: 'heard', text: '? the moon is blue' }]);
    expect(viewer.view().hearing.last).toEqual({
      text: 'the moon is blue',
      counted: false,
      by: 'technician',
    });
    await run.type('card is right');
    expect(heard().at(-1)?.text).toBe('card is right');
    expect(viewer.view().hearing.last).toEqual({ text: 'card is right', counted: true, by: 'technician' });
    await run.type('stop');
    expect(viewer.view().log.some(({ who }) => who === '!')).toBe(true);
  });

  it('is kept for the last fifty lines', async () => {
    const run = await rig('demo-six', 'metric');
    const viewer = new Viewer(run.session, 'microphone');
    await run.session.begin();
    for (let i = 0; i < 60; i += 1) await run.type(`nonsense ${i}`);
    const { log } = viewer.view();
    expect(log).toHaveLength(50);
    expect(log.map(({ text }) => text)).toContain('? nonsense 59');
    expect(log.map(({ text }) => text)).not.toContain('? nonsense 0');
  });

  it('in passing is shown beside the question, until another one is asked', async () => {
    const run = await rig('demo-six', 'metric');
    const viewer = new Viewer(run.session, 'microphone');
    await run.session.begin();
    await run.type('status');
    const { remark = '' } = viewer.view();
    expect(remark).not.toBe('');
    expect(viewer.view().prompt).not.toContain(remark);
    await run.type('card is right');
    expect(viewer.view().remark).not.toBe(remark);
  });

  it('before a question, as what has to be known for it, is shown beside it', async () => {
    const run = await rig('demo-six', 'us');
    const viewer = new Viewer(run.session, 'microphone');
    await run.session.begin();
    await goUntil(run, 'noFuelCrank.untilPressure.askingClear');
    const { remark, prompt } = viewer.view();
    expect(remark).toMatch(/Answer within 0:10 of each burst\. .*note the lowest battery voltage/);
    expect(prompt).toContain('Clear to crank?');
    expect(prompt).not.toContain('burst');
  });

  it('as a call-out is shown whole until somebody has acted on it', async () => {
    const run = await rig('demo-six', 'metric');
    const viewer = new Viewer(run.session, 'microphone');
    await run.session.begin();
    await run.type('card is right');
    run.session.receive({ type: 'stop' }, 'second', 'touch');
    await run.session.settled();
    const { callOuts = [], prompt } = viewer.view();
    expect(callOuts).toEqual(['Stop! Key off. Stop!']);
    expect(callOuts).not.toContain(prompt);
    await run.type('gibberish');
    expect(viewer.view().callOuts).toEqual(callOuts);
    await run.type('all is off');
    expect(viewer.view()).not.toHaveProperty('callOuts');
  });

  it('as a call-out goes when something else is asked later', async () => {
    const run = await rig('demo-six', 'metric');
    const viewer = new Viewer(run.session, 'microphone');
    await run.session.begin();
    run.session.receive({ type: 'stop' }, 'second', 'touch');
    await run.session.settled();
    run.clock.advance(1000);
    run.session.receive({ type: 'reply', id: 'allOff' }, 'technician', 'touch');
    await run.session.settled();
    expect(viewer.view()).not.toHaveProperty('callOuts');
  });
});

describe('what does not work', () => {
  it('is told once each, the last five of it, the newest last', async () => {
    const { viewer, view } = await at('fill.oilQuantity.asking');
    for (const name of ['a', 'b', 'c', 'd', 'e', 'e', 'f']) viewer.showProblem(`No ${name}.`);
    expect(view().problems).toEqual(['No b.', 'No c.', 'No d.', 'No e.', 'No f.']);
    viewer.showProblem('No c.');
    expect(view().problems).toEqual(['No b.', 'No c.', 'No d.', 'No e.', 'No f.']);
    expect(view().problems).not.toContain(lines.bayLoud);
  });
});

describe('the ear', () => {
  it('is shown by what it measures, and anew when it is another', async () => {
    const { viewer, view } = await at('fill.oilQuantity.asking');
    viewer.level({ levelDbfs: -20, clipping: true, speech: true });
    const measured = { source: 'microphone', levelDbfs: -20, clipping: true, speech: true, speaking: false };
    expect(view().hearing).toEqual({ ...measured, last: null });
    viewer.listensWith('keys only');
    expect(view().hearing).toEqual({
      source: 'keys only',
      levelDbfs: null,
      clipping: false,
      speech: false,
      speaking: false,
      last: null,
    });
  });
});

describe('a vehicle bus and a rehearsal', () => {
  it('are shown with what they show, and what they do not', async () => {
    const { viewer, view } = await at('fill.oilQuantity.asking');
    const values: Readonly<Record<string, number>> = { engineSpeed: 800 };
    viewer.showsBus({
      source: 'candump on can0',
      quantities: ['engineSpeed', 'oilPressure'],
      look: {
        value: quantity => values[quantity] ?? null,
        lamps: () => ({}),
        codes: () => null,
        redStop: () => false,
      },
      state: () => 'alive',
      done: Promise.resolve(),
      close() {},
    });
    expect(view().bus).toEqual({
      source: 'candump on can0',
      state: 'alive',
      values: [
        { name: quantities.engineSpeed.name, value: `800 ${units.rpm.short}` },
        { name: quantities.oilPressure.name, value: null },
      ],
    });
  });

  it('tell those who watch of each change, once, for as long as they do', async () => {
    const { viewer, view } = await at('fill.oilQuantity.asking');
    let changes = 0;
    const unwatch = viewer.watch(() => {
      changes += 1;
    });
    viewer.sees(['a puddle', 'a spanner']);
    expect(view().sights).toEqual(['a puddle', 'a spanner']);
    viewer.sees(['a puddle', 'a spanner']);
    expect(changes).toBe(1);
    viewer.sees(['a puddlea spanner']);
    expect(changes).toBe(2);
    viewer.level({ levelDbfs: -20, clipping: false, speech: false });
    viewer.listensWith('keys only');
    viewer.showProblem('No microphone.');
    expect(changes).toBe(5);
    unwatch();
    viewer.sees([]);
    expect(changes).toBe(5);
    expect(view().sights).toEqual([]);
  });
});

describe('an engine that is heard', () => {
  const heard = async (state: object) => {
    const { viewer, view } = await at('checks.leaks.item1');
    const silent = { rpm: null, trace: [], hunting: null, change: null, microphone: '' };
    viewer.showsEngineEar({ take() {}, state: () => ({ ...silent, ...state }), close() {} });
    return view().engineEar;
  };

  it('is shown with its speed, or without one, and with what went before', async () => {
    expect(await heard({})).toEqual({ speed: null, trace: [] });
    expect(await heard({ rpm: 849.6, trace: [null, 800, 850] })).toEqual({
      speed: `850 ${units.rpm.short}`,
      trace: [null, 800, 850],
    });
  });

  it('is shown with whose microphone hears it, how its idle hunts, and how its sound has changed', async () => {
    expect(await heard({ microphone: 'bench' })).toMatchObject({ microphone: 'bench' });
    expect(await heard({ hunting: { amplitudeRpm: 29.6, periodS: 4.17 } })).toMatchObject({
      hunting: `30 ${units.rpm.short}, 4.2 s`,
    });
    const changed = async (db: number) => (await heard({ change: { fromHz: 500, toHz: 1000, db } }))?.change;
    expect(await changed(7.6)).toBe('+8 dB, 500-1000 Hz');
    expect(await changed(-7.6)).toBe('-8 dB, 500-1000 Hz');
  });

  it('is not shown where nothing listens for it', async () => {
    expect((await at('checks.leaks.item1')).view()).not.toHaveProperty('engineEar');
  });
});

describe('what was left open', () => {
  it('is shown by where it is, and by its value or what was found there', async () => {
    const openItems: Context['openItems'] = [
      { step: 'checks.charging', quantity: 'chargingVoltage', si: 12.84, by: 'technician' },
      { step: 'firstFire.eyes', finding: 'whiteSmoke', by: 'second' },
      { step: 'checks.coolant', by: 'technician' },
    ];
    const view = (await shownAt(knowing(sessionAt(demoSix, 'checks.leaks.item1'), { openItems }))).view();
    expect(view.openItems).toEqual([
      `${steps['checks.charging'].title} 12.8 ${units.V.short}`,
      `${steps['firstFire.eyes'].title} ${replies.whiteSmoke[0]}`,
      steps['checks.coolant'].title,
    ]);
  });
});

describe('a stopped session', () => {
  const stoppedAt = async (state: string) => (await shownAt(sessionAt(demoSix, state).stop())).view();

  it('is not sure of an engine that ran until somebody has said that all is off', async () => {
    expect((await stoppedAt('checks.leaks.item1')).engine).toBe('unsure');
    expect((await stoppedAt('fill.fuelInTank.asking')).engine).toBe('off');
    const safe = sessionAt(demoSix, 'checks.leaks.item1').stop().reply('allOff').reply('yes');
    expect((await shownAt(safe)).view().engine).toBe('off');
  });

  it('is a drill where a stop word was tried out, and nowhere else', async () => {
    expect((await stoppedAt('job.stopTechnician.asking')).drill).toBe(true);
    expect((await stoppedAt('fill.fuelInTank.asking')).drill).toBe(false);
    expect((await at('job.stopTechnician.asking')).view().drill).toBe(false);
  });
});

describe('what comes to the second person', () => {
  it('is shown two steps of theirs ahead, by how many steps away they are, and nothing once it is over', async () => {
    const { coming = [] } = (await at('job.ambient.asking')).view();
    expect(coming).toHaveLength(2);
    expect(coming.every(({ title, away }) => title !== '' && away > 0)).toBe(true);
    expect((await at('signedOff')).view()).not.toHaveProperty('coming');
  });

  it('is no word that they have just proved', async () => {
    const first = sessionAt(demoSix, 'job.stopTechnician.asking');
    const titles = async (driver: Driver) =>
      ((await shownAt(driver)).view().coming ?? []).map(({ title }) => title);
    expect(await titles(first)).toContain(steps['job.stopSecond'].title);
    const both = first.fork([]).stop({ by: 'technician' }).stop({ by: 'second', afterMs: 1000 });
    expect(both.name).toBe('stopped.drill');
    expect(await titles(both)).not.toContain(steps['job.stopSecond'].title);
  });

  it('is as many questions away as are asked until then: what is asked together is one', async () => {
    const hoses = sessionAt(demoSix, 'walkRound.hoses.together');
    const away = async (driver: Driver) => (await shownAt(driver)).view().coming?.[0]?.away ?? 0;
    const before = await away(hoses);
    // Hoses, boots and belts are answered by one reply.
    const answered = hoses.fork([]).goodUntil(({ context }) => context.done.includes('walkRound.belts'));
    expect(await away(answered)).toBe(before - 1);
  });

  it('is also where the starter turns: they say that all is clear', async () => {
    const { coming = [] } = (await at('noFuelCrank.disabled.asking')).view();
    expect(coming.map(({ title }) => title)).toContain(steps['noFuelCrank.untilPressure'].title);
  });
});

describe('a reading of before', () => {
  it('is shown again, where it names a quantity of this version and has a value', async () => {
    const { viewer, view } = await at('checks.leaks.item1');
    const judged = { step: 'checks.coolant', met: true } as const;
    viewer.recall([
      { ...judged, quantity: 'coolantTemperature', value: 80, unit: 'degC' },
      { ...judged, quantity: 'coolantTemperature', value: null, unit: 'degC' },
      { ...judged, quantity: null, value: 5, unit: 'degC' },
      { ...judged, quantity: 'somethingElse', value: 5, unit: 'degC' },
    ] as unknown as Parameters<Viewer['recall']>[0]);
    expect(view().readings).toEqual([
      { name: quantities.coolantTemperature.name, value: `80 ${units.degC.short}`, limits: '', met: true },
    ]);
  });
});
