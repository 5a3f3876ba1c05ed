import { judge, type Result, type Rule } from '../../src/engineering/result.ts';
import type { Context } from '../context.ts';
import type { Judge } from '../steps.ts';
import type { Quantity } from '../vocabulary.ts';
import { quantityUnits } from '../vocabulary.ts';

/** The latest value read of a quantity in this session. */
export const latest = (context: Context, quantity: Quantity): number | undefined =>
  context.readings.findLast(reading => reading.quantity === quantity)?.si;

/** Where limits come from a rule with figures of the engine profile. */
export const profileRule = (id: string): Rule => ({
  id,
  source: 'figure of the engine profile',
  validity: 'the engine that the profile describes',
});

/** What can be true of weather, places and tanks at all; beyond it a reading was misheard. */
const plausible: Rule = {
  id: 'plausible-range',
  source: 'range in which the calculations behind the gates hold',
  validity: 'any first start',
};

/** Accepts what lies in a fixed range. */
export const withinRange =
  (quantity: Quantity, range: { readonly min?: number; readonly max?: number }): Judge =>
  (_, si) => ({ ok: true, value: judge(si, quantityUnits[quantity], range, plausible) });

/** Accepts what meets a limit worked out for this engine and this weather. */
export const within =
  (
    quantity: Quantity,
    limits: (context: Context) => Result<{ readonly min?: number; readonly max?: number }>,
  ): Judge =>
  (context, si) => {
    const found = limits(context);
    return found.ok
      ? { ok: true, value: judge(si, quantityUnits[quantity], found.value, found.rule) }
      : found;
  };
