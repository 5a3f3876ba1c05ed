import { type Moment, offerOf } from '../../machines/moment.ts';

/** Whether the state is that of one thing, and is asked here together with others. */
export function isAskedTogether(moment: Moment, state: string): boolean {
  const { replies, items = [] } = offerOf(moment);
  const [phase, step, child] = state.split('.');
  const own = `${phase}.${step}`;
  if (!replies.includes('oneByOne')) return false;
  if (items.includes(own)) return child === 'asking' || child === 'readingBack' || child === 'skipping';
  return moment.context.step === own && /^item\d+$/.test(child ?? '');
}
