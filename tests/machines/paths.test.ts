import { describe, expect, it } from 'vitest';
import { isOver, stateName } from '../../machines/moment.ts';
import { nextAlarmMs } from '../../machines/timing.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import { type Happened, machineFor, PAUSE_MS, takeStep } from './helpers/driver.ts';
import { explore, type Place, type Reach } from './helpers/explore.ts';
import { isCrankingState, isRunningState } from './helpers/oracle.ts';
import { breaches, deadEnds, size } from './helpers/paths.ts';
import { shortest } from './helpers/profiles.ts';

/**
 * All paths, by the path tools of the statechart library. Bounds: no two moments are told apart that differ
 * only in times, readings or the count of misunderstandings; at a stop, nobody calls out another one, and the
 * session is ended only where the cause is asked for. Every stop that the machine itself makes is gone through.
 */
const nobodyStops: Reach = {
  returns: 0,
  stopAt: () => false,
  causes: id => id === 'causeFalseAlarm',
  codes: [],
  everything: () => true,
};

/** One place in each phase. */
const stopPlaces = [
  'job.protection',
  'fill.oilLevel',
  'prime.firm',
  'walkRound.hoses',
  'noFuelCrank.untilPressure',
  'keyOn.lamps',
  'firstFire.crank',
  'checks.leaks',
  'warmUp.watch',
  'sweeps.third',
  'shutdown.firstSoak',
  'signOff.oilLevel',
];
const inStopPlace = ({ moment }: Place) => stopPlaces.some(id => stateName(moment).startsWith(`${id}.`));

const only =
  (...causes: readonly string[]) =>
  (id: string) =>
    causes.includes(id);

const graphs = {
  everything: explore(shortest, nobodyStops),
  stopAnywhere: explore(shortest, {
    ...nobodyStops,
    causes: only('causeFalseAlarm', 'causeFuelLeak', 'causeSmokeOrFire'),
    stopAt: () => true,
    everything: () => false,
  }),
  oneReturn: explore(shortest, {
    ...nobodyStops,
    causes: () => true,
    returns: 1,
    stopAt: place => place.returns === 0 && inStopPlace(place),
    everything: () => false,
  }),
  twoReturns: explore(shortest, {
    ...nobodyStops,
    causes: only('causeFalseAlarm', 'causeOilLeak'),
    returns: 2,
    stopAt: place => ['keyOn.lamps.', 'checks.leaks.'].some(id => stateName(place.moment).startsWith(id)),
    everything: () => false,
  }),
  codes: explore(shortest, {
    ...nobodyStops,
    codes: [
      [100, 1],
      [157, 18],
      [97, 15],
      [5000, 7],
    ],
    everything: () => false,
  }),
};
const { everything, stopAnywhere } = graphs;

const bounds = {
  everything: 'no stop called out; hold, go back, skip and wrong answers everywhere',
  stopAnywhere: 'one stop in any state, three causes, up to where work would go on',
  oneReturn: 'one stop in each phase, any cause, and work goes on',
  twoReturns: 'stops with the key on and at the leak hunt, two causes, and work goes on twice',
  codes: 'a code in each round: one that blocks, one watched, one that may go on, an unknown one',
};

describe('on all paths', () => {
  it('there are as many states and transitions as can be gone through, and not a handful', () => {
    const sizes = Object.entries(graphs).map(([name, graph]) => `${name}: ${size(graph)}`);
    process.stdout.write(`${sizes.join('\n')}\n`);
    for (const graph of Object.values(graphs)) expect(graph.places.size).toBeGreaterThan(500);
  });

  for (const name of ['everything', 'stopAnywhere', 'oneReturn', 'twoReturns', 'codes'] as const) {
    it(`no starter turns and no engine runs past an unmet gate (${bounds[name]})`, () => {
      expect(breaches(graphs[name], shortest)).toEqual([]);
    });

    it(`a cranking state, a running one and the sign-off are reached (${bounds[name]})`, () => {
      const names = [...graphs[name].places.values()].map(({ moment }) => stateName(moment));
      expect(names).toContain('firstFire.crank.cranking');
      expect(names.some(isCrankingState)).toBe(true);
      expect(names.some(isRunningState)).toBe(true);
      expect(names).toContain('signedOff');
    });

    it(`no state is a dead end (${bounds[name]})`, () => {
      const bound = { everything: 0, stopAnywhere: 0, oneReturn: 1, twoReturns: 2, codes: 0 }[name];
      expect(deadEnds(graphs[name], place => isOver(place.moment) || place.returns > bound)).toEqual([]);
    });

    it(`a look at the clock is never asked for again at once (${bounds[name]})`, () => {
      const spinning = graphs[name].edges
        .map(({ happened }) => happened)
        .filter(({ event }) => event.type === 'clock')
        .filter(({ after, event }) => (nextAlarmMs(after.context) ?? Number.POSITIVE_INFINITY) <= event.atMs)
        .filter(({ before, after }) => stateName(before) === stateName(after));
      expect(spinning.map(({ before }) => stateName(before))).toEqual([]);
    });
  }

  it('an end is reached from within any stop, without going on', () => {
    const stopped = [...stopAnywhere.places.values()].filter(({ moment }) =>
      stateName(moment).startsWith('stopped'),
    );
    expect(stopped.length).toBeGreaterThan(500);
    expect(deadEnds(stopAnywhere, ({ moment }) => isOver(moment)).filter(inStopped)).toEqual([]);
  });
});

