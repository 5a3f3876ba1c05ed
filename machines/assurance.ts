import type { Verdict } from '../src/engineering/result.ts';
import type { Judge, Step } from './steps.ts';
import type { Look } from './toolkit.ts';
import type { Gate, Via } from './vocabulary.ts';

/**
 * What hangs on an answer, the heaviest first: an act that may start or free an engine; a gate; a limit; a limit of a
 * later step, before which the answer is read back together with others; nothing.
 */
export type Weight = 'engine' | 'gate' | 'limit' | 'later' | 'nothing';

/**
 * How an answer is made sure of: read back, and counted only when somebody says or presses that it is right; repeated
 * within the next question, which confirms nothing; or counted as it stands.
 */
export type Assurance = 'readBack' | 'echo' | 'none';

/** Where nothing can be misheard. */
export const isByHand = (via: Via) => via === 'keys' || via === 'touch';

/**
 * The one rule for what is read back. By voice: whatever an engine, a gate or a limit hangs on. By keys and touch
 * nothing can be misheard: acts that may start or free an engine, and numbers that open a gate or stand near a limit,
 * take one confirming press.
 * How certain the ear was counts for nothing here: it may once none of 3,000 wrong values of the hearing evaluation passes.
 * @param near true for a number outside its limits or near them; no reply is
 */
export function assuranceOf(
  answer: 'reply' | 'number',
  { weight, via, near = false }: { readonly weight: Weight; readonly via: Via; readonly near?: boolean },
): Assurance {
  if (weight === 'engine' || near) return 'readBack';
  const byHand = isByHand(via);
  if (weight === 'gate') return byHand && answer === 'reply' ? 'none' : 'readBack';
  if (weight === 'limit' && !byHand) return 'readBack';
  return answer === 'number' ? 'echo' : 'none';
}

/** Gates whose steps free an engine to fire, or keep it from firing. */
const engineGates: readonly Gate[] = ['fuellingDisabled', 'fuellingRestored'];

/** What hangs on the reply or the number of a step. */
export function weightOf(step: Step): Weight {
  if (step.gate && engineGates.includes(step.gate)) return 'engine';
  if (step.gate) return 'gate';
  if (step.kind !== 'reading') return 'nothing';
  return step.readBackIn ? 'later' : 'limit';
}

/** The share of the way between two limits, or of the one limit there is, that counts as near it. */
const NEAR_SHARE = 0.1;

/** True for what is outside its limits, or would be a little further on. */
export function isNearItsLimit({ met, min, max, margin }: Verdict): boolean {
  const scale = min !== undefined && max !== undefined ? max - min : Math.abs(max ?? min ?? 0);
  return !(met && margin >= NEAR_SHARE * scale);
}

/** True for a number that cannot be judged, that is outside its limits, or that would be outside a little further on. */
export function isNear(judge: Judge, { context, event }: Look): boolean {
  if (event.type !== 'value') return true;
  const judgement = judge(context, event.si);
  return !judgement.ok || isNearItsLimit(judgement.value);
}

/** Whether a reply of this step, as it came, has to be confirmed before it counts. */
export const replyNeedsReadBack = (weight: Weight) => (look: Look) =>
  assuranceOf('reply', { weight, via: look.event.via }) === 'readBack';

/** Whether a number on which this much hangs, as it came, has to be confirmed before it counts. */
export const valueNeedsReadBack = (weight: Weight, judge: Judge) => (look: Look) =>
  assuranceOf('number', { weight, via: look.event.via, near: isNear(judge, look) }) === 'readBack';
