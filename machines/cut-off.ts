import type { Context } from './context.ts';
import type { PromptValue } from './vocabulary.ts';

/**
 * What stops an engine that the key does not stop, as the end of a call-out: this engine's own cut-off, then its air.
 * An engine that burns its own oil is stopped by its air alone. Common practice, no published source.
 */
export const cutOffOf = ({ profile: { cutOff } }: Pick<Context, 'profile'>): PromptValue =>
  cutOff ? { line: 'cutAt', values: { at: cutOff.at } } : { line: 'cutKnown', values: {} };
