import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { Cause, Person, Via } from '../../machines/vocabulary.ts';
import { Driver, machineFor } from './helpers/driver.ts';
import { stepIds } from './helpers/paths.ts';
import { demoFour, demoSix } from './helpers/profiles.ts';

/** One place in each phase, and one more on either side of key-off. */
const stopPlaces = [
  'job.parked.asking',
  'fill.fuelInTank.asking',
  'prime.firm.asking',
  'walkRound.tools.asking',
  'noFuelCrank.holds.cranking',
  'keyOn.lamps.item3',
  'firstFire.crank.cranking',
  'checks.leaks.item2',
  'warmUp.watch.between',
  'sweeps.third.asking',
  'shutdown.keyOff.asking',
  'shutdown.secondSoak.counting',
  'signOff.oilLevel.dipstick',
] as const;

/** At the second drill alone, as after going back to it. */
const atSecondDrill = () =>
  new Driver(demoFour).goodUntil('fill.coolantMix.together').send({ type: 'goBack' });

const placesReached = (() => {
  const driver = new Driver(demoSix);
  return new Map(stopPlaces.map(place => [place, driver.goodUntil(place).fork()] as const));
})();

const at = (place: (typeof stopPlaces)[number]): Driver => {
  const reached = placesReached.get(place);
  if (!reached) throw new Error(`${place} was not reached.`);
  return reached.fork();
};

/** From the call-out to where work goes on, with the cause that the stop came with. */
const throughStop = (driver: Driver, cause: Cause): Driver =>
  driver
    .send({ type: 'stop', cause, ...(cause === 'toolRestarted' ? { awayS: 60 } : {}) })
    .reply('allOff')
    .reply('yes')
    .goodUntil('stopped.causeReadBack')
    .reply('yes')
    .reply('ready')
    .reply('yes')
    // Fire and injury are confirmed to be over.
    .goodUntil(({ name }) => name !== 'stopped.fireOut' && name !== 'stopped.hurtHelped');

/** Once it has fired it has to be cool before anybody touches its coolant. */
const coolantAgain = [
  'job.parked',
  ...Array.from({ length: stopPlaces.indexOf('firstFire.crank.cranking') }, () => 'fill.coolantFilled'),
  'fill.coolantCool',
];

/**
 * Where work goes on after a stop at each place, in the order of the places; the last entry holds for all that
 * follow. A step that the cause puts in doubt only counts where it had been done.
 */
const goesOnAt: Record<Cause, readonly string[]> = {
  falseAlarm: [
    ...['job.parked', 'fill.fuelInTank', 'prime.firm', 'walkRound.tools', 'noFuelCrank.disabled'],
    ...['keyOn.lamps', 'keyOn.lamps', 'keyOn.lamps', 'keyOn.lamps', 'keyOn.lamps', 'keyOn.lamps'],
    ...['shutdown.secondSoak', 'signOff.oilLevel'],
  ],
  drill: [
    ...['job.parked', 'fill.fuelInTank', 'prime.firm', 'walkRound.tools', 'noFuelCrank.disabled'],
    ...['keyOn.lamps', 'keyOn.lamps', 'keyOn.lamps', 'keyOn.lamps', 'keyOn.lamps', 'keyOn.lamps'],
    ...['shutdown.secondSoak', 'signOff.oilLevel'],
  ],
  coolantLeak: coolantAgain,
  overheating: coolantAgain,
  coolantInCylinder: coolantAgain,
  oilLeak: ['job.parked', 'fill.oilFilterPreFilled'],
  noOilPressure: ['job.parked', 'fill.oilFilterPreFilled'],
  fuelLeak: ['job.parked', 'fill.fuelInTank', 'fill.firstFilterPreFilled'],
  noStart: ['job.parked', 'fill.fuelInTank', 'fill.fuelGrade'],
  binds: ['job.parked', 'fill.fuelInTank', 'prime.firm', 'walkRound.tools'],
  overspeed: ['job.parked', 'job.cutOff'],
  firedUnfuelled: ['job.parked', 'job.cutOff'],
  runsUnasked: ['job.parked', 'job.cutOff'],
  faultCode: ['job.parked', 'fill.fuelInTank', 'prime.firm', 'walkRound.sensors'],
  looseOrNoise: ['job.parked', 'fill.fuelInTank', 'prime.firm', 'walkRound.sensors'],
  // It ends the start.
  knocking: [],
  other: ['job.parked', 'fill.fuelInTank', 'prime.firm', 'walkRound.sensors'],
  smokeOrFire: ['job.card'],
  someoneHurt: ['job.card'],
  toolRestarted: ['job.parked', 'job.stopTechnician'],
};

