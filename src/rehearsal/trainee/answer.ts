import { procedureFor } from '../../../machines/first-start.ts';
import { type Moment, offerOf } from '../../../machines/moment.ts';
import { sweepRpm } from '../../../machines/phases/numbered.ts';
import type { LampsStep, Step } from '../../../machines/steps.ts';
import type { Quantity } from '../../../machines/vocabulary.ts';
import type { ReplyId, StepId } from '../../../prompts/types.ts';
import { COOL_APART_S } from '../../engineering/cool-down.ts';
import type { Profile } from '../../profile/schema.ts';
import type { Gauges } from '../gauges.ts';
import { gaugeValue } from './gauge-value.ts';

/** What somebody says next: a reply, a number off a gauge, the stop word; null while there is nothing to say. */
export type Answer =
  | { readonly kind: 'reply'; readonly id: ReplyId }
  | { readonly kind: 'value'; readonly quantity: Quantity; readonly si: number }
  | { readonly kind: 'continue' }
  /** With the cause that will be named for it. */
  | { readonly kind: 'stop'; readonly cause: ReplyId }
  | null;

/** The moment as somebody at the engine sees it. */
interface Sight {
  readonly moment: Moment;
  readonly gauges: Gauges;
  readonly ambientC: number;
  /** Seconds since this was asked. */
  readonly askedS: number;
  /** How often this very question was answered before. */
  readonly answered: number;
  /** The cause that was in mind when the stop word was said. */
  readonly suspected: ReplyId | null;
}

/** After so many answers that change nothing, people stop. */
const PATIENCE = 3;
/** The needle is given this share of the allowed time. */
const WAITS_SHARE = 0.6;
const SETTLES_S = 4;
const AT_SPEED_SHARE = 0.03;
const RUNS_FROM_RPM = 400;
const STOPS_WITHIN_S = 10;
/** Half a minute of a needle, as the step asks for. */
const WATCHES_S = 30;
/** A hose is hot so long after its thermostat stands open; one that is cold after the longer time is no matter of patience. */
const HOSE_WITHIN_S = 120;
const HOSE_AT_ALL_S = 900;
const LOOK_AGAIN_S = 900;
/** Sooner than anybody beside a running engine is looked for. */
const STILL_HERE_S = 100;

const reply = (id: ReplyId): Answer => ({ kind: 'reply', id });
const stop = (cause: ReplyId): Answer => ({ kind: 'stop', cause });

/** People who do as they are asked and say what they see. */
export function createAnswers(profile: Profile) {
  const steps = new Map(procedureFor(profile).map(step => [step.id, step]));

  return (sight: Sight): Answer => {
    const { moment, suspected } = sight;
    const { replies, awaits } = offerOf(moment);
    if (moment.matches('held')) return { kind: 'continue' };
    if (awaits === 'drill') return stop('causeFalseAlarm');
    if (replies.includes('yes')) return reply('yes');
    if (moment.matches('stopped')) return afterStop(replies, suspected);
    const step = steps.get(moment.context.step);
    return step ? atStep(step, sight, profile) : null;
  };
}

function afterStop(replies: readonly ReplyId[], suspected: ReplyId | null): Answer {
  const [first] = replies;
  if (suspected && replies.includes(suspected)) return reply(suspected);
  if (replies.includes('endSession')) return reply('endSession');
  return first ? reply(first) : null;
}

function atStep(step: Step, sight: Sight, profile: Profile): Answer {
  const { quantity, item, items, awaits } = offerOf(sight.moment);
  switch (step.kind) {
    case 'reading':
      return quantity ? readGauge(step, quantity, sight, profile) : null;
    case 'watch':
      return awaits === 'time' ? null : watched(quantity, sight, profile);
    case 'lamps':
      return items ? lamps(items, step, sight) : lamp(item, sight);
    case 'inspect': {
      if (items) return items.some(id => isWrongAt(id, sight)) ? reply('oneByOne') : asAsked(sight);
      const point = step.points.find(({ id }) => id === item);
      if (point?.id === 'anyLeak') return reply(sight.gauges.wrongAt.size > 0 ? 'leak' : 'pointGood');
      return point ? reply(sight.gauges.wrongAt.has(point.id) ? 'leak' : 'pointGood') : null;
    }
    case 'faults':
      return faultCodes(sight);
    case 'crank':
      return crank(step.until, sight, profile);
    case 'confirm':
      return items ? together(items, sight, profile) : confirm(step.id, step.ok, sight, profile);
    case 'sensors':
      return items ? asAsked(sight) : reply(step.ok);
    case 'hold':
      return null;
  }
}

