import type { Context } from './context.ts';
import type { PromptValue } from './vocabulary.ts';

/**
 * What stops an engine that the key does not stop, as the end of a call-out: this engine's own cut-off, then its air.
 * An engine that burns its own oil is stopped by its air alone. One that is stopped by current has its lever left where
 * that is missing, before a cut-off that may want current itself. Common practice, no published source.
 */
export const cutOffOf = ({ profile: { cutOff, fuelling } }: Pick<Context, 'profile'>): PromptValue => {
  if (fuelling.disabledBy === 'stopSolenoid') {
    const { at } = fuelling;
    return cutOff
      ? { line: 'cutByHandOr', values: { at, other: cutOff.at } }
      : { line: 'cutByHand', values: { at } };
  }
  return cutOff ? { line: 'cutAt', values: { at: cutOff.at } } : { line: 'cutKnown', values: {} };
};
