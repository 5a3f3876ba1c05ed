import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../machines/first-start.ts';
import { offerOf, stateName } from '../../machines/moment.ts';
import { gateMet } from '../../machines/progress.ts';
import type { StepId } from '../../prompts/types.ts';
import { Driver, type Happened } from './helpers/driver.ts';
import { demoGenset, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

/** People take words back; what they did to the engine is done all the same. */

const back = (driver: Driver, times = 1) => {
  for (let time = 0; time < times; time += 1) driver.send({ type: 'goBack' }, { via: 'keys' });
  return driver;
};
/** The steps that are asked for from here on, until one that is named. */
const askedUntil = (driver: Driver, step: StepId): StepId[] => {
  const from = driver.history.length;
  driver.goodUntil(({ context }) => context.step === step);
  return [...new Set(driver.history.slice(from - 1).map(({ after }) => after.context.step))];
};
const steps = (list: readonly StepId[]) => ({ steps: { list: list.map(step => ({ step })) } });

describe('going back behind what took a safeguard away', () => {
  const lamps = () => new Driver(demoSix).goodUntil(({ context }) => context.step === 'keyOn.lamps');

  it('asks for no more than that word again where nothing behind it is done once more', () => {
    const driver = back(lamps());
    expect(driver.context.step).toBe('noFuelCrank.restored');
    expect(driver.lines).not.toContain('safeAgainFirst');
    expect(driver.context.done).toContain('noFuelCrank.proved');
  });

  it('"fuelling restored": it is disabled and proved anew before anything is done under that', () => {
    const driver = back(lamps(), 2);
    expect(driver.context.step).toBe('noFuelCrank.disabled');
    expect(driver.last.said[0]).toMatchObject({
      line: 'safeAgainFirst',
      values: steps(['noFuelCrank.disabled', 'noFuelCrank.proved']),
    });
    expect(askedUntil(driver, 'keyOn.lamps')).toEqual([
      'noFuelCrank.disabled',
      'noFuelCrank.proved',
      'noFuelCrank.oilLevel',
      'noFuelCrank.restored',
      'keyOn.lamps',
    ]);
  });

  it('and no starter turns with fuelling on, though the voltage was not measured after all', () => {
    const driver = back(lamps(), 2).goodUntil(({ context }) => context.step === 'noFuelCrank.oilLevel');
    back(driver);
    expect(driver.context.step).toBe('noFuelCrank.voltage');
    expect(driver.lines).not.toContain('safeAgainFirst');
    driver.reply('notMeasured', { by: 'second', via: 'keys' });
    driver.goodUntil('noFuelCrank.holds.cranking');
    expect(driver.context.takenAway).not.toContain('noFuelCrank.restored');
  });

  it('"bar is out": the starter is isolated anew before the bar goes on', () => {
    const driver = new Driver(demoSix).goodUntil(({ context }) => context.step === 'noFuelCrank.disabled');
    expect(back(driver).context.step).toBe('barOver.toolOut');
    expect(back(driver).context.step).toBe('barOver.isolated');
    expect(driver.lines[0]).toBe('safeAgainFirst');
    expect(askedUntil(driver, 'barOver.toolOut')).toEqual([
      'barOver.isolated',
      'barOver.turned',
      'barOver.toolOut',
    ]);
    // What was made safe since is: it is asked for once.
    expect(back(driver).context.step).toBe('barOver.turned');
    expect(back(driver).lines).not.toContain('safeAgainFirst');
  });

  it('"mode in manual": a set is locked out anew where it leads back behind the cranks', () => {
    const driver = sessionAt(demoGenset, 'keyOn.lamps.item1');
    back(driver, 2);
    expect(driver.context.step).toBe('noFuelCrank.disabled');
    back(driver);
    expect(driver.context.step).toBe('job.autoStart');
    expect(driver.last.said[0]).toMatchObject({ line: 'safeAgainFirst', values: steps(['job.autoStart']) });
    const asked = askedUntil(driver, 'noFuelCrank.untilPressure');
    expect(asked.slice(0, 2)).toEqual(['job.autoStart', 'barOver.toolOut']);
    expect(asked).toContain('noFuelCrank.manual');
  });

  it('"handed back": a set is locked out, its breaker open and its heater off before hands go into it', () => {
    const driver = sessionAt(demoGenset, 'signOff.sign.asking');
    expect(back(driver).context.step).toBe('signOff.handBack');
    expect(driver.lines).not.toContain('safeAgainFirst');
    back(driver);
    expect(driver.last.said[0]).toMatchObject({
      line: 'safeAgainFirst',
      values: steps(['job.autoStart', 'job.breaker', 'fill.jacketHeater']),
    });
    // The whole start is not taken back with it.
    expect(back(driver.fork()).lines).toEqual(['cannotGoBack']);
    expect(back(driver.fork()).context.done).toEqual(driver.context.done);
    const asked = askedUntil(driver, 'signOff.sign');
    expect(asked.slice(0, 3)).toEqual(['job.autoStart', 'job.breaker', 'fill.jacketHeater']);
    expect(asked.slice(-3)).toEqual(['signOff.retorque', 'signOff.handBack', 'signOff.sign']);
    expect(driver.goodToTheEnd().name).toBe('signedOff');
  });
});

describe('going back behind a cap that was found cool', () => {
  const running = () => sessionAt(demoSix, 'warmUp.watch.between');
  const stoppedFor = (cause: 'overheating' | 'noOilPressure') =>
    running()
      .send({ type: 'stop', cause }, { via: 'keys' })
      .reply('allOff', { via: 'keys' })
      .reply('yes', { via: 'keys' })
      .reply('ready', { via: 'keys' });
  const coolantReady = ({ context }: Driver) => gateMet(procedureFor(demoSix), context, 'coolantReady');

  it('has it found cool once more before coolant is touched, and before any starter turns', () => {
    const driver = stoppedFor('overheating').goodUntil(({ context }) => context.step === 'fill.coolantBled');
    expect(driver.context.done).toEqual(expect.arrayContaining(['fill.coolantCool', 'fill.coolantFilled']));
    expect(back(driver, 2).context.step).toBe('fill.coolantMix');
    expect(back(driver).name).toBe('fill.coolantCool.asking');
    expect(coolantReady(driver)).toBe(false);
    expect(askedUntil(driver, 'fill.coolantBled').slice(0, 2)).toEqual([
      'fill.coolantCool',
      'fill.coolantMix',
    ]);
    driver.goodUntil('firstFire.crank.cranking');
    expect(driver.context.done).toContain('fill.coolantCool');
  });

  it('asks for its heat where the sample under it is taken once more, though the stop had left it shut', () => {
    const driver = stoppedFor('noOilPressure');
    expect(driver.context.step).toBe('fill.oilFilterPreFilled');
    expect(coolantReady(driver)).toBe(true);
    expect(back(driver, 2).name).toBe('fill.coolantCool.asking');
    expect(askedUntil(driver, 'fill.oilGrade').slice(0, 2)).toEqual([
      'fill.coolantCool',
      'fill.coolantFreezePoint',
    ]);
  });

  it('asks for nothing on an engine that has never fired', () => {
    const driver = new Driver(demoSix).goodUntil(({ context }) => context.step === 'fill.oilGrade');
    expect(back(driver).context.step).toBe('fill.coolantFreezePoint');
  });
});

describe('a set that was handed back, and comes back after a long absence', () => {
  const away = (awayS: number) => {
    const driver = sessionAt(demoGenset, 'signOff.sign.asking');
    driver.send({ type: 'stop', cause: 'toolRestarted', awayS }, { via: 'tool' });
    driver.reply('allOff', { via: 'keys' }).goodUntil('stopped.reopened');
    return driver;
  };

  it('is handed back once more before it is signed for, as it is locked out once more', () => {
    const driver = away(1860);
    expect(driver.context.reopened).toEqual(
      expect.arrayContaining(['job.autoStart', 'job.breaker', 'signOff.handBack']),
    );
    const from = driver.notes.length;
    driver.goodToTheEnd();
    expect(driver.name).toBe('signedOff');
    const passed = driver.notes
      .slice(from)
      .flatMap(({ kind, data }) => (kind === 'passed' ? [data.step] : []));
    expect(passed.slice(-2)).toEqual(['signOff.handBack', 'signOff.sign']);
    expect(passed).toContain('job.autoStart');
  });

  it('is not taken back to before its run from the safety that is asked for anew', () => {
    const driver = away(1860).reply('ready', { via: 'keys' });
    driver.goodUntil(({ context }) => context.step === 'job.protection');
    const { done } = driver.context;
    expect(back(driver).lines).toEqual(['cannotGoBack']);
    expect(driver.context.done).toEqual(done);
  });

  it('is asked for neither after a short one', () => {
    expect(away(60).context.reopened).toEqual(['job.stopTechnician', 'job.stopSecond']);
  });
});

/** What is done under a safeguard, what made it, and what takes it away: listed by hand, apart from the procedure. */
interface Guarded {
  readonly made: readonly string[];
  readonly takenAway: readonly string[];
  /** Whether this state is done under it. */
  readonly under: (name: string) => boolean;
}
const guarded: readonly Guarded[] = [
  {
    made: ['noFuelCrank.disabled', 'noFuelCrank.proved'],
    takenAway: ['noFuelCrank.restored'],
    under: name => /^noFuelCrank\.(untilPressure|holds)\.cranking$/.test(name),
  },
  {
    made: ['barOver.isolated'],
    takenAway: ['barOver.toolOut'],
    under: name => /^barOver\.(prelube|turboFeed|turned)\./.test(name),
  },
  {
    made: ['job.autoStart'],
    takenAway: ['noFuelCrank.manual', 'signOff.handBack'],
    under: name => /^(fill|prime|walkRound|barOver|signOff\.(oilLevel|coolantLevel|retorque))\./.test(name),
  },
  {
    made: ['job.breaker'],
    takenAway: ['signOff.handBack'],
    under: name => /^(fill|prime|walkRound|barOver|signOff\.(oilLevel|coolantLevel|retorque))\./.test(name),
  },
];

/** The mode switch is off with everything, and with the engine. */
const switchesOff = ({ event, notes }: Happened) =>
  (event.type === 'reply' && event.id === 'allOff') ||
  notes.some(({ kind, data }) => kind === 'passed' && /\.keyOff$/.test(data.step));

/** Which word was the last: the place in the session where each step was said last. */
type Said = ReadonlyMap<string, number>;

const afterThat = (said: Said, happened: Happened, at: number): Said => {
  const passed = happened.notes.flatMap(({ kind, data }) => (kind === 'passed' ? [data.step] : []));
  if (passed.length === 0 && !switchesOff(happened)) return said;
  const next = new Map(said);
  if (switchesOff(happened)) next.delete('noFuelCrank.manual');
  for (const step of passed) next.set(step, at);
  return next;
};

/** What was done under a safeguard whose opposite was said later, as sentences; `before` it, what was said. */
function unguarded({ profile, history }: Driver, before: Said): string[] {
  const ruled = profile.use.kind === 'generator' ? guarded : guarded.slice(0, 2);
  let said = before;
  return history.flatMap((happened, index) => {
    said = afterThat(said, happened, FAR + index);
    const lastOf = (id: string) => said.get(id) ?? -1;
    const name = stateName(happened.after);
    if (name === stateName(happened.before)) return [];
    return ruled.flatMap(({ made, takenAway, under }) => {
      const missing = made.filter(id => lastOf(id) <= Math.max(-1, ...takenAway.map(lastOf)));
      return under(name) && missing.length > 0 ? [`${name} without ${missing.join(', ')}`] : [];
    });
  });
}
/** More than any session has events. */
const FAR = 100_000;

type Deed = 'good' | 'goBack' | 'takeBack' | 'stop' | 'restart' | 'longRestart' | 'offered' | 'clock';
const deed = fc.record({
  deed: fc.oneof(
    { weight: 12, arbitrary: fc.constant<Deed>('good') },
    { weight: 5, arbitrary: fc.constant<Deed>('goBack') },
    {
      weight: 2,
      arbitrary: fc.constantFrom<Deed>('takeBack', 'stop', 'offered', 'restart', 'longRestart', 'clock'),
    },
  ),
  which: fc.nat(20),
  afterMs: fc.integer({ min: 900, max: 3000 }),
});
type Turn = typeof deed extends fc.Arbitrary<infer T> ? T : never;

function carryOut(driver: Driver, { deed: todo, which, afterMs }: Turn): void {
  const how = { via: 'keys', afterMs } as const;
  const restart = (awayS: number) =>
    driver.send({ type: 'stop', cause: 'toolRestarted', awayS }, { via: 'tool', afterMs });
  switch (todo) {
    case 'good':
      driver.good();
      break;
    case 'offered': {
      const { replies } = offerOf(driver.moment);
      const id = replies[which % Math.max(1, replies.length)];
      if (id) driver.reply(id, how);
      break;
    }
    case 'restart':
      restart(60);
      break;
    case 'longRestart':
      restart(7200);
      break;
    case 'clock':
      driver.clock(afterMs);
      break;
    default:
      driver.send({ type: todo }, how);
  }
}

/** Sessions just behind what takes a safeguard away, where a random walk is led back the most. */
const starts = (
  [
    [demoSix, ['barOver.toolOut', 'noFuelCrank.disabled', 'noFuelCrank.voltage', 'keyOn.lamps']],
    [
      demoGenset,
      ['noFuelCrank.manual', 'keyOn.lamps', 'signOff.retorque', 'signOff.handBack', 'signOff.sign'],
    ],
  ] as const
).flatMap(([profile, places]) =>
  places.map(place => {
    const driver = new Driver(profile).goodUntil(({ context }) => context.step === place);
    return { driver: driver.fork([]), said: driver.history.reduce<Said>(afterThat, new Map()) };
  }),
);

describe('whatever is taken back, called out or gone on with', () => {
  it('nothing is done under a safeguard that was taken away since it was made', () => {
    const reached = { begun: 0, safeAgain: 0 };
    fc.assert(
      fc.property(
        fc.nat(starts.length - 1),
        fc.array(deed, { minLength: 20, maxLength: 90, size: 'max' }),
        (place, turns) => {
          const start = starts[place];
          if (!start) throw new Error('There is no such starting point.');
          const driver = start.driver.fork();
          for (const turn of turns) if (!driver.over) carryOut(driver, turn);
          expect(unguarded(driver, start.said)).toEqual([]);
          for (const { after, said } of driver.history) {
            if (guarded.some(({ under }) => under(stateName(after)))) reached.begun += 1;
            if (said.some(({ line }) => line === 'safeAgainFirst')) reached.safeAgain += 1;
          }
        },
      ),
      { seed: 20_261_129, numRuns: 150, interruptAfterTimeLimit: 50_000 },
    );
    expect(reached.begun).toBeGreaterThan(300);
    expect(reached.safeAgain).toBeGreaterThan(30);
  });
});
