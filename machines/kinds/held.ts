import { burstSeconds } from '../limits/starter.ts';
import type { CrankStep } from '../steps.ts';
import { startSilentTimer, timerOver } from '../timing.ts';
import {
  atMs,
  type Effect,
  type Look,
  type Move,
  type Node,
  type Nodes,
  remark,
  speak,
  update,
} from '../toolkit.ts';
import { actionsOf } from './nodes.ts';
import { isReply, setAside } from './question.ts';

/** What a step brings whose pressure has to hold; nothing where none has to. */
export interface HeldBurst {
  /** Ways out of a burst, ahead of those by which what was cranked for counts at once. */
  readonly whileCranking: readonly Move[];
  /** Ways out of the question what came of a burst, ahead of those by which it counts. */
  readonly afterBurst: readonly Move[];
  readonly nodes: Nodes;
}

/**
 * What was cranked for has to hold while the starter turns on: said at once, it may be a needle that never fell. From
 * when it was first said the starter turns for the whole time, where its heat allows that, and then it is read back. Said
 * only after a burst, it tells nothing of how long it held: it is cranked for once more.
 * @param endBurst what the end of a burst brings
 * @param seen to its read-back
 * @param again what comes of a burst in which it did not hold
 */
export function heldBurst(step: CrankStep, endBurst: Effect, seen: Move, again: readonly Move[]): HeldBurst {
  const { heldS } = step;
  if (!heldS) return { whileCranking: [], afterBurst: [], nodes: {} };
  const heldFor = ({ context }: Look) => heldS(context);
  const startMs = ({ context }: Look) => context.bursts.at(-1)?.startMs ?? 0;
  const turnedS = (look: Look) => (atMs(look.event) - startMs(look)) / 1000;
  const longestS = (look: Look) =>
    burstSeconds(look.context, startMs(look), look.context.profile.starter.longestBurstS);
  const wasShort = ({ context }: Look) => {
    const burst = context.bursts.at(-1);
    return burst === undefined || burst.endMs - burst.startMs < heldS(context) * 1000;
  };
  /** Said during the burst that has just ended, which its heat let be no longer. */
  const wasSaid = ({ context: { pending } }: Look) => pending?.kind === 'reply' && pending.id === step.until;
  const notHeld = remark(look => ({ line: 'notHeld', values: { time: { unit: 's', si: heldFor(look) } } }));
  const holding: Node = {
    tags: ['critical', 'cranking'],
    meta: { replies: ['nothingYet'], by: step.by, awaits: 'starter' },
    entry: [
      startSilentTimer(heldFor),
      ...speak(look => ({ line: 'keepCranking', values: { time: { unit: 's', si: heldFor(look) } } })),
    ],
    on: {
      reply: { guard: isReply('nothingYet'), target: 'outcome' },
      clock: { guard: timerOver, ...seen },
    },
    exit: endBurst,
  };
  return {
    whileCranking: [
      {
        guard: look => isReply(step.until)(look) && turnedS(look) + heldFor(look) <= longestS(look),
        target: 'holding',
      },
      // Its heat allows no longer burst: what is left of this one goes on, and tells nothing yet.
      {
        guard: look => isReply(step.until)(look) && turnedS(look) < heldFor(look),
        actions: setAside(step.until),
      },
      { guard: isReply('nothingYet'), target: 'outcome', actions: update(() => ({ pending: null })) },
    ],
    afterBurst: again.map(move => ({
      ...move,
      guard: look => (wasShort(look) || !wasSaid(look)) && (move.guard?.(look) ?? true),
      actions: [notHeld, ...actionsOf(move)],
    })),
    nodes: { holding },
  };
}