const inStopped = (name: string) => name.startsWith('stopped');

/** Within a stop it is all the same where it came: each of its states with each cause, once. */
const stoppedOnce = [
  ...new Map(
    [...stopAnywhere.places.values()]
      .filter(({ moment }) => stateName(moment).startsWith('stopped'))
      .map(place => [`${stateName(place.moment)} ${place.moment.context.stop?.cause}`, place]),
  ).values(),
];

/** What one event would do at every place that is reached. */
const tried = (body: EventBody, by: 'technician' | 'second'): Happened[] =>
  [...everything.places.values(), ...stoppedOnce]
    .filter(({ moment }) => !isOver(moment))
    .map(({ moment, nowMs }) =>
      takeStep(machineFor(shortest), moment, { ...body, by, via: 'voice', atMs: nowMs + PAUSE_MS / 1000 }),
    );

const names = ({ before, after }: Happened) => [stateName(before), stateName(after)] as const;

describe('in every state that is reached', () => {
  for (const by of ['technician', 'second'] as const) {
    it(`stop leads to stopped, said by the ${by}`, () => {
      const all = tried({ type: 'stop' }, by).map(names);
      expect(all.length).toBeGreaterThan(1000);
      expect(all.filter(([, to]) => !/^stopped\.(makingSafe|drillGoesOn|drill)$/.test(to))).toEqual([]);
    });
  }

  it('something unclear changes no state, passes nothing and puts nothing on the record', () => {
    for (const happened of tried({ type: 'unclear' }, 'technician')) {
      const [from, to] = names(happened);
      expect(to).toBe(from);
      expect(happened.after.context.done).toBe(happened.before.context.done);
      expect(happened.notes).toEqual([]);
    }
  });

  for (const type of ['status', 'timeLeft', 'help', 'sayAgain'] as const) {
    // Whoever asks is there: the silence beside a running engine begins anew.
    it(`${type} says something and changes nothing`, () => {
      for (const happened of tried({ type }, 'technician')) {
        expect(names(happened)[1]).toBe(names(happened)[0]);
        expect(happened.said).toHaveLength(1);
        const apart = { lastSaid: null, unanswered: null };
        expect({ ...happened.after.context, ...apart }).toEqual({ ...happened.before.context, ...apart });
      }
    });
  }

  it('beside a running engine none waits for ever: a clock is set in each, and leads on or to a stop', () => {
    const running = [...everything.places.values()].filter(({ moment }) => moment.hasTag('running'));
    const silent = running.filter(({ moment }) => nextAlarmMs(moment.context) === null);
    expect(running.length).toBeGreaterThan(50);
    expect(silent.map(({ moment }) => stateName(moment))).toEqual([]);
  });

  it('hold, go back and skip are refused where the limits are tight, and in nothing else that cranks', () => {
    for (const type of ['hold', 'goBack', 'skip'] as const) {
      for (const happened of tried({ type }, 'technician')) {
        const { before, said } = happened;
        if (!before.hasTag('critical')) continue;
        expect(names(happened)[1]).toBe(names(happened)[0]);
        expect(said.map(({ line }) => line)).toEqual(['notWhileCritical']);
      }
    }
    const critical = [...everything.places.values()].filter(({ moment }) => moment.hasTag('critical'));
    expect(new Set(critical.map(({ moment }) => stateName(moment)))).toEqual(
      new Set([
        'firstRun.restart.cranking',
        'firstRun.restart.outcome',
        'firstRun.oilPressure.asking',
        'firstRun.oilPressure.readingBack',
        'noFuelCrank.untilPressure.cranking',
        'noFuelCrank.untilPressure.outcome',
        'noFuelCrank.holds.cranking',
        'noFuelCrank.holds.holding',
        'noFuelCrank.holds.outcome',
        'firstFire.crank.cranking',
        'firstFire.crank.outcome',
        'keyOn.heaterDone.asking',
        'keyOn.heaterDone.readingBack',
        'firstFire.oilPressure.asking',
        'firstFire.oilPressure.readingBack',
        'warmUp.watch.readingBackValue',
        'warmUp.fastIdle.readingBackValue',
        'checks.idle.stopping',
        'checks.oilPressure.readingBack',
        'checks.coolant.readingBack',
        'sweeps.first.readingBack',
        'sweeps.second.readingBack',
        'sweeps.third.readingBack',
        'sweeps.fourth.readingBack',
        'sweeps.fifth.readingBack',
        'shutdown.coolant.readingBack',
      ]),
    );
  });
});