const isWrongAt = (id: string, { gauges }: Sight) => [...gauges.wrongAt].some(point => point === id);

/** Says no for a while, then gives up. */
const notYet = ({ answered }: Sight, cause: ReplyId): Answer =>
  answered >= PATIENCE ? stop(cause) : reply('notYet');

/** Whoever waits for something says from time to time that it has not come. */
const stillHere = ({ askedS, answered }: Sight): Answer =>
  askedS > STILL_HERE_S * (answered + 1) ? reply('notYet') : null;

function readGauge(step: Step, quantity: Quantity, sight: Sight, profile: Profile): Answer {
  const { gauges, askedS, answered } = sight;
  if (quantity === 'primerStrokes' && !gauges.primerFirm && gauges.strokes < profile.fuel.primer.maxStrokes)
    return null;
  const isWatched = offerOf(sight.moment).replies.includes('hunting');
  if (gauges.hunting && isWatched) return reply('hunting');
  // The lowest is told of a needle that was followed.
  if (isWatched && sight.moment.context.series.length === 0 && askedS < WATCHES_S) return null;
  const demandRpm = sweepRpm(step.id, profile) ?? null;
  const settled = demandRpm === null || Math.abs(gauges.rpm - demandRpm) < AT_SPEED_SHARE * demandRpm;
  if (!settled && askedS < SETTLES_S) return null;
  const si = gaugeValue(quantity, gauges, profile, sight.ambientC);
  if (offerOf(sight.moment).replies.includes('leaveOpen')) return reply('leaveOpen');
  if (si === null) return notYet(sight, 'causeFaultCode');
  if (step.id === 'signOff.cool' || step.id === 'fill.coolantCool') {
    // Hot, it is left for a while; cool, it is looked at once more before the cap is touched.
    const waitS = si > profile.shutdown.safeToOpenC ? LOOK_AGAIN_S : COOL_APART_S;
    return answered > 0 && askedS < waitS ? null : { kind: 'value', quantity, si };
  }
  return answered >= PATIENCE ? stop('causeOther') : { kind: 'value', quantity, si };
}

function watched(quantity: Quantity | undefined, sight: Sight, profile: Profile): Answer {
  if (!quantity) return reply(sight.gauges.codes.length > 0 ? 'notYet' : 'faultCleared');
  const si = gaugeValue(quantity, sight.gauges, profile, sight.ambientC);
  return si === null ? notYet(sight, 'causeFaultCode') : { kind: 'value', quantity, si };
}

function lamp(id: string | undefined, { gauges, moment, answered }: Sight): Answer {
  if (id === undefined) return null;
  if (answered >= PATIENCE) return stop('causeFaultCode');
  // Most lamps go out soon after the key is turned on: what counts is what was seen then.
  const seen = moment.context.step === 'keyOn.lamps' ? gauges.litAtKeyOn : gauges.lit;
  return reply(seen?.has(id) ? 'lit' : 'dark');
}

/** The reply that is asked for. */
function asAsked({ moment }: Sight): Answer {
  const [first] = offerOf(moment).replies;
  return first ? reply(first) : null;
}

/** All of them as they should be, or each by itself. */
function lamps(ids: readonly string[], step: LampsStep, sight: Sight): Answer {
  if (step.expected === 'keyOn' && !sight.gauges.litAtKeyOn) return null;
  const isRight = (id: string) => {
    const answer = lamp(id, { ...sight, answered: 0 });
    const expected = step.lamps.find(each => each.id === id)?.[step.expected];
    return answer?.kind === 'reply' && (answer.id === 'lit') === (expected === 'on');
  };
  return ids.every(isRight) ? asAsked(sight) : reply('oneByOne');
}

