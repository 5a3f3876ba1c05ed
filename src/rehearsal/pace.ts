import { type Moment, offerOf, stateName } from '../../machines/moment.ts';

/** Questions that only time can answer. */
const waits: readonly string[] = ['warmUp.watch.between', 'signOff.cool.asking'];

/** True where nothing is asked of people but to wait: there time may pass faster without hurrying them. */
export function isOnlyWaiting(moment: Moment): boolean {
  if (moment.matches('held') || moment.matches('stopped') || moment.hasTag('critical')) return false;
  const { replies, quantity } = offerOf(moment);
  return waits.includes(stateName(moment)) || (replies.length === 0 && quantity === undefined);
}
