import type { Context } from './context.ts';
import type { PromptValue } from './vocabulary.ts';

/**
 * What stops an engine that the key does not stop, as the end of a call-out: this engine's own cut-off, then its air.
 * An engine that burns its own oil is stopped by its air alone. One that is stopped by current has its lever left where
 * that is missing. Common practice, no published source.
 */
export const cutOffOf = ({ profile: { cutOff, fuelling } }: Pick<Context, 'profile'>): PromptValue => {
  if (fuelling.disabledBy === 'stopSolenoid')
    return { line: 'cutByHand', values: { at: cutOff?.at ?? fuelling.at } };
  return cutOff ? { line: 'cutAt', values: { at: cutOff.at } } : { line: 'cutKnown', values: {} };
};
