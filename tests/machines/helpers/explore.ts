import { fromTransition, initialTransition } from 'xstate';
import { adjacencyMapToArray, getAdjacencyMap } from 'xstate/graph';
import type { Context } from '../../../machines/context.ts';
import { type Moment, offerOf, stateName } from '../../../machines/moment.ts';
import { nextAlarmMs } from '../../../machines/timing.ts';
import type { Quantity } from '../../../machines/vocabulary.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import type { EventBody } from '../../../src/session/hearing.ts';
import { type Happened, job, machineFor, PAUSE_MS, takeStep } from './driver.ts';
import { goodBody, goodPauseMs, goodValue } from './good.ts';

/** A session at one moment of its time, with what the last event did. */
export interface Place {
  readonly moment: Moment;
  readonly nowMs: number;
  /** How often a path has come back from `stopped`; the drill does not count. */
  readonly returns: number;
  readonly last: Happened | null;
}

/** One thing that can happen at a place: an event, or time going by until the next alarm. */
export interface Act {
  readonly type: string;
  readonly body: EventBody;
  /** Time that goes by before it, where it is not the usual pause. */
  readonly afterMs?: number;
}

const act = (body: EventBody, label: string = body.type): Act => ({ type: label, body });
const reply = (id: string): Act[] => {
  const body = { type: 'reply', id } as EventBody;
  return [act(body, `reply ${id}`)];
};

const controls = ['hold', 'continue', 'goBack', 'skip'] as const;

export interface Reach {
  /** How often a path may come back from `stopped` and go on. */
  readonly returns: number;
  /** Whether somebody may call out a stop at this place; what the machine itself stops is always gone through. */
  readonly stopAt: (place: Place) => boolean;
  /** The causes that may be named. */
  readonly causes: (id: string) => boolean;
  /** The fault codes that may be read, one in a round; none where codes are not what is looked at. */
  readonly codes: readonly (readonly [spn: number, fmi: number])[];
  /** Where hold, go back, skip and wrong answers may come too, beside the replies and the clock. */
  readonly everything: (place: Place) => boolean;
}

/** What is good only after a while is said at once too, and comes to the second person then. */
function whenDue(moment: Moment): Act[] {
  const afterMs = goodPauseMs(moment);
  const body = afterMs === null ? null : goodBody(moment);
  return afterMs === null || body === null ? [] : [{ type: 'good, when it is due', body, afterMs }];
}

/** A warm-up takes its time: what is said only then, and what the gauge shows then. */
function whenWarm(moment: Moment): Act[] {
  const name = stateName(moment);
  const afterMs = moment.context.profile.warmUp.minS * 1000;
  if (name.startsWith('warmUp.watch.readingBack'))
    return [{ type: 'yes, later', body: { type: 'reply', id: 'yes' }, afterMs }];
  return name === 'warmUp.watch.asking'
    ? [{ type: 'warm value', body: { type: 'value', quantity: 'coolantTemperature', si: WARM_C }, afterMs }]
    : [];
}

/** All that can happen here: what is offered, the alarm, the words that are always understood, nonsense. */
export function actsAt(place: Place, reach: Reach): Act[] {
  const { moment } = place;
  const name = stateName(moment);
  const { replies, quantity } = offerOf(moment);
  const all = reach.everything(place);
  const offered = replies
    .filter(id => !id.startsWith('cause') || reach.causes(id))
    // "Wrong" leads back to the question for the cause: one cause for each stop is enough here.
    .filter(id => id !== 'no' || name !== 'stopped.endReadBack' || moment.context.reopened === null)
    .filter(id => id !== 'readACode' || (reach.codes.length > 0 && moment.context.faults.length === 0));
  const mayStop = (reach.stopAt(place) && !name.startsWith('stopped')) || isDrill(name);
  return [
    ...offered.filter(id => all || id !== 'notYet').flatMap(reply),
    ...(quantity ? valueActs(quantity, moment, all, reach) : []),
    ...whenDue(moment),
    ...whenWarm(moment),
    ...(nextAlarmMs(moment.context) === null ? [] : [act({ type: 'clock' })]),
    ...(mayStop ? [act({ type: 'stop' })] : []),
    ...(all ? controls.map(type => act({ type })) : []),
  ];
}

const isDrill = (name: string) => /^job\.stop.*\.asking$|\.drillGoesOn$/.test(name);

const isReturn = ({ before, after }: Happened) =>
  /^stopped\.(readyReadBack|fireOut|hurtHelped)$/.test(stateName(before)) &&
  !stateName(after).startsWith('stopped');

function valueActs(quantity: Quantity, moment: Moment, all: boolean, { codes }: Reach): Act[] {
  const value = (si: number, label: string) => act({ type: 'value', quantity, si }, label);
  if (quantity === 'suspectParameter') return codes.map(([spn]) => value(spn, `spn ${spn}`));
  if (quantity === 'failureMode')
    return codes
      .filter(([spn]) => spn === moment.context.spokenSpn)
      .map(([, fmi]) => value(fmi, `fmi ${fmi}`));
  return [
    value(goodValue(quantity, moment), 'good value'),
    ...(all ? [value(Number.NaN, 'no number'), value(badValues[quantity], 'bad value')] : []),
  ];
}

