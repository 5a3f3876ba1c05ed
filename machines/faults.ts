import { type FaultCode, faultCode } from '../src/engineering/fault-codes.ts';
import { type FaultDecision, type FaultRule, judgeFault } from '../src/engineering/fault-rules.ts';
import type { Profile } from '../src/profile/schema.ts';
import type { Context, Fault } from './context.ts';

/** The profile's judgements in the form that the calculation takes. */
const rulesOf = (profile: Profile): FaultRule[] =>
  profile.faults.map(({ spn, fmi, judgement, watchS }) => ({
    spn,
    fmi,
    // Only what is watched has seconds.
    action:
      watchS === undefined
        ? { kind: judgement === 'goOn' ? 'goOn' : 'blocks' }
        : { kind: 'watchUntil', seconds: watchS },
  }));

export interface JudgedFault {
  readonly fault: Fault;
  readonly code: FaultCode | null;
  /** Null when the code itself is impossible; that blocks. */
  readonly decision: FaultDecision | null;
  readonly because: string;
}

/**
 * Seconds for which a code has had the time to clear: what may clear by itself does so while the engine runs, so that
 * neither the reading of codes with the key on nor a try before this one is held against it.
 */
function watchedForS({ bursts, done }: Context, { seenMs }: Fault, nowMs: number): number {
  const firedMs = done.includes('firstFire.crank') ? bursts.at(-1)?.endMs : undefined;
  return firedMs === undefined ? 0 : Math.max(0, (nowMs - Math.max(seenMs, firedMs)) / 1000);
}

/** One code of the session, judged by the profile as of now. */
export function judgeSessionFault(context: Context, fault: Fault, nowMs: number): JudgedFault {
  const code = faultCode(fault.spn, fault.fmi);
  const because =
    context.profile.faults.find(rule => rule.spn === fault.spn && rule.fmi === fault.fmi)?.because ?? '';
  if (!code.ok) return { fault, code: null, decision: null, because };
  const acceptances = fault.accepted
    ? [{ spn: fault.spn, fmi: fault.fmi, supervisor: context.job.supervisor, reason: fault.accepted }]
    : [];
  const decision = judgeFault(
    code.value,
    watchedForS(context, fault, nowMs),
    rulesOf(context.profile),
    acceptances,
  );
  return { fault, code: code.value, decision: decision.ok ? decision.value : null, because };
}

const judgeAll = (context: Context, nowMs: number) =>
  context.faults.map(fault => judgeSessionFault(context, fault, nowMs));

/** Codes that may not stand; one that cannot be judged is among them. */
export const blockingFaults = (context: Context, nowMs: number) =>
  judgeAll(context, nowMs).filter(({ decision }) => decision === null || decision.decision === 'blocks');

/** Codes that the profile does not know and nobody has accepted. */
export const unknownFaults = (context: Context, nowMs: number) =>
  judgeAll(context, nowMs).filter(
    ({ decision }) => decision?.decision === 'blocks' && decision.because === 'unknown',
  );

/** Codes that may clear by themselves; judged as of when each was first read. */
export const watchedFaults = (context: Context) =>
  context.faults.flatMap(fault => {
    const { decision } = judgeSessionFault(context, fault, fault.seenMs);
    return decision?.decision === 'watch' ? [{ fault, watchS: decision.leftS }] : [];
  });
