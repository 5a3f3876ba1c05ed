import type { SnapshotFrom, StateValue } from 'xstate';
import type { ControlId } from '../prompts/types.ts';
import type { Outcome } from '../src/record/vocabulary/names.ts';
import { isKnownEmergency } from './emergency.ts';
import type { FirstStart } from './first-start.ts';
import type { Offer } from './toolkit.ts';
import type { Emergency } from './vocabulary.ts';

export type Moment = SnapshotFrom<FirstStart>;

const nothing: Offer = { replies: [], by: 'technician' };

/** What may be said now, besides the words that are always understood. */
export const offerOf = (moment: Moment): Offer => Object.values(moment.getMeta())[0] ?? nothing;

/** The state's name from phase to innermost state, e.g. `fill.coolantFilled.asking`, `stopped.askingCause`. */
export const stateName = ({ value }: Moment): string =>
  namesIn(value)
    .filter(name => name !== 'procedure')
    .join('.');

/** From the outermost to the innermost: no state of this machine has more than one inside it at a time. */
const namesIn = (value: StateValue): readonly string[] =>
  typeof value === 'string'
    ? [value]
    : Object.entries(value).flatMap(([name, inner = '']) => [name, ...namesIn(inner)]);

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
