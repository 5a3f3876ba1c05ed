import { RecordError } from '../../record/index.ts';
import { Refused } from '../refused.ts';
import { type JobName, type Jobs, jobs } from './jobs.ts';

/** One thing to be done, and what comes back: its result, why it may not be, or what broke. */
export type Order = {
  readonly [Name in JobName]: { readonly name: Name; readonly input: Parameters<Jobs[Name]>[0] };
}[JobName];
export type Delivery =
  | { readonly kind: 'done'; readonly result: unknown }
  | { readonly kind: 'refused'; readonly refusal: Refused['refusal'] }
  | { readonly kind: 'broken'; readonly why: string };

async function deliver({ name, input }: Order): Promise<Delivery> {
  try {
    // The two belong together by their type, which a lookup cannot see.
    const job = jobs[name] as (input: Order['input']) => Promise<unknown>;
    return { kind: 'done', result: await job(input) };
  } catch (error) {
    if (error instanceof Refused) return { kind: 'refused', refusal: error.refusal };
    if (error instanceof RecordError)
      return { kind: 'refused', refusal: { code: 'notFound', sentence: 'The record cannot be read.' } };
    return { kind: 'broken', why: String(error) };
  }
}

// The lane sends the next order when it has the delivery of the last.
process.on('message', async (order: Order) => {
  process.send?.(await deliver(order));
});
// Ctrl-C at the terminal reaches this program too: it is the server's to end it.
process.on('SIGINT', () => {});
// The server has ended: nobody waits for what is under way.
process.on('disconnect', () => process.exit());