/** Somebody's hands and tools were in it: they are counted again, and the starter is connected again. */
const hands = ['walkRound.tools', 'barOver.toolOut'];
const coolant = ['fill.coolantFilled', 'fill.coolantBled', 'walkRound.hoses'];

/** What a cause puts in doubt, as the start of a step's name. */
const inDoubt: Record<Cause, readonly string[]> = {
  falseAlarm: [],
  drill: [],
  coolantLeak: [...coolant, ...hands],
  coolantInCylinder: [...coolant, 'fill.oilLevel', 'walkRound.tools', 'barOver.', 'noFuelCrank.'],
  overheating: [...coolant, 'walkRound.belts', ...hands],
  oilLeak: ['fill.oilFilter', 'fill.oilLevel', 'noFuelCrank.', ...hands],
  noOilPressure: [
    ...['fill.oilFilter', 'fill.oilLevel', 'walkRound.sensors', 'noFuelCrank.'],
    ...['barOver.isolated', 'barOver.prelube', 'barOver.turboFeed', ...hands],
  ],
  fuelLeak: ['fill.firstFilter', 'fill.secondFilter', 'prime.', ...hands],
  noStart: [
    ...['fill.fuelGrade', 'fill.firstFilter', 'fill.secondFilter', 'prime.', 'walkRound.sensors'],
    ...hands,
  ],
  binds: ['walkRound.tools', 'barOver.'],
  overspeed: ['job.cutOff', 'walkRound.', 'barOver.', 'noFuelCrank.'],
  firedUnfuelled: ['job.cutOff', 'noFuelCrank.', ...hands],
  runsUnasked: ['job.cutOff', 'job.autoStart', 'noFuelCrank.', ...hands],
  faultCode: ['walkRound.sensors', 'walkRound.wiring', ...hands],
  looseOrNoise: ['walkRound.', 'barOver.', 'noFuelCrank.'],
  knocking: ['walkRound.', 'barOver.', 'noFuelCrank.'],
  other: ['walkRound.', 'barOver.toolOut', 'noFuelCrank.'],
  smokeOrFire: ['job.', 'fill.', 'prime.', 'walkRound.', 'barOver.', 'noFuelCrank.'],
  someoneHurt: ['job.', 'walkRound.', 'noFuelCrank.'],
  toolRestarted: ['job.stop', 'noFuelCrank.'],
};

const causes = Object.keys(goesOnAt).flatMap(cause => (isCause(cause) ? [cause] : []));
function isCause(cause: string): cause is Cause {
  return cause in goesOnAt;
}

const beforeKeyOn = (id: string) => /^(job|fill|prime|walkRound|barOver|noFuelCrank)\./.test(id);
const afterKeyOff = (place: string) => /^(shutdown\.\w+(Soak|Look)|signOff)/.test(place);

describe.each(causes.filter(cause => cause !== 'knocking'))('after a stop for %s', cause => {
  it.each(stopPlaces.map((place, index) => ({ place, index })))(
    'at $place, work goes on where the cause says, and what it puts in doubt is to be done again',
    ({ place, index }) => {
      const row = goesOnAt[cause];
      const before = at(place);
      const after = throughStop(before.fork(), cause);
      expect(after.context.step).toBe(row[Math.min(index, row.length - 1)]);

      const doubted = (id: string) => inDoubt[cause].some(start => id.startsWith(start));
      // Stop words that are proved anew put nothing in doubt that was found before.
      const doubts = cause !== 'toolRestarted' && before.context.done.some(doubted);
      const kept = before.context.done
        .filter(
          id => !doubted(id) || (cause === 'toolRestarted' && afterKeyOff(place) && !id.startsWith('job.')),
        )
        // Key off loses what the key-on found, and the run; a run that ended well is not lost for nothing.
        .filter(id => beforeKeyOn(id) || (afterKeyOff(place) && !doubts))
        .filter(id => !(place.startsWith('noFuelCrank') && id.startsWith('noFuelCrank')));
      expect(after.context.done).toEqual(kept);
      const reopened = after.notes.findLast(note => note.kind === 'reopened');
      expect(reopened?.data).toEqual({
        cause,
        steps: before.context.done.filter(id => !kept.includes(id)),
      });
    },
  );
});