/** Past the thermostat, and not too hot; well below it; and what the reply needs. */
const WARM_C = 88;
const NEAR_C = 74;
/** A gauge can show this, and nothing is right with it. */
const badValues: Record<Quantity, number> = {
  ambientTemperature: 60,
  coldestNight: 50,
  altitude: 6000,
  coolantFreezePoint: 0,
  oilQuantity: 0,
  fuelInTank: 5000,
  biodieselShare: 100,
  primerStrokes: 1000,
  batteryVoltage: 0,
  chargingVoltage: 0,
  crankingVoltage: 0,
  engineSpeed: 6000,
  oilPressure: 0,
  coolantTemperature: 150,
  suspectParameter: 0,
  failureMode: 31,
};

const judgedAs = ({ quantity, si }: { readonly quantity: Quantity; readonly si: number }) =>
  si === badValues[quantity] ? 'bad' : si === WARM_C ? 'warm' : 'good';

/** What makes two moments the same for what can come: no times, no readings, no count of misunderstandings. */
function keyOf({ moment, returns }: Place): string {
  const { context } = moment;
  const held = Object.values(moment.historyValue)
    .flat()
    .map(node => node.id);
  return JSON.stringify([
    stateName(moment),
    stateName(moment) === 'held' ? held : null,
    doneKey(context.done),
    context.takenAway,
    pendingKey(context),
    context.doubted && judgedAs(context.doubted),
    isNear(context),
    wasCool(context),
    context.timer?.announced ?? null,
    context.deadline ? [context.deadline.cause, context.deadline.extended] : null,
    context.clearAtMs === null,
    context.faults.map(fault => [fault.spn, fault.accepted]),
    context.bursts.length - context.burstsBefore,
    context.stop && [context.stop.step, context.stop.cause],
    returns,
  ]);
}

/** Whether the last coolant of the warm-up agrees with an open thermostat: the reply counts only then. */
const isNear = ({ step, readings }: Context) =>
  step === 'warmUp.watch' && (readings.findLast(reading => reading.step === step)?.si ?? 0) > NEAR_C;

/** The second look at what has cooled leads on, the first does not. */
const wasCool = ({ step, readings, bursts, profile }: Context) =>
  (step === 'signOff.cool' || step === 'fill.coolantCool') &&
  readings.some(
    reading =>
      reading.step === step &&
      reading.atMs >= (bursts.at(-1)?.endMs ?? 0) &&
      reading.si <= profile.shutdown.safeToOpenC,
  );

/** Most moments share the list with the one before them. */
const doneKeys = new WeakMap<readonly string[], string>();
function doneKey(done: readonly string[]): string {
  const key = doneKeys.get(done) ?? [...done].sort().join();
  doneKeys.set(done, key);
  return key;
}

const pendingKey = ({ pending }: Context) =>
  pending?.kind === 'reply' ? pending.id : pending ? [pending.quantity, judgedAs(pending)] : null;

/** One thing that happens on the paths, between two moments that are told apart. */
export interface Edge {
  readonly from: string;
  readonly to: string;
  readonly happened: Happened;
}

export interface Graph {
  readonly start: string;
  /** Every moment that is told apart, by its key. */
  readonly places: ReadonlyMap<string, Place>;
  readonly edges: readonly Edge[];
}

/** Goes through everything that can happen, with the path tools of the statechart library. */
export function explore(profile: Profile, reach: Reach): Graph {
  const machine = machineFor(profile);
  const start = initialTransition(machine, { profile, job })[0];
  const logic = fromTransition<Place, Act, never, Record<never, never>>(
    (place, { body, afterMs = PAUSE_MS }) => {
      const alarm = body.type === 'clock' ? nextAlarmMs(place.moment.context) : null;
      const nowMs = alarm === null ? place.nowMs + afterMs : Math.max(place.nowMs, alarm);
      const by = offerOf(place.moment).by;
      const last = takeStep(machine, place.moment, { ...body, by, via: 'voice', atMs: nowMs });
      return { moment: last.after, nowMs, last, returns: place.returns + (isReturn(last) ? 1 : 0) };
    },
    { moment: start, nowMs: 0, last: null, returns: 0 },
  );
  const adjacency = getAdjacencyMap(logic, {
    serializeState: snapshot => keyOf(snapshot.context),
    serializeEvent: event => event.type,
    events: snapshot => actsAt(snapshot.context, reach),
    stopWhen: snapshot => snapshot.context.returns > reach.returns,
  });
  return graphOf(adjacencyMapToArray(adjacency), { moment: start, nowMs: 0, last: null, returns: 0 });
}

interface Row {
  readonly state: { readonly context: Place };
  readonly nextState: { readonly context: Place };
}

function graphOf(rows: readonly Row[], start: Place): Graph {
  const places = new Map([[keyOf(start), start]]);
  const edges: Edge[] = [];
  const keys = new Map<Place, string>();
  const known = (place: Place): string => {
    const key = keys.get(place) ?? keyOf(place);
    keys.set(place, key);
    if (!places.has(key)) places.set(key, place);
    return key;
  };
  for (const { state, nextState } of rows) {
    const { last } = nextState.context;
    if (last) edges.push({ from: known(state.context), to: known(nextState.context), happened: last });
  }
  return { start: keyOf(start), places, edges };
}