/** Steps that are asked together: done when each is, and each by itself where one is not. */
function together(ids: readonly string[], sight: Sight, profile: Profile): Answer {
  const left = procedureFor(profile).filter(
    ({ id }) => ids.includes(id) && !sight.moment.context.done.includes(id),
  );
  const answers = left.map(({ id }) => confirm(id, 'ready', { ...sight, answered: 0 }, profile));
  if (answers.some(answer => answer === null)) return null;
  const areSo = answers.every(answer => answer?.kind === 'reply' && answer.id === 'ready');
  return areSo ? asAsked(sight) : reply('oneByOne');
}

function faultCodes({ gauges, moment }: Sight): Answer {
  const { faults, spokenSpn } = moment.context;
  const left = gauges.codes.filter(
    code => !faults.some(fault => fault.spn === code.spn && fault.fmi === code.fmi),
  );
  const value = (quantity: Quantity, si: number | undefined): Answer =>
    si === undefined ? reply('notYet') : { kind: 'value', quantity, si };
  switch (offerOf(moment).awaits) {
    case 'codes':
      return reply(gauges.codes.length > 0 ? 'readACode' : 'noCodes');
    case 'spn':
      return value('suspectParameter', left[0]?.spn);
    case 'fmi':
      return value('failureMode', left.find(code => code.spn === spokenSpn)?.fmi);
    case 'anotherCode':
      return reply(left.length > 0 ? 'readACode' : 'noMoreCodes');
    default:
      return stop('causeFaultCode');
  }
}

function crank(until: ReplyId, { gauges, moment }: Sight, profile: Profile): Answer {
  const seen =
    until === 'fired'
      ? gauges.firing && gauges.rpm > RUNS_FROM_RPM
      : gauges.oilPressureKpa >= profile.oilPressure.showsKpa;
  const { awaits, replies } = offerOf(moment);
  const fires = gauges.firing && (until !== 'fired' || seen);
  if (fires && replies.includes('fired')) return reply('fired');
  if (awaits === 'time') return null;
  if (awaits === 'starter') return seen && replies.includes(until) ? reply(until) : null;
  if (awaits === 'outcome') return reply(seen ? until : 'nothingYet');
  if (awaits === 'repair') return stop('causeOther');
  const [first] = replies;
  return first ? reply(first) : null;
}

/** The hose ought to be hot by now: by the gauge the thermostat stands open, or it was waited for long enough. */
function staysCold({ gauges, askedS }: Sight, { thermostat }: Profile): boolean {
  const openByGauge = gauges.coolantC === null || gauges.coolantC >= thermostat.fullyOpenC;
  return askedS > (openByGauge ? HOSE_WITHIN_S : HOSE_AT_ALL_S);
}

/** What has to be so before a step is said to be done; where nothing is looked at, people do as they are asked. */
function confirm(step: StepId, ok: ReplyId, sight: Sight, profile: Profile): Answer {
  const { gauges, askedS } = sight;
  const when = (so: boolean): Answer => (so ? reply(ok) : null);
  switch (step) {
    case 'fill.coolantBled':
      return when(!gauges.coolantAir);
    case 'prime.firm':
      return gauges.primerFirm ? reply(ok) : notYet(sight, 'causeFuelLeak');
    case 'keyOn.heaterDone':
      return when(!gauges.lit.has(profile.heater?.lampId ?? ''));
    case 'firstFire.oilPressure':
    case 'firstRun.oilPressure': {
      if (gauges.oilPressureKpa >= profile.oilPressure.showsKpa) return reply(ok);
      return askedS > WAITS_SHARE * profile.oilPressure.firstFireWithinS ? reply('noOilPressure') : null;
    }
    case 'prime.electricBled':
      return when(gauges.primerFirm);
    case 'warmUp.hose':
      if (gauges.upperHoseHot) return reply(ok);
      return staysCold(sight, profile) ? notYet(sight, 'causeOverheating') : stillHere(sight);
    case 'warmUp.steeringLocks':
      return gauges.steeringAir ? stillHere(sight) : reply(ok);
    case 'warmUp.levels':
    case 'warmUp.bottle':
    case 'signOff.coolantLevel':
      return gauges.coolantShort ? notYet(sight, 'causeCoolantLeak') : reply(ok);
    case 'shutdown.keyOff':
    case 'firstRun.keyOff':
      if (gauges.rpm === 0) return reply(ok);
      return askedS > STOPS_WITHIN_S ? reply('stillRunning') : null;
    default:
      return reply(ok);
  }
}