describe('a stop', () => {
  it('is called out twice over, ahead of everything', () => {
    const stopped = at('warmUp.watch.between').stop();
    expect(stopped.name).toBe('stopped.makingSafe');
    expect(stopped.last.said[0]).toMatchObject({ line: 'stopHeard', priority: 'hazard' });
  });

  it('with a cause that is known already names it, and still has it read back', () => {
    const stopped = at('warmUp.watch.between').send({ type: 'stop', cause: 'overheating' }, { via: 'bus' });
    expect(stopped.last.said[0]).toMatchObject({ line: 'stopCause', priority: 'hazard' });
    expect(stopped.reply('allOff').reply('yes').name).toBe('stopped.causeReadBack');
    expect(stopped.reply('no').name).toBe('stopped.askingCause');
  });

  it.each([
    ['fuelLeak', 'causeFuelLeak', 'railHolds'],
    ['coolantLeak', 'causeCoolantLeak', 'hotCap'],
    ['overheating', 'causeOverheating', 'hotCap'],
  ] as const)('for %s says what has to be done first', (_, reply, line) => {
    const stopped = at('warmUp.watch.between').stop().reply('allOff').reply('yes').reply(reply).reply('yes');
    expect(stopped.last.said).toContainEqual(expect.objectContaining({ line, priority: 'hazard' }));
  });

  it('within a stop keeps the place of the first one', () => {
    const stopped = at('sweeps.third.asking').stop().reply('allOff').stop({ by: 'second' });
    expect(stopped.name).toBe('stopped.makingSafe');
    expect(stopped.context.stop).toMatchObject({ step: 'sweeps.third', cause: null, by: 'second' });
    expect(stopped.context.stops).toBe(at('sweeps.third.asking').context.stops + 2);
  });

  it('within a stop keeps on the list what the first one put there', () => {
    const first = at('sweeps.third.asking')
      .send({ type: 'stop', cause: 'oilLeak' })
      .reply('allOff')
      .reply('yes')
      .reply('yes');
    const list = first.context.reopened;
    expect(list).toContain('fill.oilLevel');
    const again = first.fork().stop().reply('allOff').reply('yes').reply('yes');
    expect(again.name).toBe('stopped.reopened');
    expect(again.context.reopened).toEqual(list);
    expect(again.context.done).toEqual(first.context.done);
  });

  it('at the place of the drill is the drill, and passes the step on the record', () => {
    const driver = atSecondDrill().stop({ by: 'second' });
    expect(driver.name).toBe('stopped.drill');
    driver.reply('thatWasTheDrill');
    expect(driver.name).toBe('fill.coolantMix.together');
    expect(driver.last.notes).toContainEqual(
      expect.objectContaining({
        kind: 'passed',
        data: expect.objectContaining({ step: 'job.stopSecond', gate: 'stopWordsProved' }),
      }),
    );
  });

  it('at the place of the first drill asks for the second word at once, and one answer confirms both', () => {
    const driver = new Driver(demoFour).goodUntil('job.stopTechnician.asking').stop();
    expect(driver.name).toBe('stopped.drillGoesOn');
    expect(offerOf(driver.moment)).toMatchObject({ by: 'second', awaits: 'drill' });
    for (const id of ['thatWasTheDrill', 'ready', 'yes'] as const)
      expect(driver.fork().reply(id).name).toBe('stopped.drillGoesOn');
    driver.stop({ by: 'second' });
    expect(driver.name).toBe('stopped.drill');
    expect(driver.context.done).not.toContain('job.stopTechnician');
    driver.reply('thatWasTheDrill');
    expect(driver.name).toBe('fill.coolantMix.together');
    expect(
      driver.last.notes.flatMap(({ kind, data }) => (kind === 'passed' ? [[data.step, data.by]] : [])),
    ).toEqual([
      ['job.stopTechnician', 'technician'],
      ['job.stopSecond', 'second'],
    ]);
  });

  it.each([
    ['a double touch', [60]],
    ['a held key', Array.from({ length: 100 }, () => 33)],
    ['a hand that bounces late', [799]],
  ])('once more by %s is not the second person trying their word out', (_, gapsMs) => {
    const driver = new Driver(demoFour).goodUntil('job.stopTechnician.asking').stop();
    for (const afterMs of gapsMs) driver.send({ type: 'stop' }, { afterMs, by: 'technician' });
    expect(driver.name).toBe('stopped.drillGoesOn');
    expect(driver.stop({ afterMs: 800, by: 'second' }).name).toBe('stopped.drill');
  });

  it('proves the word of whoever said it and no other: the technician never proves the second person’s', () => {
    const first = new Driver(demoFour)
      .goodUntil('job.stopTechnician.asking')
      .stop({ by: 'technician', via: 'touch' });
    for (const afterMs of [900, 5000, 60_000]) {
      first.stop({ by: 'technician', via: 'touch', afterMs });
      expect(first.name).toBe('stopped.drillGoesOn');
      expect(first.lines).toContain('askNextDrill');
    }
    const alone = atSecondDrill().stop({ by: 'technician', via: 'touch' });
    expect(alone.name).toBe('stopped.drillGoesOn');
    for (const driver of [first, alone]) {
      expect(driver.context.done).not.toContain('job.stopSecond');
      driver.stop({ by: 'second', via: 'touch' });
      expect(driver.name).toBe('stopped.drill');
      expect(driver.reply('thatWasTheDrill').context.done).toContain('job.stopSecond');
    }
  });

  it('bounces at a device that both use, too: the same hand within a moment is one person', () => {
    const driver = new Driver(demoFour).goodUntil('job.stopTechnician.asking').stop({ via: 'touch' });
    driver.stop({ by: 'second', via: 'touch', afterMs: 60 });
    expect(driver.name).toBe('stopped.drillGoesOn');
    expect(driver.stop({ by: 'second', via: 'touch', afterMs: 800 }).name).toBe('stopped.drill');
  });

  it('within a moment by the hands of two people at two devices is two words; by one of them, or at one device, it is one', () => {
    const touched = (device: string) =>
      new Driver(demoFour)
        .goodUntil('job.stopTechnician.asking')
        .send({ type: 'stop', device }, { by: 'technician', via: 'touch' });
    const within = (driver: Driver, how: { by: Person; via: Via; afterMs?: number }, device: string) =>
      driver.send({ type: 'stop', device }, { afterMs: 60, ...how }).name;
    expect(within(touched('tablet'), { by: 'second', via: 'touch' }, 'phone')).toBe('stopped.drill');
    const one = [
      within(touched('tablet'), { by: 'second', via: 'touch' }, 'tablet'),
      within(touched('tablet'), { by: 'technician', via: 'touch' }, 'phone'),
      // Whoever touches says it as well, and the other device hears that.
      within(touched('tablet'), { by: 'second', via: 'voice' }, 'phone'),
      within(touched('tablet'), { by: 'second', via: 'voice', afterMs: 799 }, 'phone'),
    ];
    expect(one).toEqual(Array.from(one, () => 'stopped.drillGoesOn'));
    expect(within(touched('tablet'), { by: 'second', via: 'voice', afterMs: 800 }, 'phone')).toBe(
      'stopped.drill',
    );
  });

  it('that two devices hear of one mouth proves one word, not both', () => {
    const heard = new Driver(demoFour)
      .goodUntil('job.stopTechnician.asking')
      .send({ type: 'stop', device: 'tablet' }, { by: 'technician', via: 'voice' })
      .send({ type: 'stop', device: 'phone' }, { by: 'second', via: 'voice', afterMs: 150 });
    expect(heard.name).toBe('stopped.drillGoesOn');
    expect(heard.context.done).not.toContain('job.stopSecond');
    expect(
      heard.send({ type: 'stop', device: 'phone' }, { by: 'second', via: 'voice', afterMs: 2000 }).name,
    ).toBe('stopped.drill');
  });

  it('by the second person while the technician’s word is tried out is a real one: it proves neither', () => {
    const driver = new Driver(demoFour)
      .goodUntil('job.stopTechnician.asking')
      .stop({ by: 'second', via: 'touch' });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.done.filter(id => id.startsWith('job.stop'))).toEqual([]);
  });

  it.each([1, 2])('at the place of the first drill can be a real one, after %i of the words', words => {
    const driver = new Driver(demoFour).goodUntil('job.stopTechnician.asking');
    for (let word = 0; word < words; word += 1) driver.stop();
    expect(driver.reply('allOff').reply('yes').name).toBe('stopped.askingCause');
    expect(driver.reply('causeSmokeOrFire').last.said[0]?.line).toBe('fireCall');
    driver.reply('yes');
    expect(driver.context.done).not.toContain('job.stopTechnician');
    expect(driver.context.done).not.toContain('job.stopSecond');
  });

  it('of the bus between the two words is no drill', () => {
    const driver = new Driver(demoFour).goodUntil('job.stopTechnician.asking').stop();
    driver.send({ type: 'stop', cause: 'faultCode' }, { via: 'bus' });
    expect(driver.name).toBe('stopped.makingSafe');
  });

  it('at the place of the drill can be a real one', () => {
    const driver = atSecondDrill().stop();
    expect(driver.reply('allOff').reply('yes').name).toBe('stopped.askingCause');
    expect(driver.reply('causeSomeoneHurt').last.said[0]?.line).toBe('surgery');
    driver.reply('yes');
    expect(driver.context.done).not.toContain('job.stopSecond');
  });

  it('with a known cause is never taken for the drill', () => {
    const driver = atSecondDrill();
    expect(driver.send({ type: 'stop', cause: 'faultCode' }, { via: 'bus' }).name).toBe('stopped.makingSafe');
  });

  it('ends what was asked and timed, so that no alarm is left behind', () => {
    for (const place of stopPlaces) {
      const stopped = at(place).stop();
      // What is called out once more beside an engine that may turn is no time of what was asked.
      expect(stopped.alarmMs).toBe(stopped.context.nextLookMs);
      expect(stopped.context).toMatchObject({ timer: null, deadline: null, clearAtMs: null, pending: null });
    }
  });

  it('while on hold ends the hold', () => {
    const stopped = at('shutdown.secondSoak.counting').send({ type: 'hold' }).stop();
    expect(stopped.context.heldSinceMs).toBe(null);
    expect(stopped.send({ type: 'continue' }).name).toBe('stopped.makingSafe');
  });

  it('leads to no running state again without a new first fire', () => {
    for (const place of ['checks.leaks.item2', 'warmUp.watch.between', 'sweeps.third.asking'] as const) {
      const again = throughStop(at(place), 'falseAlarm');
      const begin = again.history.length;
      again.goodUntil(driver => driver.context.step.startsWith('checks.'));
      const ways = again.history.slice(begin).map(({ before }) => before.context.step);
      expect(ways).toContain('keyOn.lamps');
      expect(ways).toContain('firstFire.crank');
      expect(ways).toContain('firstFire.oilPressure');
    }
  });

  it('after key-off for a false alarm lets the heat soak go on', () => {
    const again = throughStop(at('shutdown.secondSoak.counting'), 'falseAlarm');
    expect(again.name).toBe('shutdown.secondSoak.counting');
    expect(again.goodToTheEnd().name).toBe('signedOff');
  });

  it('can be followed by the end of the session, confirmed', () => {
    const ending = at('sweeps.third.asking').stop().reply('allOff').reply('yes').reply('endSession');
    expect(ending.over).toBe(false);
    expect(ending.fork().reply('no').name).toBe('stopped.askingCause');
    expect(ending.reply('yes').name).toBe('ended');
  });

  it('is followed by nothing while the engine is not said to be off', () => {
    const stopped = at('sweeps.third.asking').stop();
    for (const id of ['ready', 'yes', 'causeFalseAlarm', 'endSession', 'thatWasTheDrill'] as const)
      expect(stopped.reply(id).name).toBe('stopped.makingSafe');
    expect(stopped.reply('notYet').name).toBe('stopped.makingSafe');
  });
});

