import type { SnapshotFrom } from 'xstate';
import type { ControlId } from '../prompts/types.ts';
import type { Outcome } from '../src/record/vocabulary/names.ts';
import { isKnownEmergency } from './emergency.ts';
import type { FirstStart } from './first-start.ts';
import type { Offer } from './toolkit.ts';
import type { Emergency } from './vocabulary.ts';

export type Moment = SnapshotFrom<FirstStart>;

const nothing: Offer = { replies: [], by: 'technician' };

/** What may be said now, besides the words that are always understood. */
export const offerOf = (moment: Moment): Offer =>
  Object.values(moment.getMeta()).find(offer => offer !== undefined) ?? nothing;

/** The state's name from phase to innermost state, e.g. `fill.coolantFilled.asking`, `stopped.askingCause`. */
export function stateName(moment: Moment): string {
  const parts: string[] = [];
  let value: unknown = moment.value;
  while (typeof value === 'object' && value !== null) {
    const [key] = Object.keys(value);
    if (key === undefined) break;
    if (key !== 'procedure') parts.push(key);
    value = Reflect.get(value, key);
  }
  if (typeof value === 'string') parts.push(value);
  return parts.join('.');
}

export const isOver = (moment: Moment) => moment.status === 'done';

/** Whether this emergency has been called out already in the stop that is going on. */
export const isKnownEmergencyAt = (moment: Moment, cause: Emergency): boolean =>
  isKnownEmergency(cause, { stop: moment.context.stop, isMadeSafe: moment.hasTag('madeSafe') });

/** How a session that is over has ended. */
export const outcomeOf = (moment: Moment): Outcome =>
  stateName(moment) === 'signedOff' ? 'signedOff' : 'ended';

/**
 * The always-understood words that do something now. Those that would only be refused are left out: every
 * word less that may be said is one less to be taken for another.
 */
export function controlsOf(moment: Moment): readonly ControlId[] {
  const { context } = moment;
  const timed: ControlId[] = context.timer ? ['timeLeft'] : [];
  const always: ControlId[] = ['sayAgain', 'status', 'help'];
  if (moment.matches('held')) return ['continue', ...timed, ...always];
  if (moment.matches('stopped') || moment.hasTag('critical')) return [...timed, ...always];
  const skippable = context.profile.allowedSkips.some(id => id === context.step);
  // Where something is read back, "wrong" denies that.
  const echoed = context.echoed.at(-1);
  const mayTakeBack =
    echoed !== undefined &&
    !offerOf(moment).replies.includes('no') &&
    (echoed.engine === 'running') === moment.hasTag('running');
  return [
    'hold',
    'goBack',
    ...(mayTakeBack ? (['takeBack'] as const) : []),
    ...(skippable ? (['skip'] as const) : []),
    ...timed,
    ...always,
  ];
}
