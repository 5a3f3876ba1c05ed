import { judgementData, limitsOf } from '../judging.ts';
import type { CrankStep, Judgement } from '../steps.ts';
import { atMs, type Look, type Move, type Node, note, remark } from '../toolkit.ts';
import { askReply, bySecondPerson, setAside } from './question.ts';

/**
 * Seconds that the starter has turned the engine in this session: oil that it moved stays where it is. A burst that
 * goes on counts up to now.
 */
function crankedS({ context, event }: Look): number {
  const ended = context.bursts.reduce((sum, { startMs, endMs }) => sum + endMs - startMs, 0);
  const last = context.bursts.at(-1);
  const going = last && last.endMs === last.startMs ? atMs(event) - last.startMs : 0;
  return (ended + going) / 1000;
}

/**
 * What was cranked for cannot have come yet: the starter is released, and the second person reads the gauge too. An
 * engine that was primed in another way has its pressure early; a gauge that never fell to nothing has it at once.
 */
export function tooEarly(step: CrankStep) {
  const judged = (look: Look): Judgement | null => step.earliest?.(look.context, crankedS(look)) ?? null;
  const move: Move = {
    target: 'early',
    actions: [
      note(look => ({
        kind: 'doubted',
        data: {
          step: step.id,
          reply: step.until,
          value: crankedS(look),
          unit: 's',
          ...judgementData(judged(look)),
        },
      })),
      remark(() => ({ line: 'release', values: {}, priority: 'hazard' })),
    ],
  };
  return {
    /** Whether now is before the earliest moment; where that cannot be worked out, it is. */
    now: (look: Look): boolean => {
      const judgement = judged(look);
      return judgement !== null && !(judgement.ok && judgement.value.met);
    },
    move,
    node: (nothing: readonly Move[]): Node =>
      askReply(
        { by: 'second', critical: false },
        look => ({
          line: 'early',
          values: {
            reply: { reply: step.until },
            time: { unit: 's', si: crankedS(look) },
            limits: limitsOf(judged(look)),
          },
        }),
        [
          {
            reply: step.until,
            move: {
              guard: bySecondPerson,
              target: 'released',
              actions: [
                note(({ event }) => ({
                  kind: 'vouched',
                  data: { step: step.id, reply: step.until, by: event.by },
                })),
                setAside(step.until),
              ],
            },
          },
          ...nothing.map(each => ({ reply: 'nothingYet' as const, move: each })),
        ],
      ),
  };
}