/** A state of the machine as far as this test looks into it. */
interface StateNode {
  readonly id: string;
  readonly type: string;
  readonly ownEvents: readonly string[];
  readonly states: Readonly<Record<string, StateNode>>;
}

const below = (node: StateNode): StateNode[] =>
  Object.values(node.states).flatMap(child => [child, ...below(child)]);

describe.each([
  ['demo-six', demoSix],
  ['demo-four', demoFour],
] as const)('in the statechart of %s', (_, profile) => {
  const root: StateNode = machineFor(profile).root;

  it('the root handles stop, and no state below it does, nor everything', () => {
    expect(root.ownEvents).toContain('stop');
    expect(below(root).length).toBeGreaterThan(300);
    expect(below(root).filter(({ ownEvents }) => ownEvents.some(event => /stop|\*/.test(event)))).toEqual([]);
  });

  it('nothing runs side by side, so that there is one state at a time', () => {
    expect(below(root).filter(({ type }) => type === 'parallel')).toEqual([]);
  });

  it('only the two ends are final', () => {
    const finals = below(root).filter(({ type }) => type === 'final');
    expect(finals.map(({ id }) => id).sort()).toEqual(['ended', 'signedOff']);
  });

  it('there is a state for each step of the procedure', () => {
    const ids = below(root).map(({ id }) => id);
    for (const step of stepIds(profile)) expect(ids).toContain(`firstStart.procedure.${step}`);
  });
});
