import { type Moment, offerOf } from '../../machines/moment.ts';

/** True where nothing is asked of people but to wait: there time may pass faster without hurrying them. */
export function isOnlyWaiting(moment: Moment): boolean {
  if (moment.matches('held') || moment.matches('stopped') || moment.hasTag('critical')) return false;
  return offerOf(moment).awaits === 'time' && moment.context.unanswered === null;
}
