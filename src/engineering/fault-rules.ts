import { type Given, take } from './checks.ts';
import type { FaultCode } from './fault-codes.ts';
import { fail, ok, type Result, type Rule } from './result.ts';

/** What an active fault means for the start-up. */
type FaultAction =
  | { readonly kind: 'blocks' }
  | { readonly kind: 'goOn' }
  /** Expected for a while (air in the rail, for one): blocks if it is still there after these seconds. */
  | { readonly kind: 'watchUntil'; readonly seconds: number };

/** One line of the engine profile. Without `fmi` it holds for every way in which the parameter fails. */
export interface FaultRule {
  readonly spn: number;
  readonly fmi?: number;
  readonly action: FaultAction;
}

/** A supervisor's word that an unknown fault may stand, and why. */
interface FaultAcceptance {
  readonly spn: number;
  readonly fmi: number;
  readonly supervisor: string;
  readonly reason: string;
}

export type FaultDecision =
  | { readonly decision: 'blocks'; readonly because: 'rule' | 'unknown' | 'stillThere' }
  | {
      readonly decision: 'mayGoOn';
      readonly because: 'rule' | 'accepted';
      readonly acceptance?: FaultAcceptance;
    }
  | { readonly decision: 'watch'; readonly leftS: number };

const RULE: Rule = {
  id: 'fault-rules',
  source:
    'rules of the engine profile; a code without a rule blocks until a supervisor accepts it with a reason',
  validity: 'active faults',
};

/**
 * Judges one active fault. A rule for this SPN and FMI goes before one for the SPN alone; among rules of the
 * same kind the strictest holds. A supervisor can accept only a fault without a rule: what the profile says
 * blocks, blocks. `activeForS`: seconds since the fault was first seen, without a break.
 *
 * Issues: `activeForS` or the seconds of a rule missing, not a number or out of range; `missing` for an
 * acceptance without a name or a reason.
 */
export function judgeFault(
  { spn, fmi }: FaultCode,
  activeFor: Given,
  rules: readonly FaultRule[],
  acceptances: readonly FaultAcceptance[] = [],
): Result<FaultDecision> {
  const given = take({ activeForS: [activeFor, { min: 0, max: 1e7, unit: 's' }] });
  if (!given.ok) return given;
  const ofSpn = rules.filter(rule => rule.spn === spn);
  const exact = ofSpn.filter(rule => rule.fmi === fmi.number);
  const actions = (exact.length > 0 ? exact : ofSpn.filter(rule => rule.fmi === undefined)).map(
    rule => rule.action,
  );
  if (actions.length > 0) return byRules(actions, given.values.activeForS);

  const acceptance = acceptances.find(accepted => accepted.spn === spn && accepted.fmi === fmi.number);
  if (!acceptance) return ok({ decision: 'blocks', because: 'unknown' }, RULE);
  if (acceptance.supervisor.trim() === '')
    return fail('missing', 'supervisor', { allowed: 'who accepts the fault' });
  if (acceptance.reason.trim() === '')
    return fail('missing', 'reason', { allowed: 'why the fault is accepted' });
  return ok({ decision: 'mayGoOn', because: 'accepted', acceptance }, RULE);
}

function byRules(actions: readonly FaultAction[], activeForS: number): Result<FaultDecision> {
  if (actions.some(({ kind }) => kind === 'blocks')) return ok({ decision: 'blocks', because: 'rule' }, RULE);
  const watched = actions.flatMap(action => (action.kind === 'watchUntil' ? [action.seconds] : []));
  if (watched.length === 0) return ok({ decision: 'mayGoOn', because: 'rule' }, RULE);
  const given = take({ watchUntilS: [Math.min(...watched), { min: 1, max: 3600, unit: 's' }] });
  if (!given.ok) return given;
  const leftS = given.values.watchUntilS - activeForS;
  return ok(leftS > 0 ? { decision: 'watch', leftS } : { decision: 'blocks', because: 'stillThere' }, RULE);
}
