import type { BayState } from '../../server/protocol/index.ts';
import type { SpeechPriority } from '../../voice/speech-queue.ts';
import type { Missed } from './connection.ts';

interface ToSay {
  readonly text: string;
  readonly priority: SpeechPriority;
}

/**
 * What a device says when it is back after a break, of all that was said meanwhile: call-outs that stand still, as they are
 * shown, where one was missed (one may have ended the session), and the question that is asked now, once, where that was
 * missed.
 */
export function toSayAfterBreak({ said, turn }: Missed, state: BayState): readonly ToSay[] {
  const { view } = state;
  if (!view) return [];
  const anyCallOut = said?.some(({ priority }) => priority === 'hazard') ?? true;
  const callOuts = anyCallOut ? (view.callOuts ?? []) : [];
  const asked = said?.findLast(each => each.priority === 'prompt' && each.turn === state.turn)?.text;
  // What was said is not told any more: a question that is new is said as it is shown.
  const question = said === null && turn !== state.turn ? view.prompt : asked;
  const isOver = view.outcome !== null;
  return [
    ...callOuts.map(text => ({ text, priority: 'hazard' }) as const),
    ...(question && !isOver ? [{ text: question, priority: 'prompt' } as const] : []),
  ];
}
